using ColonyLineage.Entries;

namespace ColonyLineage.Desk;

/// <summary>What the import of a sheet would record, and what is wrong with it.</summary>
/// <param name="Act">The one act of the import.</param>
/// <param name="Entries">The entries of the good rows.</param>
/// <param name="GoodRows">Rows without a bad cell.</param>
/// <param name="BadRows">Rows with at least one.</param>
/// <param name="Bad">The bad cells, the first of them where there are very many.</param>
/// <param name="Unused">Columns that the mapping does not read.</param>
public sealed record SheetPlan(ActId Act, IReadOnlyList<Entry> Entries, int GoodRows, int BadRows, IReadOnlyList<SheetFault> Bad, IReadOnlyList<string> Unused);

/// <summary>A bad cell.</summary>
/// <param name="Row">As a spreadsheet numbers it: the header is row 1.</param>
/// <param name="Column">The column's name; empty where it is the row as a whole.</param>
/// <param name="Value">What stands in it.</param>
/// <param name="Message">What is wrong and what to do about it.</param>
public sealed record SheetFault(int Row, string Column, string Value, string Message);
