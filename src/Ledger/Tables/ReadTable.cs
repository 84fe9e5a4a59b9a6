using ColonyLineage.Ledger.Store;
using ColonyLineage.Projections;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// The table that a question's rows are kept in: the question's own columns under their plain names, and before them the subject
/// that a row was worked out for (its kind as a number: 1 yard, 2 colony, 3 queen) and the row's number among that subject's.
/// </summary>
internal sealed class ReadTable(OutfitName outfit, IQuestion question)
{
    public const string Owner = "subject_kind, subject, row_number";

    public IQuestion Question => question;

    public string Name { get; } = question.Name.Replace('-', '_');

    /// <summary>Its full name.</summary>
    public string Full => $"{outfit}.{Name}";

    /// <summary>The question's columns, quoted, since some are words of SQL.</summary>
    public string Columns { get; } = string.Join(", ", question.Columns.Select(column => $"\"{column.Name}\""));

    /// <summary>The columns with their types; equal text means that rows fit.</summary>
    public string Shape { get; } = "subject_kind smallint not null, subject uuid not null, row_number integer not null, "
        + string.Join(", ", question.Columns.Select(column => $"\"{column.Name}\" {SqlType(column.Type)}"));

    public static string SqlType(ColumnType type) => type switch
    {
        ColumnType.Text => "text",
        ColumnType.Whole => "integer",
        ColumnType.Number => "numeric",
        ColumnType.Day => "date",
        ColumnType.Flag => "boolean",
        ColumnType.Id => "uuid",
        ColumnType.Entries => "uuid[]",
        ColumnType.Texts => "text[]",
        _ => throw new NotSupportedException($"There is no SQL type for {type}."),
    };
}
