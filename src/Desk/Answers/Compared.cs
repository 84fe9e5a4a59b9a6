using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using ColonyLineage.Projections;
using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk;

/// <summary>What lines are compared from: the traits of all colonies, lives and reigns.</summary>
/// <param name="Kin">For predictions that are related as the books have it; null where nobody asked for that.</param>
public sealed record Compared(Measured Measured, Compared.KinRows? Kin = null)
{
    // All traits of a large outfit take seconds to compare, and only a new entry about one of them changes the lists of rows: what was worked out is kept as long as they are.
    private static readonly ConditionalWeakTable<IReadOnlyList<TraitRow>, Worked> Known = [];

    /// <summary>Reads them by the clocks asked for.</summary>
    /// <param name="pedigree">With what relates queens and mothers.</param>
    public static async Task<Compared> OfAsync(IRows rows, Ask ask, CancellationToken cancel, bool pedigree = false)
    {
        var clocks = Gather.Clocks(ask);
        return new Compared(new Measured(
            await rows.RowsAsync(Questions.Traits, clocks, cancel),
            await rows.RowsAsync(Questions.Losses, clocks, cancel),
            await rows.RowsAsync(Questions.Reigns, clocks, cancel),
            (await rows.HouseholdAsync(clocks, cancel)).Outfit,
            Gather.Day(rows, ask)), pedigree ? new KinRows(await rows.RowsAsync(Questions.Lineage, clocks, cancel), await rows.RowsAsync(Questions.Register, clocks, cancel)) : null);
    }

    /// <summary>Lines compared by a trait.</summary>
    public Comparison By(Trait trait, ComparedBy by = ComparedBy.Line, int? season = null)
    {
        var worked = Known.GetValue(Measured.Traits, _ => new Worked(Measured));
        if (!worked.IsOf(Measured)) Known.AddOrUpdate(Measured.Traits, worked = new Worked(Measured));
        var key = (trait, by, season, Kin is not null);
        if (worked.Comparisons.TryGetValue(key, out var known) && known.Kin == Kin) return known.Comparison;
        var comparison = Comparing.Of(Records.Of(Measured, trait, by, season), trait, by, Kin is null ? null : Kindred.Of(Kin.Links, Kin.Register).Books);
        worked.Comparisons[key] = (Kin, comparison);
        return comparison;
    }

    /// <summary>Lines compared by some traits; each is reckoned on its own, so several at once.</summary>
    public IReadOnlyList<Comparison> By(IReadOnlyList<Trait> traits, ComparedBy by, int? season) => [.. traits.AsParallel().AsOrdered().Select(trait => By(trait, by, season))];

    /// <summary>A row over many colonies names <see cref="Lived.MostEntries"/> entries at most where it is handed out as data; the records have them all.</summary>
    public static LineRow Short(LineRow row) => row with { Entries = [.. row.Entries.Take(Lived.MostEntries)] };

    /// <inheritdoc cref="Short(LineRow)"/>
    public static LinePairRow Short(LinePairRow row) => row with { Entries = [.. row.Entries.Take(Lived.MostEntries)] };

    /// <summary>Links and register: two are the same where their lists are.</summary>
    public sealed record KinRows(IReadOnlyList<LinkRow> Links, IReadOnlyList<RegisterRow> Register);

    private sealed record Worked(Measured Of)
    {
        public ConcurrentDictionary<(Trait, ComparedBy, int?, bool), (KinRows? Kin, Comparison Comparison)> Comparisons { get; } = new();

        public bool IsOf(Measured other) => ReferenceEquals(Of.Lives, other.Lives) && ReferenceEquals(Of.Reigns, other.Reigns) && Of.Today == other.Today
            && (Of.Outfit.SeasonStartMonth, Of.Outfit.WinterFrom, Of.Outfit.WinterTo) == (other.Outfit.SeasonStartMonth, other.Outfit.WinterFrom, other.Outfit.WinterTo);
    }
}
