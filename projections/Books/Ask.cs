using ColonyLineage.Entries;

namespace ColonyLineage.Projections;

/// <summary>What somebody asks of a question: which part of the outfit, and by which of the two clocks.</summary>
public sealed record Ask
{
    /// <summary>Everything, as known now.</summary>
    public static readonly Ask Everything = new();

    /// <summary>A yard by name or id; null for all.</summary>
    public string? Yard { get; init; }

    /// <summary>A spot by its number; null for all.</summary>
    public string? Spot { get; init; }

    /// <summary>A colony by number or id; null for all.</summary>
    public string? Colony { get; init; }

    /// <summary>A queen by name or id; null for all.</summary>
    public string? Queen { get; init; }

    /// <summary>A season; null for all.</summary>
    public int? Season { get; init; }

    /// <summary>The state of things at the end of this day, by what is known; null for today.</summary>
    public DateOnly? AsOf { get; init; }

    /// <summary>Only what the books held at this instant; null for now.</summary>
    public DateTimeOffset? KnownAt { get; init; }

    /// <summary>The read tables cannot answer it: the entries have to be folded again.</summary>
    public bool LooksBack => AsOf is not null || KnownAt is not null;

    /// <summary>Whether a row is asked for. A filter that a row has no column for leaves the row in.</summary>
    public bool Wants(IRow row, IReadOnlyList<Column> columns) =>
        Fits(row, columns, Yard, "yard", "yard_id")
        && Fits(row, columns, Spot, "spot", null)
        && Fits(row, columns, Colony, "colony", "colony_id")
        && Fits(row, columns, Queen, "queen", "queen_id")
        && (Season is null || Value(row, columns, "season") is not int season || season == Season);

    private static bool Fits(IRow row, IReadOnlyList<Column> columns, string? wanted, string name, string? id)
    {
        if (wanted is null || !columns.Any(column => column.Name == name)) return true;
        if (string.Equals(Value(row, columns, name) as string, wanted, StringComparison.OrdinalIgnoreCase)) return true;
        return id is not null && Guid.TryParse(wanted, out var asked) && Value(row, columns, id) is Guid value && value == asked;
    }

    private static object? Value(IRow row, IReadOnlyList<Column> columns, string name) =>
        columns.FirstOrDefault(column => column.Name == name)?.Value(row);
}
