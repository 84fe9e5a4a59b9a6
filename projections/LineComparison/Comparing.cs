using ColonyLineage.Projections.Relationship;
using ColonyLineage.Projections.Sums;
using ColonyLineage.Projections.Sums.Mixed;
using MathNet.Numerics.Distributions;
using BetaBinomial = ColonyLineage.Projections.Sums.BetaBinomial;

namespace ColonyLineage.Projections.LineComparison;

/// <summary>
/// Compares lines: y = yard × season + queen's age (+ treatments) + line + mother within line + error, by REML. What is claimed goes by a rule alone: two lines differ where
/// their difference, in standard errors by Kenward and Roger, exceeds Tukey's range for as many lines. The mothers are the replicates, never the colonies. See question.md.
/// </summary>
public static class Comparing
{
    /// <summary>With fewer the mothers' variance is a guess.</summary>
    private const int LeastMothers = 2;

    /// <param name="pedigree">By queens or mothers: lets these, or the mothers' daughters, be related as the pedigree has it (BLUP with A); null for them as if they were not related.</param>
    public static Comparison Of(IReadOnlyList<LineRecord> records, Trait trait, ComparedBy by, BooksPedigree? pedigree = null)
    {
        var left = new List<string>();
        var kept = records.Where(record => record.Line != Records.NoLine && (by != ComparedBy.Line || record.Mother is not null)).ToList();
        if (records.Count(record => record.Line == Records.NoLine) is > 0 and var none) left.Add($"{Count(none, "record", "records")} of queens of no line left out.");
        if (records.Count(record => record.Line != Records.NoLine && record.Mother is null) is > 0 and var unknown && by == ComparedBy.Line) left.Add($"{Count(unknown, "record", "records")} of queens whose mother is not known left out.");
        var lines = kept.GroupBy(record => record.Line).OrderBy(line => line.Key, StringComparer.Ordinal).ToDictionary(line => line.Key, line => line.ToList());
        var joined = new Joined(kept);
        var parts = joined.Parts();
        List<string> first = [.. by == ComparedBy.Line ? Confounded(lines, parts) : Apart(lines, parts, by == ComparedBy.Queen && pedigree is not null), .. left];
        // Predictions are drawn within a yard and season: they need no way from one part to another. Differences do.
        var main = by == ComparedBy.Line ? parts.FirstOrDefault() ?? [] : [.. lines.Keys];
        var model = main.Count < 2 ? null : LineModel.Of([.. main.SelectMany(line => lines[line])], trait, by, pedigree);
        if (model?.Problem is { } problem) first.Add(problem);
        var shares = Traits.IsShare(trait) && by != ComparedBy.Queen && lines.Count > 1 ? Shares(lines) : [];
        var rows = lines.Select(line => Row(line.Key, line.Value, trait, by, model, shares.GetValueOrDefault(line.Key), lines.Count)).ToList();
        var pairs = Pairs(lines, trait, by, joined, model);
        return new Comparison(
            trait, by, [.. Wanted(rows, trait, by)], pairs, model?.Parts ?? [], first) { Yardstick = model?.Yardstick };
    }

    private static IEnumerable<string> Confounded(IReadOnlyDictionary<string, List<LineRecord>> lines, IReadOnlyList<IReadOnlyList<string>> parts)
    {
        if (lines.Count == 0) yield return "There is no record of this trait in any line.";
        if (lines.Count == 1) yield return "There is one line only: nothing to compare it with.";
        foreach (var part in parts.Skip(1))
            yield return part is [var alone]
                ? $"{alone} shares no yard and season with another line: what is the line's and what is the place's cannot be told apart."
                : $"{string.Join(", ", part)} share no yard and season with {string.Join(", ", parts[0])}: they cannot be compared with these.";
        foreach (var (name, line) in lines.Where(line => parts.Count > 0 && parts[0].Contains(line.Key) && line.Value.Select(record => record.Yard).Distinct().Count() == 1 && parts[0].Count > 1))
            yield return $"{name} stands in {line[0].Yard} alone: what is said of it holds there.";
    }

    private static IEnumerable<string> Apart(Dictionary<string, List<LineRecord>> lines, IReadOnlyList<IReadOnlyList<string>> parts, bool kin)
    {
        if (lines.Count < 2) yield return "There are fewer than two to compare.";
        if (parts.Count > 1) yield return FormattableString.Invariant($"They fall into {parts.Count} parts that share no yard and season: each prediction is from the mean of its own yard and season, and {(kin ? "across parts their kin alone ties them together" : "says nothing across parts")}.");
    }

    private static LineRow Row(string name, IReadOnlyList<LineRecord> records, Trait trait, ComparedBy by, LineModel? model, (double Share, double Lower, double Upper)? share, int lines)
    {
        var contrast = model?.FromMean(name);
        var half = contrast is null ? 0 : Quantile(contrast.Freedom) * contrast.StandardError;
        var blup = model?.Blup(name);
        return new LineRow
        {
            Trait = trait,
            Line = name,
            QueenId = by == ComparedBy.Queen ? records[0].QueenId : null,
            Mothers = Mothers(records),
            Colonies = records.Select(record => record.ColonyId).Distinct().Count(),
            Records = records.Count,
            Yards = records.Select(record => record.Yard).Distinct().Count(),
            RawMean = Rounded(records.Average(record => record.Value)),
            Difference = Rounded(contrast?.Value),
            StandardError = Rounded(contrast?.StandardError),
            Freedom = contrast is null || double.IsInfinity(contrast.Freedom) ? null : Math.Round((decimal)contrast.Freedom, 1),
            Lower = Rounded(contrast?.Value - half),
            Upper = Rounded(contrast?.Value + half),
            Blup = Rounded(blup?.Blup),
            BlupError = Rounded(blup?.StandardError),
            Reliability = Rounded(blup?.Reliability),
            Share = Rounded(share?.Share),
            ShareLower = Rounded(share?.Lower),
            ShareUpper = Rounded(share?.Upper),
            Cautions = Cautions.Of(records, trait, by),
            Entries = [.. records.SelectMany(record => record.Entries).Distinct()],
        };
    }

    /// <summary>The wanted end first, of queens by their predictions; lines without an adjusted figure last.</summary>
    private static IEnumerable<LineRow> Wanted(IEnumerable<LineRow> rows, Trait trait, ComparedBy by) => rows
        .Select(row => (Row: row, Figure: by == ComparedBy.Queen ? row.Blup : row.Difference))
        .OrderBy(one => one.Figure is null)
        .ThenBy(one => Traits.MoreIsBetter(trait) ? -one.Figure : one.Figure)
        .ThenBy(one => one.Row.Line, StringComparer.Ordinal)
        .Select(one => one.Row);

    private static List<LinePairRow> Pairs(Dictionary<string, List<LineRecord>> lines, Trait trait, ComparedBy by, Joined joined, LineModel? model)
    {
        var names = lines.Keys.ToList();
        var pairs = new List<LinePairRow>();
        // Hundreds of mothers make tens of thousands of pairs, and nothing is claimed of any.
        if (by != ComparedBy.Line && names.Count > 40) return pairs;
        for (var i = 0; i < names.Count; i++)
            for (var j = i + 1; j < names.Count; j++) pairs.Add(Pair(names[i], names[j], lines, trait, by, joined, model));
        return [.. pairs.OrderBy(pair => pair.Verdict == Verdict.CannotSay).ThenBy(pair => pair.P ?? 2).ThenBy(pair => pair.Line, StringComparer.Ordinal).ThenBy(pair => pair.Other, StringComparer.Ordinal)];
    }

    private static LinePairRow Pair(string one, string other, Dictionary<string, List<LineRecord>> lines, Trait trait, ComparedBy by, Joined joined, LineModel? model)
    {
        var contrast = model?.Between(one, other);
        var p = contrast is null || model is null ? null : model.Chance(contrast);
        var few = new[] { one, other }.Where(line => Mothers(lines[line]) < LeastMothers).ToList();
        var why = !joined.Are(one, other) ? "they share no yard and season, nor are they held together by lines that do"
            : by == ComparedBy.Mother ? "daughters of one mother each: differences between mothers are not claimed, lines are"
            : by == ComparedBy.Queen ? "each is one queen: of her own there is nothing to repeat"
            : by == ComparedBy.Maker ? "each is one colony: its splits share its mites, its yard and one mother, and are no replicates"
            : contrast is null ? model?.Problem ?? "they cannot be told from yard, season, age or treatment"
            : few.Count > 0 ? $"{string.Join(" and ", few)} {(few.Count == 1 ? "has" : "have each")} fewer than two mothers"
            : p is null ? "no degrees of freedom are left for the mothers"
            : p > .05m ? "as much is made by chance among as many lines"
            : null;
        var mothers = new[] { one, other }.Select(line => (double)Mothers(lines[line])).ToArray();
        var now = 2 / ((1 / mothers[0]) + (1 / mothers[1]));
        // Lopsided lines have fewer degrees of freedom than as many mothers spread evenly would: more than there are it takes in any case.
        int? needed = why is null || contrast is null || by != ComparedBy.Line || SampleSize.Mothers(contrast.Value, contrast.StandardError, now, lines.Count) is not { } least ? null : Math.Max(least, (int)now + 1);
        return new LinePairRow
        {
            Trait = trait,
            Line = one,
            Other = other,
            Difference = Rounded(contrast?.Value),
            StandardError = Rounded(contrast?.StandardError),
            Freedom = contrast is null || double.IsInfinity(contrast.Freedom) ? null : Math.Round((decimal)contrast.Freedom, 1),
            P = by == ComparedBy.Line ? p : null,
            Verdict = why is null ? Verdict.Differ : Verdict.CannotSay,
            Why = why,
            MothersNeeded = needed,
            ColoniesNeeded = needed is { } m ? (int)Math.Ceiling(m * new[] { one, other }.Average(line => lines[line].Select(record => record.ColonyId).Distinct().Count() / (double)Mothers(lines[line]))) : null,
            Entries = [.. lines[one].Concat(lines[other]).SelectMany(record => record.Entries).Distinct()],
        };
    }

    private static Dictionary<string, (double Share, double Lower, double Upper)?> Shares(Dictionary<string, List<LineRecord>> lines)
    {
        var counts = lines.ToDictionary(line => line.Key, line => new LostOf((int)line.Value.Sum(record => record.Value), line.Value.Count));
        var fit = BetaBinomial.Fit([.. counts.Values]);
        // Where the lines differ no more than by chance all have the share of all, and its interval is that of the whole: not one of no width.
        var all = new LostOf(counts.Values.Sum(line => line.Lost), counts.Values.Sum(line => line.AtRisk));
        var (lower, upper) = Proportion.Wilson(all.Lost, all.AtRisk);
        return counts.ToDictionary(line => line.Key, line => ((double, double, double)?)(fit.Spread > 0 ? fit.Shrunk(line.Value) : (fit.Mean, lower, upper)));
    }

    private static int Mothers(IEnumerable<LineRecord> records) => records.Select(record => record.Mother).OfType<string>().Distinct().Count();

    private static double Quantile(double freedom) => double.IsInfinity(freedom) ? Normal.InvCDF(0, 1, .975) : StudentT.InvCDF(0, 1, freedom, .975);

    private static decimal? Rounded(double? value) => value is { } known && double.IsFinite(known) && Math.Abs(known) < 1e15 ? Math.Round((decimal)known, 6) : null;

    private static decimal Rounded(double value) => Math.Round((decimal)value, 6);

    private static string Count(int number, string one, string many) => FormattableString.Invariant($"{number} {(number == 1 ? one : many)}");
}
