using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Losses;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>What traits are taken from.</summary>
/// <param name="Lives">For winter losses.</param>
/// <param name="Reigns">For how long queens stay.</param>
/// <param name="Today">The day that is asked for: what is not over by then is left out.</param>
public sealed record Measured(IReadOnlyList<TraitRow> Traits, IReadOnlyList<LifeRow> Lives, IReadOnlyList<ReignRow> Reigns, OutfitCard Outfit, DateOnly Today);

/// <summary>Makes the records of a trait. Colonies taken out of comparisons are in none.</summary>
public static class Records
{
    public const string NoLine = "no line";

    /// <param name="season">One season alone; null for all.</param>
    public static IReadOnlyList<LineRecord> Of(Measured measured, Trait trait, ComparedBy by, int? season = null) =>
    [
        .. (trait switch
        {
            Trait.WinterLosses => Winters(measured),
            Trait.QueenGone => Stays(measured),
            _ => measured.Traits.Select(row => (Row: row, Value: Value(row, trait), More: (IReadOnlyList<EntryId>)[])),
        })
        .Where(one => one.Value is not null && !one.Row.TakenOut && (season is null || one.Row.Season == season))
        .Select(one => Make(one.Row, one.Value!.Value, by, one.More)).OfType<LineRecord>(),
    ];

    private static LineRecord? Make(TraitRow row, double value, ComparedBy by, IReadOnlyList<EntryId> more)
    {
        if (row.Yard is not { } yard) return null;
        var mother = row.MotherId is { } id ? $"{row.Mother} ({Names.Short(id.Value)})" : null;
        // Two queens of one name are two: what is compared by is told apart by its id, and shown by its name where that is clear.
        var of = by switch { ComparedBy.Line => row.Line ?? NoLine, ComparedBy.Mother => mother, ComparedBy.Queen => row.QueenId is { } queen ? $"{row.Queen} ({Names.Short(queen.Value)})" : null, _ => row.Maker };
        return of is null ? null : new LineRecord(
            row.ColonyId, of, mother, yard, FormattableString.Invariant($"{yard} {row.Season}"), Age(row.QueenAge), row.Treatments ?? "none", value,
            row.MotherIs == Certainty.Supposed, row.New, more.Count == 0 ? row.Entries : [.. row.Entries.Concat(more).Distinct()]) { MotherId = row.MotherId, QueenId = row.QueenId };
    }

    private static string Age(int? age) => age switch { null => "unknown", >= 3 => "3 or more", _ => FormattableString.Invariant($"{age}") };

    private static double? Value(TraitRow row, Trait trait) => trait switch
    {
        Trait.Strength => (double?)row.FramesOfBees,
        Trait.Honey => (double?)row.HoneyKg,
        Trait.Temper => (double?)row.Temper,
        Trait.BroodPattern => (double?)row.BroodPattern,
        Trait.MitesFirst => Log(row.FirstPer100Bees),
        Trait.MitesLast => Log(row.LastPer100Bees),
        Trait.MiteGrowth => row is { DosedBetween: false, LastWash: { } last, FirstWash: { } first } && last > first
            ? 30 * (Log(row.LastPer100Bees) - Log(row.FirstPer100Bees)) / (last.DayNumber - first.DayNumber)
            : null,
        _ => null,
    };

    private static double? Log(decimal? per100) => per100 is { } mites ? Math.Log((double)mites + Traits.HalfAMite) : null;

    /// <summary>The last row of a colony before a winter stands for what went into it.</summary>
    private static IEnumerable<(TraitRow Row, double? Value, IReadOnlyList<EntryId> More)> Winters(Measured measured)
    {
        var (outfit, start) = (measured.Outfit, measured.Outfit.SeasonStartMonth);
        var lives = measured.Lives.ToDictionary(life => life.ColonyId);
        foreach (var season in measured.Traits.GroupBy(row => (row.ColonyId, row.Season)))
        {
            var from = outfit.WinterFrom.From(Season.FirstDay(season.Key.Season, start));
            var to = outfit.WinterTo.From(from);
            // Who was first looked at in the winter had come through a part of it already.
            var row = season.Where(row => row.SeenFrom < from).OrderBy(row => row.SeenTo).LastOrDefault();
            if (row is null || to > measured.Today || !lives.TryGetValue(row.ColonyId, out var life) || life.MatingNuc || life.KnownFrom > from) continue;
            var end = life.EndTaken();
            if (end < from || (end <= to && life.End is EndKind.Sold or EndKind.Combined)) continue;
            yield return (row, end <= to && life.Lost ? 1 : 0, end is null ? [] : life.Entries);
        }
    }

    /// <summary>The first row of a reign stands for the queen when she came.</summary>
    private static IEnumerable<(TraitRow Row, double? Value, IReadOnlyList<EntryId> More)> Stays(Measured measured)
    {
        var reigns = measured.Reigns.Where(reign => reign.QueenId is not null).ToLookup(reign => (reign.ColonyId, reign.QueenId!.Value));
        var ofQueen = measured.Reigns.Where(reign => reign.QueenId is not null).ToLookup(reign => reign.QueenId!.Value);
        foreach (var rows in measured.Traits.Where(row => row.QueenId is not null).GroupBy(row => (row.ColonyId, row.QueenId!.Value)))
        {
            var reign = reigns[rows.Key].FirstOrDefault();
            if (reign is null || reign.SinceTo.AddYears(1) > measured.Today) continue;
            var gone = reign.GoneTo is { } day && day <= reign.SinceTo.AddYears(1);
            // Set elsewhere within the year, though nobody took her out here in so many words.
            var until = gone ? reign.GoneTo!.Value : reign.SinceTo.AddYears(1);
            if (ofQueen[rows.Key.Value].Any(other => other.ColonyId != rows.Key.ColonyId && other.SinceTo > reign.SinceTo && other.SinceTo <= until)) continue;
            // Taken out alive, or her colony ended: that says nothing of how long she would have stayed.
            if (gone && reign.Went is HowWent.TakenOut or HowWent.ColonyEnded or HowWent.NotKept or HowWent.Replaced or HowWent.Killed) continue;
            yield return (rows.MinBy(row => row.SeenFrom)!, gone ? 1 : 0, reign.Entries);
        }
    }
}
