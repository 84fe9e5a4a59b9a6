using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections.Lineage;

/// <summary>See question.md. The rows of a subject are the links that lead to it.</summary>
public sealed class LineageQuestion : Question<LinkRow>
{
    public override string Name => "lineage";

    public override bool Asks(SubjectKind kind) => kind is SubjectKind.Queen or SubjectKind.Colony;

    public override IEnumerable<LinkRow> RowsFor(Books books, Subject subject) =>
        subject.Kind == SubjectKind.Queen ? ToQueen(books, new QueenId(subject.Id)) : ToColony(books, new ColonyId(subject.Id));

    private static IEnumerable<LinkRow> ToQueen(Books books, QueenId queen)
    {
        var card = books.Queen(queen);
        if (Pedigree.MotherOf(books, queen) is { } mother)
        {
            var birth = Pedigree.BirthOf(books, queen);
            yield return new LinkRow
            {
                Link = LinkKind.Mother,
                FromId = mother.Mother.Value,
                From = Names.Of(books.Queen(mother.Mother)),
                ToId = queen.Value,
                To = Names.Of(card),
                OnFrom = birth?.When.Earliest,
                OnTo = birth?.When.Day,
                Sure = mother.Sure,
                EffectiveDrones = books.Queen(mother.Mother).Mated?.EffectiveDrones,
                Entries = Evidence.Of([.. mother.By, .. birth?.By ?? [], books.Queen(mother.Mother).Mated is { EffectiveDrones: not null } mated ? mated : null]),
            };
        }

        foreach (var drones in card.Mated?.Drones.Distinct() ?? [])
            yield return new LinkRow
            {
                Link = LinkKind.Drones,
                FromId = drones.Value,
                From = Names.Of(books.Queen(drones)),
                ToId = queen.Value,
                To = Names.Of(card),
                OnFrom = card.Mated!.On.Earliest,
                OnTo = card.Mated.On.Day,
                EffectiveDrones = card.Mated.EffectiveDrones,
                Entries = Evidence.Of([card.Mated]),
            };
    }

    private static IEnumerable<LinkRow> ToColony(Books books, ColonyId colony)
    {
        var card = books.Colony(colony);
        foreach (var entry in card.Counted)
        {
            (LinkKind Link, ColonyId From, decimal? Frames)? link = entry switch
            {
                SplitFrom split when split.Into == colony => (LinkKind.Split, split.Colony, split.FramesOfBees ?? split.FramesOfBrood),
                Combined combined when combined.Into == colony => (LinkKind.Combined, combined.Colony, null),
                FramesMoved { Of: FramesOf.Brood } moved when moved.To == colony => (LinkKind.Brood, moved.Colony, moved.Frames),
                FramesMoved { Of: FramesOf.Bees } moved when moved.To == colony => (LinkKind.Bees, moved.Colony, moved.Frames),
                _ => null,
            };
            if (link is not { } known) continue;
            yield return new LinkRow
            {
                Link = known.Link,
                FromId = known.From.Value,
                From = Names.Of(books.Colony(known.From)),
                ToId = colony.Value,
                To = Names.Of(card),
                OnFrom = entry.On.Earliest,
                OnTo = entry.On.Day,
                Frames = known.Frames,
                Entries = [entry.Id],
            };
        }
    }
}
