using System.Security.Cryptography;
using System.Text;

namespace ColonyLineage.Entries;

/// <summary>
/// An id derived from a name inside a name space: the same name gives the same id, so that an import run twice, or an
/// act sent twice, changes nothing. RFC 9562 version 8 (custom): the first 16 bytes of SHA-256 over name space and name.
/// </summary>
public static class NamedId
{
    /// <summary>The id of <paramref name="name"/> inside <paramref name="space"/>.</summary>
    public static Guid Of(Guid space, string name)
    {
        var text = Encoding.UTF8.GetBytes(name);
        var input = new byte[16 + text.Length];
        space.TryWriteBytes(input, bigEndian: true, out _);
        text.CopyTo(input, 16);
        var id = SHA256.HashData(input)[..16];
        id[6] = (byte)((id[6] & 0x0F) | 0x80);
        id[8] = (byte)((id[8] & 0x3F) | 0x80);
        return new Guid(id, bigEndian: true);
    }
}
