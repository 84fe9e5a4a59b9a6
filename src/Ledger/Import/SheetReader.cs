using System.Text;
using System.Text.Unicode;
using ColonyLineage.Entries;
using CsvHelper;

namespace ColonyLineage.Ledger.Import;

/// <summary>One row of a sheet.</summary>
/// <param name="Row">As a spreadsheet numbers it: the header is row 1.</param>
/// <param name="Cells">Without quotes, trimmed.</param>
/// <param name="Raw">The row as it stands in the file, without its line end.</param>
/// <param name="Bad">What is wrong with it as CSV.</param>
internal sealed record SheetRow(int Row, string[] Cells, byte[] Raw, IReadOnlyList<BadCell> Bad);

/// <summary>
/// Reads CSV (RFC 4180) row by row, never the whole file. UTF-8 with or without a byte order mark, UTF-16 with one.
/// A broken row is handed on with what is wrong with it; only what breaks the sheet as a whole is thrown.
/// </summary>
internal sealed class SheetReader : IDisposable
{
    private const int LongestRow = 1_000_000;
    private readonly CsvReader _csv;
    private CsvMalformedReason? _malformed;

    private SheetReader(Stream stream, char separator) => _csv = CsvReader.Create(stream, new CsvReaderOptions
    {
        Separator = separator,
        HasHeader = false,       // a blank or doubled name is ours to refuse
        SkipEmptyLines = false,  // so that rows are numbered as a spreadsheet numbers them
        MaxRecordSize = LongestRow,
        OnMalformedRecord = record => _malformed = record.Reason,
    }, leaveOpen: true);

    /// <summary>The header as it stands in the file, without its line end.</summary>
    public byte[] Header { get; private set; } = [];

    /// <summary>The columns' names, trimmed, in their order.</summary>
    public IReadOnlyList<string> Columns { get; private set; } = [];

    /// <summary>Opens a sheet and reads its header.</summary>
    /// <exception cref="RefusedException">It cannot be read as a sheet at all.</exception>
    public static SheetReader Open(Stream stream, char separator)
    {
        var reader = new SheetReader(stream, separator);
        reader.ReadHeader();
        return reader;
    }

    /// <summary>The rows below the header; blank ones are passed over.</summary>
    public IEnumerable<SheetRow> Rows()
    {
        while (Read() is { } row)
        {
            if (row.Cells.All(string.IsNullOrWhiteSpace)) continue;
            yield return row.Cells.Length == Columns.Count ? row : row with { Bad = [.. row.Bad, Ragged(row)] };
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _csv.Dispose();

    private void ReadHeader()
    {
        var row = Read();
        if (row is null || row.Cells.All(string.IsNullOrWhiteSpace))
            throw Refused(ImportRefusals.NoRows, "The first row is empty. It holds the columns' names, and the rows follow it.");
        if (row.Raw.AsSpan().StartsWith("PK\x3\x4"u8) || row.Raw.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]))
            throw Refused(ImportRefusals.NotCsv, "This is a workbook, not CSV. Save the sheet as CSV (UTF-8) and import that.");
        if (row.Bad is [var bad, ..]) throw Refused(bad.Name, $"In the header (row 1, {bad.Column}): {bad.Message}", bad.Column);
        Header = row.Raw;
        Columns = row.Cells;
        foreach (var (name, count) in Columns.CountBy(name => name))
            if (count > 1 && name.Length > 0)
                throw Refused(ImportRefusals.DuplicateColumn, $"Row 1: {count} columns are called '{name}'. Give each a name of its own.", name);
    }

    private SheetRow? Read()
    {
        try
        {
            _malformed = null;
            if (!_csv.Read()) return null;
            var row = (int)_csv.RowNumber;
            var cells = new string[_csv.FieldCount];
            var bad = new List<BadCell>();
            for (var i = 0; i < cells.Length; i++)
            {
                cells[i] = _csv.GetString(i).Trim();
                if (FaultOf(_csv.GetRawSpan(i)) is var (name, message)) bad.Add(new BadCell(row, NameOf(i), Shown(cells[i]), name, message));
            }

            return new SheetRow(row, cells, _csv.RawRecord.ToArray(), bad);
        }
        catch (CsvFormatException problem)
        {
            throw Refused(ImportRefusals.RowTooLong, $"Row {problem.RecordNumber} has more than {LongestRow:N0} bytes. Most likely a quote in it is never closed.");
        }
    }

    private (string Name, string Message)? FaultOf(ReadOnlySpan<byte> raw)
    {
        if (raw.Contains((byte)0))
            return (ImportRefusals.NulByte, "The cell holds a NUL character. Take it out; where every cell has them, save the sheet as CSV (UTF-8).");
        if (!Utf8.IsValid(raw))
            return (ImportRefusals.NotUtf8, "The cell holds bytes that are not UTF-8. Save the sheet as CSV (UTF-8).");
        if (_malformed is not null && IsWronglyQuoted(raw))
            return (ImportRefusals.WrongQuotes, _malformed is CsvMalformedReason.UnterminatedQuote
                ? "A quote is opened here and never closed, so the rest of the sheet is in it. Close it, or double it (\"\") inside quotes."
                : "A quote stands in the wrong place. Put the whole cell in quotes, and double (\"\") those inside it.");
        return null;
    }

    /// <summary>RFC 4180, section 2, rules 5 to 7: quotes around the whole cell or nowhere, those inside doubled.</summary>
    private static bool IsWronglyQuoted(ReadOnlySpan<byte> raw)
    {
        if (!raw.StartsWith((byte)'"')) return raw.Contains((byte)'"');
        if (raw.Length < 2 || !raw.EndsWith((byte)'"')) return true;
        var inside = raw[1..^1];
        for (var i = inside.IndexOf((byte)'"'); i >= 0; i = inside.IndexOf((byte)'"'))
        {
            if (i + 1 >= inside.Length || inside[i + 1] != (byte)'"') return true;
            inside = inside[(i + 2)..];
        }

        return false;
    }

    private BadCell Ragged(SheetRow row) => new(
        row.Row, row.Cells.Length > Columns.Count ? NameOf(Columns.Count) : Columns[row.Cells.Length], Shown(row.Cells[^1]), ImportRefusals.RaggedRow,
        $"The row has {row.Cells.Length} cells, the header {Columns.Count}. Look for a separator too many or too few, or a cell that wants quotes.");

    private string NameOf(int column) => column < Columns.Count && Columns[column].Length > 0 ? Columns[column] : $"column {column + 1}";

    /// <summary>What is shown of a cell.</summary>
    public static string Shown(string cell) => (cell.Length > 100 ? cell[..100] : cell).Replace('\0', '\u2400');

    private static RefusedException Refused(string name, string message, string column = "") => new(new Refusal(name, column, message));
}
