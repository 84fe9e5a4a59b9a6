using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.Register;

/// <summary>See question.md.</summary>
public sealed class RegisterQuestion : Question<RegisterRow>
{
    public override string Name => "register";

    public override bool Asks(SubjectKind kind) => kind is SubjectKind.Yard or SubjectKind.Colony or SubjectKind.Queen;

    public override IEnumerable<RegisterRow> RowsFor(Books books, Subject subject) => subject.Kind switch
    {
        SubjectKind.Yard => OfYard(books.Yard(new YardId(subject.Id))),
        SubjectKind.Colony => OfColony(books, books.Colony(new ColonyId(subject.Id))),
        SubjectKind.Queen => OfQueen(books, books.Queen(new QueenId(subject.Id))),
        _ => [],
    };

    private static IEnumerable<RegisterRow> OfYard(YardCard yard)
    {
        if (!yard.IsKnown) yield break;
        yield return new RegisterRow
        {
            Kind = SubjectKind.Yard,
            Id = yard.Yard.Value,
            Name = Names.Of(yard),
            YardId = yard.Yard,
            Yard = Names.Of(yard),
            Began = yard.Opened,
            Ended = yard.Closed,
            Fate = yard.Closed is null ? null : "closed",
            Entries = Evidence.Of(yard.Entries),
        };
    }

    private static IEnumerable<RegisterRow> OfColony(Books books, ColonyCard colony)
    {
        if (colony.Counted.Count == 0) yield break;
        var stay = colony.Standing;
        yield return new RegisterRow
        {
            Kind = SubjectKind.Colony,
            Id = colony.Colony.Value,
            Name = Names.Of(colony),
            YardId = stay?.Spot.Yard,
            Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
            Spot = stay?.Spot.Number,
            Began = colony.Began?.On.Earliest,
            Ended = colony.End?.On.Day,
            Fate = colony.End is { } end ? Word(end.How) : null,
            Housing = colony.Housing,
            TakenOut = colony.TakenOut?.Why,
            Entries = Evidence.Of([colony.Began, stay?.CameBy, colony.End?.By, colony.TakenOut]),
        };
    }

    private static IEnumerable<RegisterRow> OfQueen(Books books, QueenCard queen)
    {
        if (queen.Entries.Count == 0) yield break;
        var birth = Pedigree.BirthOf(books, queen.Queen);
        var colony = queen.LastColony is { } last ? books.Colony(last) : null;
        var reigns = colony?.Reigning?.Queen == queen.Queen;
        var gone = colony?.Reigns.LastOrDefault(reign => reign.Queen == queen.Queen && reign.To is not null);
        var stay = reigns ? colony!.Standing : null;
        yield return new RegisterRow
        {
            Kind = SubjectKind.Queen,
            Id = queen.Queen.Value,
            Name = Names.Of(queen),
            YardId = stay?.Spot.Yard,
            Yard = stay is null ? null : Names.Of(books.Yard(stay.Spot.Yard)),
            Spot = stay?.Spot.Number,
            Began = birth?.When.Earliest,
            Ended = queen.EndedBy?.On.Day ?? (reigns ? null : gone?.To?.Day),
            Fate = queen.EndedBy is { } by ? Fate(by) : reigns || gone?.Went is null ? null : Word(gone.Went.Value),
            ColonyId = reigns ? colony!.Colony : null,
            Colony = reigns ? Names.Of(colony!) : null,
            Entries = Evidence.Of([.. birth?.By ?? [], .. queen.Entries.Where(entry => entry.Stream == queen.Queen), gone?.WentBy, queen.EndedBy]),
        };
    }

    private static string Fate(Entry by) => by switch
    {
        QueenKilled => "killed",
        Requeened => "killed",
        SupersedureSeen => "superseded",
        QueenEnded ended => Word(ended.How),
        _ => "lost",
    };

    private static string Word(Enum word) => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(word.ToString());
}
