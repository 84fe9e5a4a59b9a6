namespace ColonyLineage.Ledger.Import;

/// <summary>
/// The names of what an import refuses beyond what entries themselves refuse (<see cref="ColonyLineage.Entries.Refusals"/>):
/// the sheet as a whole, one row, one cell, or the mapping.
/// </summary>
public static class ImportRefusals
{
    /// <summary>The sheet has more bytes, or gives more entries, than <see cref="SheetLimits"/> allow. The whole sheet is refused.</summary>
    public const string SheetTooLarge = "sheet-too-large";

    /// <summary>The file is empty, or has a header and nothing below it. The whole sheet is refused.</summary>
    public const string NoRows = "no-rows";

    /// <summary>The file is a workbook or another binary file, not CSV. The whole sheet is refused.</summary>
    public const string NotCsv = "not-csv";

    /// <summary>Two columns have the same name. The whole sheet is refused.</summary>
    public const string DuplicateColumn = "duplicate-column";

    /// <summary>Bytes that are not UTF-8. The row is bad; in the header, the whole sheet.</summary>
    public const string NotUtf8 = "not-utf8";

    /// <summary>A NUL character. The row is bad; in the header, the whole sheet.</summary>
    public const string NulByte = "nul-byte";

    /// <summary>A quote in the middle of a cell, after its end, or never closed (RFC 4180, section 2). The row is bad.</summary>
    public const string WrongQuotes = "wrong-quotes";

    /// <summary>The row has more or fewer cells than the header. The row is bad.</summary>
    public const string RaggedRow = "ragged-row";

    /// <summary>A row has more than 1,000,000 bytes: most likely a quote that is never closed. The whole sheet is refused.</summary>
    public const string RowTooLong = "row-too-long";

    /// <summary>The cell holds a spreadsheet's error, such as <c>#VALUE!</c>, and the mapping does not ignore it.</summary>
    public const string SpreadsheetError = "spreadsheet-error";

    /// <summary>The field takes a number and the cell is none. A formula is a text: it is never worked out.</summary>
    public const string NotANumber = "not-a-number";

    /// <summary>The cell is a day in none of the mapping's formats.</summary>
    public const string NotADay = "not-a-day";

    /// <summary>Two rows have the same key, so nothing would tell their entries apart.</summary>
    public const string SameKeyTwice = "same-key-twice";

    /// <summary>Something recorded once for several rows differs between them.</summary>
    public const string DiffersFromEarlierRow = "differs-from-earlier-row";

    /// <summary>The mapping is not JSON.</summary>
    public const string MappingNotReadable = "mapping-not-readable";

    /// <summary>The mapping is JSON, and says something that cannot be: the field names the place.</summary>
    public const string MappingWrong = "mapping-wrong";

    /// <summary>The mapping names a column that the sheet does not have.</summary>
    public const string UnknownColumn = "unknown-column";
}
