using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace ColonyLineage.Ledger.Store;

/// <summary>
/// An outfit's short name. It is the name of its schema in the database, where everything that belongs to it lies.
/// </summary>
internal readonly partial record struct OutfitName
{
    public OutfitName(string name)
    {
        if (!Allowed().IsMatch(name) || name.StartsWith("pg_", StringComparison.Ordinal) || name is "public" or "information_schema")
            throw new ArgumentException(
                $"'{name}' cannot be the short name of an outfit: take a small letter and then up to 40 small letters, digits or underscores, and none of PostgreSQL's own names.", nameof(name));
        Name = name;
    }

    public string Name { get; }

    /// <summary>The key of an advisory lock of this outfit's. PostgreSQL keeps these locks per database, by a number of 64 bits.</summary>
    public long Lock(string purpose) => BitConverter.ToInt64(SHA256.HashData(Encoding.UTF8.GetBytes($"colony-lineage/{Name}/{purpose}")));

    public override string ToString() => Name;

    [GeneratedRegex("^[a-z][a-z0-9_]{0,40}$")]
    private static partial Regex Allowed();
}
