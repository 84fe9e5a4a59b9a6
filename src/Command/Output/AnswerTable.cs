using ColonyLineage.Desk;
using ColonyLineage.Projections;
using ColonyLineage.Server.Answers;

namespace ColonyLineage.Command.Output;

/// <summary>An answer as a table for people, in 100 columns: what a person reads, without ids and evidence (these are in JSON and CSV).</summary>
internal static class AnswerTable
{
    private const int Width = 100;
    private const int Gap = 2;
    private const int LongestWord = 16;

    // What a person wants to see of questions with more columns than fit a line. Others show all of theirs.
    private static readonly Dictionary<string, string[]> Shown = new()
    {
        ["queens-by-age"] = ["yard", "spot", "colony", "queen", "season_from", "season_to", "sure", "answers", "mark_due", "mark_seen", "line", "bees_few"],
        ["dose-completeness"] = ["yard", "spot", "colony", "course", "season", "had", "owed", "too_many", "path", "frames_remark", "remarks"],
        ["spot-story"] = ["yard", "spot", "colony", "from", "came", "gone_to", "went", "queens", "done"],
        ["mite-watch"] =
        [
            "yard", "spot", "colony", "on", "to", "nth", "washes", "mites", "bees", "bees_estimated", "per100_bees", "upper_per100", "most_mites", "rule_of_thumb", "is_below",
            "more_washes", "days_since_dose",
        ],
        ["open-work"] = ["yard", "spot", "colony", "work", "what", "from", "by", "until", "visits", "put_off_until"],
        ["owed-work"] = ["yard", "spot", "colony", "work", "what", "of", "from", "by", "state", "put_off_until"],
        ["load-list"] = ["truck", "on", "stop", "yard", "thing", "which", "amount", "unit", "for", "at_hand", "short"],
        ["stores-and-feed"] = ["yard", "spot", "colony", "housing", "heft", "heft_on", "weighed_on", "stores_kg", "fed_sugar_kg", "target_kg", "lacking_kg", "feeder_on", "remarks"],
        ["winter-readiness"] = ["yard", "spot", "colony", "criterion", "of", "met", "found", "remedy"],
        ["readiness-truth"] = ["criterion", "of", "met", "colonies", "lost", "rate", "lower", "upper"],
        ["treatment-record"] = ["yard", "spot", "colony", "on", "taken_out", "course", "doses", "lot", "by", "days_late", "voided", "voided_why", "missing"],
        ["register"] = ["kind", "name", "yard", "spot", "colony", "began", "ended", "fate", "taken_out"],
        ["losses"] = ["yard", "spot", "colony", "came", "known_from", "ended_from", "ended", "end", "lost", "why", "queen", "queen_season_to", "line"],
        ["reigns"] = ["colony", "queen", "line", "season_from", "season_to", "came", "since_to", "last_seen", "went", "gone_from", "gone_to"],
        ["wintering"] = ["winter", "period", "by", "group", "at_risk", "lost", "overall_rate", "overall_wilson_lower", "overall_wilson_upper", "overall_clustered_lower", "overall_clustered_upper"],
        ["efficacy"] = ["yard", "before_to", "dosed_from", "dosed_to", "after_from", "per100_before", "per100_after", "control_yards", "control_per100_before", "control_per100_after", "percent", "naive_percent"],
        ["mite-forecast"] = ["yard", "from", "per100_bees", "upper_per100", "threshold", "days_by_mean", "on_by_mean", "days_by_upper", "on_by_upper"],
        ["line-comparison"] = ["trait", "line", "mothers", "colonies", "yards", "raw_mean", "difference", "lower", "upper", "blup", "reliability"],
        ["line-pairs"] = ["trait", "line", "other", "difference", "standard_error", "freedom", "p", "verdict", "why", "mothers_needed"],
        ["traits"] = ["yard", "colony", "season", "queen", "line", "frames_of_bees", "temper", "brood_pattern", "honey_kg", "first_per100_bees", "last_per100_bees"],
        ["conflicts"] = ["conflict", "colony", "yard", "spot", "on", "what", "settled"],
        ["entries"] = ["on_to", "kind", "colony", "queen", "yard", "spot", "fields", "note", "voided"],
    };

    public static void Write(TextWriter to, string question, Answer answer)
    {
        var columns = Columns(question, answer);
        var cells = InPlace(answer).Select(row => columns.Select(column => Text(row[column])).ToArray()).ToList();
        // A column in which nothing stands only takes room.
        var kept = Enumerable.Range(0, columns.Count).Where(i => cells.Count == 0 || cells.Any(row => row[i].Length > 0)).ToArray();
        var heads = columns.Select(column => answer.Columns[column].Name.Replace('_', ' ')).ToArray();
        var widths = Fit(
            // A heading may break between words; what stands under it shall not for its sake.
            [.. kept.Select(i => cells.Select(row => row[i].Length).Append(heads[i].Split(' ').Max(word => word.Length)).Max())],
            [.. kept.Select(i => Math.Min(LongestWord, cells.Select(row => row[i]).Append(heads[i]).Max(text => text.Split(' ').Max(word => word.Length))))]);
        var right = kept.Select(i => answer.Columns[columns[i]].Type is ColumnType.Whole or ColumnType.Number).ToArray();
        WriteLine(to, [.. kept.Select(i => heads[i])], widths, right);
        to.WriteLine(string.Join(new string(' ', Gap), widths.Select(width => new string('-', width))));
        foreach (var row in cells) WriteLine(to, [.. kept.Select(i => row[i])], widths, right);
        WriteAssumptions(to, answer);
    }

    /// <summary>What is assumed is the same for many rows and long, so it stands below the table, once.</summary>
    private static void WriteAssumptions(TextWriter to, Answer answer)
    {
        var at = answer.Columns.ToList().FindIndex(column => column.Name == "assumptions");
        if (at < 0 || answer.Rows.Count == 0) return;
        to.WriteLine();
        foreach (var line in answer.Rows.SelectMany(row => (string[])row[at]!).Distinct().SelectMany(said => Wrap("Assumed: " + said, Width))) to.WriteLine(line);
    }

    private static List<int> Columns(string question, Answer answer)
    {
        var all = Enumerable.Range(0, answer.Columns.Count).Where(i => answer.Columns[i].Type is not (ColumnType.Id or ColumnType.Entries)).ToList();
        // How surely she answers takes the place of how surely her season is known.
        if (answer.Columns.Any(column => column.Name == "answers")) all.RemoveAll(i => answer.Columns[i].Name == "sure");
        // Other shapes of the same question bring columns of their own: washes by group show all of theirs.
        if (answer.Columns.Any(column => column.Name == "mean_per100_bees")) return all;
        if (!Shown.TryGetValue(question, out var shown) || shown.Count(name => answer.Columns.Any(column => column.Name == name)) < 4) return all;
        var extra = question == "entries" ? all.Where(i => i >= 9 && i < answer.Columns.Count - 7) : [];
        return [.. shown.Select(name => all.FirstOrDefault(i => answer.Columns[i].Name == name, -1)).Where(i => i >= 0).Concat(extra).Distinct()];
    }

    private static string Text(object? value) => value switch
    {
        null => "",
        bool flag => flag ? "yes" : "no",
        string text => OneLine(text),
        string[] texts => OneLine(string.Join(", ", texts)),
        decimal number => number.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture),
        _ => AnswerCsv.Cell(value),
    };

    // What somebody wrote must not move the cursor of who reads it.
    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));

    /// <summary>Takes from the widest columns until the line fits; breaks words only where there is no other way.</summary>
    private static int[] Fit(int[] widths, int[] words)
    {
        foreach (var least in new[] { words, [.. words.Select(_ => 4)] })
            while (widths.Sum() + (Gap * (widths.Length - 1)) > Width)
            {
                var widest = -1;
                for (var i = 0; i < widths.Length; i++)
                    if (widths[i] > least[i] && (widest < 0 || widths[i] > widths[widest])) widest = i;
                if (widest < 0) break;
                widths[widest]--;
            }

        return widths;
    }

    /// <summary>In the order in which one walks through the yards, where the rows say where they stand. The order of a walk along kin stays.</summary>
    private static IEnumerable<object?[]> InPlace(Answer answer)
    {
        var (yard, spot, colony, steps) = (At("yard"), At("spot"), At("colony"), At("steps"));
        if (yard < 0 || spot < 0 || steps >= 0) return answer.Rows;
        var rows = answer.Rows.OrderBy(row => row[yard] as string, ByNumber.Order).ThenBy(row => row[spot] as string, ByNumber.Order);
        return new[] { At("from"), At("on"), At("on_to") }.FirstOrDefault(at => at >= 0, -1) is var day and >= 0
            ? rows.ThenBy(row => row[day] as DateOnly?)
            : rows.ThenBy(row => colony < 0 ? null : row[colony] as string, ByNumber.Order);

        int At(string name)
        {
            for (var i = 0; i < answer.Columns.Count; i++)
                if (answer.Columns[i].Name == name) return i;
            return -1;
        }
    }

    /// <summary>One row, on as many lines as its longest cell needs.</summary>
    private static void WriteLine(TextWriter to, string[] cells, int[] widths, bool[] right)
    {
        var wrapped = cells.Select((cell, i) => Wrap(cell, widths[i])).ToArray();
        for (var line = 0; line < wrapped.Max(lines => lines.Count); line++)
        {
            var parts = wrapped.Select((lines, i) =>
            {
                var text = line < lines.Count ? lines[line] : "";
                return right[i] ? text.PadLeft(widths[i]) : text.PadRight(widths[i]);
            });
            to.WriteLine(string.Join(new string(' ', Gap), parts).TrimEnd());
        }
    }

    private static List<string> Wrap(string text, int width)
    {
        var lines = new List<string>();
        while (text.Length > width)
        {
            var space = text.LastIndexOf(' ', width);
            var at = space > 0 ? space : width;
            lines.Add(text[..at].TrimEnd());
            text = text[at..].TrimStart();
        }

        lines.Add(text);
        return lines;
    }
}
