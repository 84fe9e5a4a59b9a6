using System.Security.Cryptography;
using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Recording;

/// <summary>What tells whether two entries of one id say the same: 16 bytes of SHA-256 over kind and stored JSON.</summary>
internal static class ContentHash
{
    public static byte[] Of(Entry entry) => Of(EntryJson.WriteTagged(entry).ToJsonString());

    public static byte[] Of(string payload) => SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(payload))[..16];
}
