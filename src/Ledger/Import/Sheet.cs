using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>A sheet of CSV read whole: small tables that no mapping is needed for.</summary>
/// <param name="Columns">The columns' names, in their order.</param>
/// <param name="Rows">The rows, as a spreadsheet numbers them; blank ones are passed over.</param>
public sealed record Sheet(IReadOnlyList<string> Columns, IReadOnlyList<(int Row, IReadOnlyList<string> Cells)> Rows)
{
    /// <summary>Reads it.</summary>
    /// <exception cref="RefusedException">It is no sheet, or a row of it is bad.</exception>
    public static Sheet Read(Stream csv)
    {
        using var reader = SheetReader.Open(csv, ',');
        var rows = reader.Rows().ToList();
        var bad = rows.SelectMany(row => row.Bad.Select(cell => new Refusal(cell.Name, $"row {row.Row}, {cell.Column}", cell.Message))).ToList();
        if (bad.Count > 0) throw new RefusedException(bad);
        if (rows.Count == 0) throw new RefusedException(new Refusal(ImportRefusals.NoRows, "", "The sheet has a header and nothing below it."));
        return new Sheet(reader.Columns, [.. rows.Select(row => (row.Row, (IReadOnlyList<string>)row.Cells))]);
    }

    /// <summary>The place of a column.</summary>
    /// <exception cref="RefusedException">There is none of that name.</exception>
    public int At(string name) => Columns.ToList().IndexOf(name) is >= 0 and var at
        ? at
        : throw new RefusedException(new Refusal("no-column", name, $"There is no column '{name}'. There are: {string.Join(", ", Columns)}."));
}
