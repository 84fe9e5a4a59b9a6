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
        if (asked.Pedigree && by is not (ComparedBy.Mother or ComparedBy.Queen)) throw Answering.Refuse(Refusals.UnknownWord, "pedigree", "The pedigree relates mothers and queens: ask by mother or by queen.");
        if (asked.Living && by != ComparedBy.Queen) throw Answering.Refuse(Refusals.UnknownWord, "living", "Queens live: ask by queen.");
        if (by == ComparedBy.Queen && view == "line-pairs") throw Answering.Refuse(Refusals.UnknownWord, "by", "Nothing is claimed of pairs of queens: ask line-comparison by queen.");
        // Queens without their kin would be no more than their own few records.
        var compared = await Compared.OfAsync(rows, asked.Ask, cancel, asked.Pedigree || by == ComparedBy.Queen);
        var living = asked.Living ? (await Kindred.OfAsync(rows, asked.Ask, cancel)).Living.Select(queen => queen.Id).ToHashSet() : null;
        var all = compared.By(trait is { } one ? [one] : Enum.GetValues<Trait>(), by, asked.Ask.Season);
        return view == "line-pairs"
            ? Answer.Of(all.SelectMany(each => each.Pairs).Select(Compared.Short))
            : Answer.Of(all.SelectMany(each => each.Lines).Where(row => living is null || living.Contains(row.QueenId!.Value.Value)).Select(Compared.Short));
    }
}
