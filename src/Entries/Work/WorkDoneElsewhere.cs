namespace ColonyLineage.Entries;

/// <summary>Owed work is closed without an entry of its own: it was done in another way, or is no longer wanted.</summary>
[Kind("work-done-elsewhere", 1)]
public sealed record WorkDoneElsewhere : OwedEntry;
