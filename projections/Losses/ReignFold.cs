using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.Losses;

/// <summary>Every queen that a colony had, and how long. See question.md.</summary>
public sealed class ReignsQuestion : Question<ReignRow>
{
    public override string Name => "reigns";

    public override bool Asks(SubjectKind kind) => kind == SubjectKind.Colony;

    public override IEnumerable<ReignRow> RowsFor(Books books, Subject subject)
    {
        var colony = books.Colony(new ColonyId(subject.Id));
        foreach (var reign in colony.Reigns)
        {
            var birth = reign.Queen is { } queen ? Pedigree.BirthOf(books, queen) : null;
            var line = reign.Queen is { } descendant ? Pedigree.LineOf(books, descendant) : null;
            var seen = Sights.In(colony, reign).LastOrDefault();
            var start = books.Outfit.SeasonStartMonth;
            yield return new ReignRow
            {
                ColonyId = colony.Colony,
                Colony = Names.Of(colony),
                QueenId = reign.Queen,
                Queen = reign.Queen is { } named ? Names.Of(books.Queen(named)) : null,
                Line = line?.Line,
                BornFrom = birth?.When.Earliest,
                BornTo = birth?.When.Day,
                SeasonFrom = birth is { } from ? Season.Of(from.When.Earliest, start) : null,
                SeasonTo = birth is { } to ? Season.Of(to.When.Day, start) : null,
                Came = reign.Came,
                SinceFrom = reign.From.Earliest,
                SinceTo = reign.From.Day,
                LastSeen = seen?.On.Day,
                Went = reign.Went,
                GoneFrom = reign.To?.Earliest,
                GoneTo = reign.To?.Day,
                Entries = Evidence.Of([colony.Began, reign.CameBy, seen, reign.WentBy, .. birth?.By ?? [], .. line?.By ?? []]),
            };
        }
    }
}
