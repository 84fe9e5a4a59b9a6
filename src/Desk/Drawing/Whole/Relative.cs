using ColonyLineage.Entries;

namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>One queen or colony of a genealogy: what its box says, and what it can be put together with others by.</summary>
/// <param name="Id">The queen or the colony.</param>
/// <param name="Name">What she is called.</param>
public sealed record Relative(Guid Id, string Name)
{
    /// <summary>The first season that she can be born in, or that it can have begun in; null where nobody knows.</summary>
    public int? Season { get; init; }

    /// <summary>The season in words: '2024', '2024 or 2025', 'not known'.</summary>
    public string Born { get; init; } = "not known";

    /// <summary>She lives, or the colony does.</summary>
    public bool Alive { get; init; }

    /// <summary>Where she lives, or what became of her, in words.</summary>
    public string Fate { get; init; } = "fate not known";

    /// <summary>The yard she stands in; null where she stands in none.</summary>
    public string? Yard { get; init; }

    /// <summary>Her line; null for none.</summary>
    public string? Line { get; init; }

    /// <summary>The batch she was raised in; null for none.</summary>
    public string? Batch { get; init; }

    /// <summary>Her mother, or the first colony that it was made from; null where nobody knows.</summary>
    public (Guid Id, string Name)? Parent { get; init; }

    /// <summary>The entries that tell of her birth, her place and her end.</summary>
    public IReadOnlyList<EntryId> Entries { get; init; } = [];
}
