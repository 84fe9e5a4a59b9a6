namespace ColonyLineage.Ledger;

/// <summary>How the ledger stands.</summary>
/// <param name="Entries">Entries recorded, voids among them.</param>
/// <param name="Waiting">Entries that the read tables do not hold yet.</param>
/// <param name="KeptAside">What was refused and waits for a person.</param>
/// <param name="BytesOnDisk">Size of the outfit in the database, indexes included.</param>
/// <param name="Tables">The read tables.</param>
/// <param name="Advice">What to do, in words; empty where all is well.</param>
public sealed record LedgerStatus(
    long Entries, long Waiting, long KeptAside, long BytesOnDisk, IReadOnlyList<TableStatus> Tables, IReadOnlyList<string> Advice)
{
    /// <summary>No read table differs from a plain fold, as far as that was checked.</summary>
    public bool Good => Tables.All(table => table.Differing.Count == 0) && Advice.Count == 0;
}

/// <summary>How one read table stands.</summary>
/// <param name="Name">Its name in the database.</param>
/// <param name="Rows">Rows in it.</param>
/// <param name="Differing">Subjects whose rows differ from a plain fold of the entries, as <c>colony 0000…</c>; empty where none was found or nothing was checked.</param>
public sealed record TableStatus(string Name, long Rows, IReadOnlyList<string> Differing);
