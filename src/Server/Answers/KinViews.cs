using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Relationship;

namespace ColonyLineage.Server.Answers;

/// <summary>Inbreeding, relationship and planned matings, out of the pedigree that the books hold.</summary>
internal sealed class KinViews(IRows rows)
{
    public async Task<Answer> AnswerAsync(string view, Asked asked, CancellationToken cancel)
    {
        if (view != "inbreeding" && asked.Ask.Queen is null) throw Answering.Refuse(Refusals.Missing, "queen", "Say which queen is meant.");
        var kindred = await Kindred.OfAsync(rows, asked.Ask, cancel);
        return view switch
        {
            "inbreeding" => Answer.Of(Relations.Inbreeding(kindred.Books, asked.Ask.Queen is { } one ? kindred.Named(one, "queen") : kindred.Living.Select(queen => queen.Id))),
            "relationship" => Answer.Of(Relations.To(kindred.Books, kindred.One(asked.Ask.Queen!, "queen"), asked.With is { } other ? kindred.Named(other, "with") : kindred.Living.Select(queen => queen.Id))),
            _ => Answer.Of([
                Relations.Planned(
                    kindred.Books, kindred.One(asked.Ask.Queen!, "queen"),
                    [.. (asked.Drones ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(name => kindred.One(name, "drones")).Distinct()],
                    asked.Effective ?? (decimal)QueenPedigree.UsualDrones, asked.Alleles ?? Relations.UsualAlleles)]),
        };
    }
}
