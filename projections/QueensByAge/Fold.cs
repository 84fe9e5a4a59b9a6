using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.QueensByAge;

/// <summary>See question.md.</summary>
public sealed class QueensByAgeQuestion : Question<QueenRow>
{
    public override string Name => "queens-by-age";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<QueenRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        if (colony.End is not null || colony.Counted.Count == 0) yield break;
        var stay = colony.Standing;
        var reign = Reigning(books, colony);
        var look = colony.Counted.OfType<Inspected>().LastOrDefault();
        var bees = colony.Counted.OfType<Inspected>().LastOrDefault(inspected => inspected.FramesOfBees is not null);
        var brood = colony.Counted.OfType<Inspected>().LastOrDefault(inspected => inspected.FramesOfBrood is not null);
        var lays = colony.Counted.LastOrDefault(ShowsBrood);
        var few = bees is null ? (bool?)null : bees.FramesOfBees <= books.Outfit.FewFramesOfBees;
        var row = new QueenRow
        {
            YardId = stay?.Spot.Yard,
            Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
            Spot = stay?.Spot.Number,
            ColonyId = colony.Colony,
            Colony = Names.Of(colony),
            Presence = reign is null ? "none known" : reign.Queen is null ? "unnamed queen" : "queen",
            Sure = "unknown",
            Finding = look?.Queen,
            LastLook = look?.On.Day,
            BroodSeen = lays?.On.Day,
            FramesOfBees = bees?.FramesOfBees,
            FramesOfBrood = brood?.FramesOfBrood,
            BeesFew = few,
            Entries = [],
        };
        var rests = new List<Entry?> { colony.Began, stay?.CameBy, look, bees, brood, lays };
        if (reign is not null) row = WithQueen(books, row, colony, reign, rests);
        yield return row with { Entries = Evidence.Of(rests) };
    }

    private static bool ShowsBrood(Entry entry) => entry is Inspected { FramesOfBrood: > 0 } or Inspected { EggsSeen: true } or Inspected { BroodPattern: not null } or Inspected { Queen: QueenFinding.Seen or QueenFinding.Queenright }
        or QueenAccepted { Accepted: true };

    /// <summary>How much of each yard was requeened in a season, by the rows of the living colonies.</summary>
    public static IReadOnlyList<YardShare> ShareRequeened(IEnumerable<QueenRow> rows, int season) =>
    [
        .. rows.GroupBy(row => (row.YardId, row.Yard))
            .Select(yard => new YardShare(
                yard.Key.YardId,
                yard.Key.Yard,
                yard.Count(row => row.SeasonFrom == season && row.SeasonTo == season),
                yard.Count(row => row.SeasonFrom != row.SeasonTo && row.SeasonFrom <= season && row.SeasonTo >= season),
                yard.Count()))
            .OrderBy(share => share.Yard, StringComparer.Ordinal).ThenBy(share => share.YardId?.Value),
    ];

    /// <summary>A queen that was set into another colony since, or lost, no longer reigns here, whoever forgot to say so here.</summary>
    internal static Reign? Reigning(Books books, ColonyCard colony)
    {
        if (colony.Reigning is not { } reign || reign.Queen is not { } queen) return colony.Reigning;
        return books.Queen(queen).LastColony == colony.Colony ? reign : null;
    }

    private static QueenRow WithQueen(Books books, QueenRow row, ColonyCard colony, Reign reign, List<Entry?> rests)
    {
        rests.Add(reign.CameBy);
        var sights = reign.Queen is { } named ? Sights.Of(books, named) : Sights.In(colony, reign).ToList();
        var seen = sights.LastOrDefault();
        rests.Add(seen);
        row = row with { Came = reign.Came, SinceFrom = reign.From.Earliest, SinceTo = reign.From.Day, LastSeen = seen?.On.Day };
        var markSeen = sights.OfType<Inspected>().LastOrDefault(look => look.MarkSeen is not null);
        if (reign.Queen is not { } id)
        {
            rests.Add(markSeen);
            return row with { MarkSeen = Word(markSeen?.MarkSeen) };
        }

        var card = books.Queen(id);
        var birth = Pedigree.BirthOf(books, id);
        var mother = Pedigree.MotherOf(books, id);
        var line = Pedigree.LineOf(books, id);
        rests.AddRange(birth?.By ?? []);
        rests.AddRange(mother?.By ?? []);
        rests.AddRange(line?.By ?? []);
        var lastMark = card.Marked is { } given && (markSeen is null || Place.Of(given) > Place.Of(markSeen)) ? given.Mark : markSeen?.MarkSeen;
        rests.Add(card.Marked);
        rests.Add(markSeen);
        row = row with
        {
            QueenId = id,
            Queen = Names.Of(card),
            MarkSeen = Word(lastMark),
            MotherId = mother?.Mother,
            Mother = mother is { } m ? Names.Of(books.Queen(m.Mother)) : null,
            MotherIs = mother?.Sure,
            Line = line?.Line,
        };
        if (birth is not { } born) return row;
        var start = books.Outfit.SeasonStartMonth;
        var (from, to) = (Season.Of(born.When.Earliest, start), Season.Of(born.When.Day, start));
        return row with
        {
            BornFrom = born.When.Earliest,
            BornTo = born.When.Day,
            SeasonFrom = from,
            SeasonTo = to,
            Sure = from == to ? "certain" : "possible",
            MarkDue = string.Join(" or ", Enumerable.Range(born.When.Earliest.Year, born.When.Day.Year - born.When.Earliest.Year + 1)
                .Select(year => Word(new QueenMark(QueenMark.DueFor(year)))!).Distinct().Take(5)),
        };
    }

    private static string? Word(QueenMark? mark) => mark?.Colour.ToString().ToLowerInvariant();
}
