using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Projections.LineComparison;

namespace ColonyLineage.Server.Answers;

/// <summary>Lines compared: line by line, and pair by pair.</summary>
internal sealed class LineViews(IRows rows)
{
    public async Task<Answer> AnswerAsync(string view, Asked asked, CancellationToken cancel)
    {
        var (trait, by) = (Words.Read<Trait>("trait", asked.Trait), Words.Read<ComparedBy>("by", asked.By) ?? ComparedBy.Line);
        if (asked.Pedigree && by != ComparedBy.Mother) throw Answering.Refuse(Refusals.UnknownWord, "pedigree", "The pedigree relates mothers: ask by mother.");
        var compared = await Compared.OfAsync(rows, asked.Ask, cancel, asked.Pedigree);
        var all = (trait is { } one ? [one] : Enum.GetValues<Trait>()).Select(each => compared.By(each, by, asked.Ask.Season)).ToList();
        return view == "line-pairs"
            ? Answer.Of(all.SelectMany(each => each.Pairs).Select(Compared.Short))
            : Answer.Of(all.SelectMany(each => each.Lines).Select(Compared.Short));
    }
}
