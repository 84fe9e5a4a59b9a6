using System.Security.Cryptography;
using System.Text;
using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Recording;

/// <summary>What tells whether two entries of one id say the same: 16 bytes of SHA-256 over kind and stored JSON.</summary>
internal static class ContentHash
{
    public static byte[] Of(Entry entry) => Of(Kinds.Of(entry).Stored, EntryJson.WriteUtf8(entry));

    public static byte[] Of(string what, string payload) => Of(what, Encoding.UTF8.GetBytes(payload));

    private static byte[] Of(string what, byte[] json) => SHA256.HashData([.. Encoding.UTF8.GetBytes(what), 0, .. json])[..16];
}
