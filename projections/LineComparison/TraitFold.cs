using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>See question.md.</summary>
public sealed class TraitsQuestion : Question<TraitRow>
{
    public override string Name => "traits";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<TraitRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        var outfit = books.Outfit;
        var makers = colony.Counted.OfType<SplitFrom>().Where(split => split.Into == colony.Colony).ToList();
        var group = colony.Counted.OfType<Noted>().LastOrDefault(note => note.About == "treatment group");
        foreach (var reign in colony.Reigns)
        {
            var seasons = colony.Counted.Where(entry => Tells(entry) && Place.Of(entry) >= Place.Of(reign.CameBy) && (reign.WentBy is null || Place.Of(entry) < Place.Of(reign.WentBy)))
                .GroupBy(entry => Season.Of(entry.On.Day, outfit.SeasonStartMonth)).ToList();
            if (seasons.Count == 0) continue;
            var mother = reign.Queen is { } daughter ? Pedigree.MotherOf(books, daughter) : null;
            var line = reign.Queen is { } descendant ? Pedigree.LineOf(books, descendant) : null;
            var birth = reign.Queen is { } queen ? Pedigree.BirthOf(books, queen) : null;
            foreach (var season in seasons)
            {
                var seen = new Seen(colony, outfit, [.. season]);
                if (!seen.IsThere) continue;
                var stay = colony.Stays.LastOrDefault(stay => Place.Of(stay.CameBy) <= Place.Of(seen.Last));
                yield return new TraitRow
                {
                    YardId = stay?.Spot.Yard,
                    Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
                    Spot = stay?.Spot.Number,
                    ColonyId = colony.Colony,
                    Colony = Names.Of(colony),
                    Season = season.Key,
                    SeenFrom = seen.Entries[0].On.Day,
                    SeenTo = seen.Last.On.Day,
                    QueenId = reign.Queen,
                    Queen = reign.Queen is { } named ? Names.Of(books.Queen(named)) : null,
                    MotherId = mother?.Mother,
                    Mother = mother is { } known ? Names.Of(books.Queen(known.Mother)) : null,
                    MotherIs = mother?.Sure,
                    Line = line?.Line,
                    QueenAge = birth is { } born && Season.Of(born.When.Earliest, outfit.SeasonStartMonth) is var first && first == Season.Of(born.When.Day, outfit.SeasonStartMonth) ? season.Key - first : null,
                    Maker = makers.Select(split => split.Colony).Distinct().ToList() is [var one] ? Names.Of(books.Colony(one)) : null,
                    New = colony.Began is { How: not HowEstablished.OpeningCount } began && Season.Of(began.On.Day, outfit.SeasonStartMonth) == season.Key,
                    TakenOut = colony.TakenOut is not null,
                    Treatments = group?.Text ?? seen.Courses,
                    FramesOfBees = seen.Mean(look => look.FramesOfBees),
                    Temper = seen.Mean(look => look.Temper),
                    BroodPattern = seen.Pattern,
                    PatternsTooSoon = seen.TooSoon,
                    HoneyKg = seen.Honey,
                    FirstWash = seen.Washes.FirstOrDefault()?.On.Day,
                    FirstPer100Bees = Per100(seen.Washes.FirstOrDefault()),
                    LastWash = seen.Washes.Count > 1 ? seen.Washes[^1].On.Day : null,
                    LastPer100Bees = seen.Washes.Count > 1 ? Per100(seen.Washes[^1]) : null,
                    DosedBetween = seen.Washes.Count > 1 && seen.Doses.Any(dose => Place.Of(dose) > Place.Of(seen.Washes[0]) && Place.Of(dose) < Place.Of(seen.Washes[^1])),
                    Entries = Evidence.Of([reign.CameBy, stay?.CameBy, group, .. makers, .. seen.Entries, .. seen.Stops, .. mother?.By ?? [], .. line?.By ?? [], .. birth?.By ?? []]),
                };
            }
        }
    }

    private static bool Tells(Entry entry) => entry is Inspected or Harvested or Washed or Treated;

    private static decimal? Per100(Washed? wash) => wash is { Bees: > 0 } ? Math.Round(100m * wash.Mites / wash.Bees, 4) : null;

    /// <summary>What was recorded in a season while a queen reigned.</summary>
    private sealed class Seen(ColonyCard colony, OutfitCard outfit, IReadOnlyList<Entry> entries)
    {
        private readonly IReadOnlyList<Inspected> _looks = [.. entries.OfType<Inspected>()];

        public IReadOnlyList<Washed> Washes { get; } = [.. entries.OfType<Washed>().Where(wash => wash.Bees > 0)];

        public IReadOnlyList<Treated> Doses { get; } = [.. entries.OfType<Treated>()];

        public IReadOnlyList<Entry> Entries { get; } = [.. entries.Where(entry => entry is not Inspected look || look.FramesOfBees is not null || look.Temper is not null || look.BroodPattern is not null)];

        /// <summary>Doses alone are no trait.</summary>
        public bool IsThere => Entries.Any(entry => entry is not Treated);

        public Entry Last => Entries[^1];

        public decimal? Mean(Func<Inspected, decimal?> of) => _looks.Select(of).OfType<decimal>().ToList() is { Count: > 0 } values ? Math.Round(values.Average(), 4) : null;

        public int TooSoon => _looks.Count(look => look.BroodPattern is not null && StoppedBy(look) is not null);

        /// <summary>The doses that made looks too soon.</summary>
        public IEnumerable<Entry?> Stops => _looks.Where(look => look.BroodPattern is not null).Select(StoppedBy);

        public decimal? Pattern => Mean(look => StoppedBy(look) is null ? look.BroodPattern : null);

        /// <summary>Supers alone say nothing of how much honey was in them.</summary>
        public decimal? Honey => entries.OfType<Harvested>().Select(harvest => harvest.Honey?.InKilograms()).OfType<decimal>().ToList() is { Count: > 0 } weights ? Math.Round(weights.Sum(), 4) : null;

        public string? Courses => Doses.Select(dose => dose.Course).Distinct().Order(StringComparer.Ordinal).ToList() is { Count: > 0 } courses ? string.Join(" + ", courses) : null;

        private Treated? StoppedBy(Inspected look) => colony.Counted.OfType<Treated>().LastOrDefault(dose =>
            outfit.Courses.GetValueOrDefault(dose.Course)?.BroodTooSoonDays is { } days && look.On.Day.DayNumber - dose.On.Day.DayNumber is var since && since >= 0 && since <= days);
    }
}
