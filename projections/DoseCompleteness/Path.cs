using ColonyLineage.Entries;

namespace ColonyLineage.Projections.DoseCompleteness;

/// <summary>One way by which bees came into a colony, with the doses along it.</summary>
/// <param name="Doses">Full doses along the path.</param>
/// <param name="Colonies">The colonies along it, oldest first.</param>
/// <param name="Entries">The entries along it: what brought the bees on, and the doses that count.</param>
/// <param name="LastDose">The day of the last dose along it.</param>
internal sealed record Path(decimal Doses, IReadOnlyList<ColonyId> Colonies, IReadOnlyList<Entry> Entries, DateOnly? LastDose)
{
    /// <summary>Bees of a colony that had nothing.</summary>
    public static Path Nothing(ColonyId colony) => new(0, [colony], [], null);

    /// <summary>The path goes on into another colony.</summary>
    public Path Then(ColonyId colony, Entry by) => this with { Colonies = [.. Colonies, colony], Entries = [.. Entries, by] };

    /// <summary>A dose along the path.</summary>
    public Path With(Treated dose) => this with { Doses = Doses + dose.Doses, Entries = [.. Entries, dose], LastDose = dose.On.Day };

    /// <summary>The less treated of two; the one that was there first where they are equal.</summary>
    public static Path Less(Path? first, Path second) => first is null || second.Doses < first.Doses ? second : first;
}
