using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>See question.md.</summary>
public sealed class TraitsQuestion : Question<TraitRow>
{
    public override string Name => "traits";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    /// <summary>In the order in which their seasons were seen last: of two queens seen on one day the later one stands last.</summary>
    public override IEnumerable<TraitRow> RowsFor(Books books, Subject subject) =>
        Rows(books, books.Colony(new ColonyId(subject.Id))).OrderBy(one => Place.Of(one.Last)).Select(one => one.Row);

    private static IEnumerable<(Entry Last, TraitRow Row)> Rows(Books books, ColonyCard colony)
    {
        var outfit = books.Outfit;
        var makers = colony.Counted.OfType<SplitFrom>().Where(split => split.Into == colony.Colony).ToList();
        var stops = LayingStopped.Doses(outfit, colony);
        var group = colony.Counted.OfType<Noted>().LastOrDefault(note => note.About == "treatment group");
        // A queen who came back has one row for a season; of those whom nobody named each is another.
        foreach (var reigns in colony.Reigns.GroupBy(reign => reign.Queen is { } named ? named : (object)reign).Select(reigns => reigns.ToList()))
        {
            var id = reigns[0].Queen;
            // Whoever was set into another colony, or lost, does not reign here, though nobody said so here.
            var here = id is { } placed ? books.Queen(placed).Placings.Where(placing => placing.Colony == colony.Colony).ToList() : null;
            bool Hers(Entry entry) => reigns.Exists(reign => Place.During(entry, reign.CameBy, reign.WentBy)) && (here is null || here.Exists(placing => Place.During(entry, placing.By, placing.Until)));
            var seasons = colony.Counted.Where(entry => Tells(entry) && Hers(entry)).GroupBy(entry => Season.Of(entry.On.Day, outfit.SeasonStartMonth)).ToList();
            if (seasons.Count == 0) continue;
            var mother = id is { } daughter ? Pedigree.MotherOf(books, daughter) : null;
            var line = id is { } descendant ? Pedigree.LineOf(books, descendant) : null;
            var birth = id is { } queen ? Pedigree.BirthOf(books, queen) : null;
            foreach (var season in seasons)
            {
                var doses = colony.Counted.OfType<Treated>().Where(dose => Season.Of(dose.On.Day, outfit.SeasonStartMonth) == season.Key).ToList();
                var seen = new Seen([.. season], doses, stops);
                if (!seen.IsThere) continue;
                var begins = colony.Began is { How: not HowEstablished.OpeningCount } && Season.Of(colony.Began.On.Day, outfit.SeasonStartMonth) == season.Key;
                var stay = colony.Stays.LastOrDefault(stay => Place.Of(stay.CameBy) <= Place.Of(seen.Last));
                yield return (seen.Last, new TraitRow
                {
                    YardId = stay?.Spot.Yard,
                    Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
                    Spot = stay?.Spot.Number,
                    ColonyId = colony.Colony,
                    Colony = Names.Of(colony),
                    Season = season.Key,
                    SeenFrom = seen.Entries[0].On.Day,
                    SeenTo = seen.Last.On.Day,
                    QueenId = id,
                    Queen = id is { } named ? Names.Of(books.Queen(named)) : null,
                    MotherId = mother?.Mother,
                    Mother = mother is { } known ? Names.Of(books.Queen(known.Mother)) : null,
                    MotherIs = mother?.Sure,
                    Line = line?.Line,
                    QueenAge = birth is { } born && Season.Of(born.When.Earliest, outfit.SeasonStartMonth) is var first && first == Season.Of(born.When.Day, outfit.SeasonStartMonth) ? season.Key - first : null,
                    Maker = makers.Select(split => split.Colony).Distinct().ToList() is [var one] ? Names.Of(books.Colony(one)) : null,
                    New = begins,
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
                    DosedBetween = seen.Washes.Count > 1 && doses.Exists(dose => Place.During(dose, seen.Washes[0], seen.Washes[^1])),
                    Entries = Evidence.Of([begins ? colony.Began : null, stay?.CameBy, group, colony.TakenOut, .. makers, .. doses, .. seen.Entries, .. seen.Stops,
                        .. reigns.Select(reign => reign.CameBy).Concat(here?.Select(placing => placing.By) ?? []).Where(came => Place.Of(came) <= Place.Of(seen.Last)),
                        .. mother?.By ?? [], .. line?.By ?? [], .. birth?.By ?? []]),
                });
            }
        }
    }

    private static bool Tells(Entry entry) => entry is Inspected or Harvested or Washed or Treated;

    private static decimal? Per100(Washed? wash) => wash is { Bees: > 0 } ? Math.Round(100m * wash.Mites / wash.Bees, 4) : null;

    /// <summary>What was recorded in a season while a queen reigned.</summary>
    /// <param name="doses">All of the season: what was given before she came works in her colony, too.</param>
    /// <param name="stops">Those of all seasons that stop laying.</param>
    private sealed class Seen(IReadOnlyList<Entry> entries, IReadOnlyList<Treated> doses, IReadOnlyList<(Treated Dose, DateOnly Until)> stops)
    {
        private readonly IReadOnlyList<Inspected> _looks = [.. entries.OfType<Inspected>()];

        /// <summary>Looks at the pattern, with the dose that they came too soon after.</summary>
        private readonly IReadOnlyList<(Inspected Look, Treated? Stop)> _patterns = [.. entries.OfType<Inspected>().Where(look => look.BroodPattern is not null).Select(look => (look, LayingStopped.By(stops, look)))];

        public IReadOnlyList<Washed> Washes { get; } = [.. entries.OfType<Washed>().Where(wash => wash.Bees > 0)];

        public IReadOnlyList<Entry> Entries { get; } = [.. entries.Where(entry => entry is not Inspected look || look.FramesOfBees is not null || look.Temper is not null || look.BroodPattern is not null)];

        /// <summary>Doses alone are no trait.</summary>
        public bool IsThere => Entries.Any(entry => entry is not Treated);

        public Entry Last => Entries[^1];

        public decimal? Mean(Func<Inspected, decimal?> of) => Mean(_looks.Select(of));

        public int TooSoon => _patterns.Count(one => one.Stop is not null);

        /// <summary>The doses that made looks too soon.</summary>
        public IEnumerable<Entry?> Stops => _patterns.Select(one => one.Stop);

        public decimal? Pattern => Mean(_patterns.Where(one => one.Stop is null).Select(one => (decimal?)one.Look.BroodPattern));

        /// <summary>Supers alone say nothing of how much honey was in them.</summary>
        public decimal? Honey => entries.OfType<Harvested>().Select(harvest => harvest.Honey?.InKilograms()).OfType<decimal>().ToList() is { Count: > 0 } weights ? Math.Round(weights.Sum(), 4) : null;

        public string? Courses => doses.Select(dose => dose.Course).Distinct().Order(StringComparer.Ordinal).ToList() is { Count: > 0 } courses ? string.Join(" + ", courses) : null;

        private static decimal? Mean(IEnumerable<decimal?> of) => of.OfType<decimal>().ToList() is { Count: > 0 } values ? Math.Round(values.Average(), 4) : null;
    }
}
