using System.Security.Cryptography;
using System.Text;

namespace ColonyLineage.Desk.Forms;

/// <summary>
/// Sheets between their preview and the word to record them, in memory: the last few, each named by its content. Whoever comes
/// too late uploads again.
/// </summary>
public sealed class Uploads
{
    /// <summary>The most bytes of a sheet; a larger one goes through the command line.</summary>
    public const int MostBytes = 10_000_000;

    private const int Kept = 4;
    private readonly Lock _gate = new();
    private readonly List<(string Key, byte[] Sheet, string Map)> _kept = [];

    /// <summary>Keeps a sheet with its mapping and gives its key.</summary>
    public string Keep(byte[] sheet, string map)
    {
        var key = Convert.ToHexStringLower(SHA256.HashData([.. SHA256.HashData(sheet), .. Encoding.UTF8.GetBytes(map)]));
        lock (_gate)
        {
            _kept.RemoveAll(one => one.Key == key);
            _kept.Add((key, sheet, map));
            if (_kept.Count > Kept) _kept.RemoveAt(0);
        }

        return key;
    }

    /// <summary>A sheet that is still kept.</summary>
    public (byte[] Sheet, string Map)? Find(string? key)
    {
        lock (_gate)
        {
            var found = _kept.Find(one => one.Key == key);
            return found.Key is null ? null : (found.Sheet, found.Map);
        }
    }
}
