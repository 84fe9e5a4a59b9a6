using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.Losses;

/// <summary>See question.md.</summary>
public sealed class LossesQuestion : Question<LifeRow>
{
    public override string Name => "losses";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<LifeRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        if (colony.Counted.Count == 0) yield break;
        var first = (Entry?)colony.Began ?? colony.Counted[0];
        var stay = colony.Stays.Count > 0 ? colony.Stays[^1] : null;
        var reign = colony.Reigns.Count > 0 ? colony.Reigns[^1] : null;
        var birth = reign?.Queen is { } queen ? Pedigree.BirthOf(books, queen) : null;
        var line = reign?.Queen is { } descendant ? Pedigree.LineOf(books, descendant) : null;
        var start = books.Outfit.SeasonStartMonth;
        yield return new LifeRow
        {
            ColonyId = colony.Colony,
            Colony = Names.Of(colony),
            YardId = stay?.Spot.Yard,
            Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
            Spot = stay?.Spot.Number,
            Began = AgeIsKnown(colony.Began) ? colony.Began!.On.Earliest : null,
            Came = colony.Began?.How,
            MatingNuc = colony.Housing == Housing.MatingNuc,
            KnownFrom = first.On.Day,
            EndedFrom = colony.End?.On.Earliest,
            Ended = colony.End?.On.Day,
            End = colony.End?.How,
            Lost = IsLost(colony.End),
            Why = Why(colony.End),
            QueenId = reign?.Queen,
            Queen = reign?.Queen is { } named ? Names.Of(books.Queen(named)) : null,
            QueenSeasonFrom = birth is { } from ? Season.Of(from.When.Earliest, start) : null,
            QueenSeasonTo = birth is { } to ? Season.Of(to.When.Day, start) : null,
            Line = line?.Line,
            Entries = Evidence.Of([first, stay?.CameBy, colony.End?.By, reign?.CameBy, .. birth?.By ?? [], .. line?.By ?? []]),
        };
    }

    /// <summary>An opening count says that a colony was there, and of its age nothing, unless it says between which days it began.</summary>
    private static bool AgeIsKnown(ColonyEstablished? began) => began is not null && (began.How != HowEstablished.OpeningCount || !began.On.IsExact);

    private static bool IsLost(ColonyEnd? end) => end?.How is EndKind.Dead or EndKind.GivenUp;

    private static string? Why(ColonyEnd? end) => end?.How switch
    {
        EndKind.Dead => end.Why is { } cause ? $"found dead: {cause}" : "found dead",
        EndKind.GivenUp => $"given up: {end.Why}",
        _ => null,
    };
}
