using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>Why a row of a sheet cannot be imported, at one cell of it.</summary>
/// <param name="Row">The row as a spreadsheet numbers it: the header is row 1.</param>
/// <param name="Column">The column's name; empty where it is the row as a whole.</param>
/// <param name="Value">What stands in the cell, at most 100 characters of it.</param>
/// <param name="Name">The refusal's fixed name: one of <see cref="ImportRefusals"/> or <see cref="Refusals"/>.</param>
/// <param name="Message">What is wrong and what to do about it.</param>
public sealed record BadCell(int Row, string Column, string Value, string Name, string Message);

/// <summary>A row with at least one bad cell, as it stands in the file (UTF-8), without its line end.</summary>
public sealed record BadRow(int Row, ReadOnlyMemory<byte> Raw);

/// <summary>What an import would record, and what is wrong with the sheet. Nothing is recorded by planning.</summary>
public sealed record ImportPlan
{
    /// <summary>The act that all entries belong to: the same for the same mapping, so that the import can be voided as one.</summary>
    public required ActId Act { get; init; }

    /// <summary>The entries of the good rows: yards and colonies that are created first, then row by row.</summary>
    public required IReadOnlyList<Entry> Entries { get; init; }

    /// <summary>Every bad cell, by row. Empty where the whole sheet can be recorded.</summary>
    public required IReadOnlyList<BadCell> Bad { get; init; }

    /// <summary>The rows with bad cells. None of their entries is in <see cref="Entries"/>.</summary>
    public required IReadOnlyList<BadRow> BadRows { get; init; }

    /// <summary>Rows without a bad cell; blank rows are not counted.</summary>
    public required int GoodRows { get; init; }

    /// <summary>The header as it stands in the file (UTF-8), without its line end.</summary>
    public required ReadOnlyMemory<byte> Header { get; init; }

    /// <summary>Columns that the mapping does not read.</summary>
    public required IReadOnlyList<string> UnusedColumns { get; init; }

    /// <summary>The number of entries of each kind, by the kind's name without version.</summary>
    public IReadOnlyDictionary<string, int> Counts =>
        new SortedDictionary<string, int>(Entries.CountBy(entry => Kinds.Of(entry).Name).ToDictionary(), StringComparer.Ordinal);

    /// <summary>Writes the header and the bad rows as they stand in the sheet (UTF-8).</summary>
    public void WriteBadRows(Stream to)
    {
        WriteLine(to, Header);
        foreach (var row in BadRows) WriteLine(to, row.Raw);
    }

    private static void WriteLine(Stream to, ReadOnlyMemory<byte> raw)
    {
        to.Write(raw.Span);
        to.Write("\r\n"u8);
    }
}

/// <summary>
/// Names that the books know already, so that an import speaks of the same yards, colonies and queens. Give a name only
/// where it is the name of one thing alone.
/// </summary>
public sealed record KnownNames
{
    /// <summary>Yards by name.</summary>
    public IReadOnlyDictionary<string, YardId> Yards { get; init; } = new Dictionary<string, YardId>();

    /// <summary>Colonies by number.</summary>
    public IReadOnlyDictionary<string, ColonyId> Colonies { get; init; } = new Dictionary<string, ColonyId>();

    /// <summary>Queens by name.</summary>
    public IReadOnlyDictionary<string, QueenId> Queens { get; init; } = new Dictionary<string, QueenId>();
}
