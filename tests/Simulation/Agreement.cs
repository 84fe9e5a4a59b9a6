using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Projections.OwedWork;
using ColonyLineage.Projections.QueensByAge;
using ColonyLineage.Projections.SpotStory;
using ColonyLineage.Simulation.Oracle;

namespace ColonyLineage.Simulation;

/// <summary>Puts the rows of the folds beside the oracle's, field by field.</summary>
public static partial class Agreement
{
    /// <summary>The first field in which they differ, in words; null where they agree.</summary>
    public static string? Difference(WholeBooks books, IReadOnlyList<IQuestion> questions, OracleBooks oracle)
    {
        foreach (var question in questions)
        {
            var difference = question.Name switch
            {
                "queens-by-age" => Queens(Folds.Rows(books, question).Cast<QueenRow>().ToList(), oracle),
                "dose-completeness" => Doses(Folds.Rows(books, question).Cast<DoseRow>().ToList(), oracle),
                "spot-story" => Bands(Folds.Rows(books, question).Cast<BandRow>().ToList(), oracle),
                "open-work" => Work(Folds.Rows(books, question).Cast<OpenWorkRow>().ToList(), oracle),
                "traits" => Traits(Folds.Rows(books, question).Cast<TraitRow>().ToList(), oracle),
                "lineage" => Links(Folds.Rows(books, question).Cast<LinkRow>().ToList(), oracle),
                _ => null,
            };
            if (difference is not null) return $"{question.Name}: {difference}";
        }

        return Sums(books, oracle);
    }

    /// <summary>What is reckoned over many rows.</summary>
    private static string? Sums(WholeBooks books, OracleBooks oracle)
    {
        if (oracle.Standing.Count == 0) return null;
        var day = oracle.Standing[oracle.Standing.Count / 2].On.Day;
        var season = OracleBooks.SeasonOf(day, oracle.SeasonStart());
        var shares = QueensByAgeQuestion.ShareRequeened(books.Rows(Projections.Questions.QueensByAge), season)
            .Select(share => $"{share.YardId}: {share.Certain} to {share.Certain + share.Possible} of {share.Colonies}");
        if (Differ("shares requeened", Sorted(shares), Sorted(oracle.Shares(season))) is { } share) return share;
        var links = books.Rows(Projections.Questions.Lineage).ToList();
        var graph = new Graph(links);
        foreach (var queen in oracle.AllQueens())
            if (Differ($"descendants of {queen}", Sorted(graph.Descendants(queen.Value, LinkKind.Mother).Select(found => $"{found.Id} {found.Steps}")), Sorted(oracle.Descendants(queen).Select(found => $"{found.Id} {found.Steps}"))) is { } kin)
                return kin;
        var bands = books.Rows(Projections.Questions.SpotStory).ToList();
        foreach (var colony in oracle.AllColonies().Take(3))
            if (Differ($"contacts of {colony} since {day:O}",
                Sorted(Contacts.Of(colony.Value, day, links, bands).Select(contact => $"{contact.ColonyId} {contact.How} {contact.From:O} {contact.To:O}")), Sorted(oracle.Contacts(colony, day))) is { } contacts)
                return contacts;
        return LineRecords(books, oracle);
    }

    private static string Sorted(IEnumerable<string> lines) => string.Join('\n', lines.Order(StringComparer.Ordinal));

    private static string? Queens(List<QueenRow> rows, OracleBooks oracle)
    {
        var theirs = oracle.Queens();
        if (rows.Count != theirs.Count) return $"{rows.Count} rows against the oracle's {theirs.Count}";
        foreach (var right in theirs)
        {
            var own = rows.FindAll(row => row.ColonyId == right.Colony);
            if (own.Count != 1) return $"{own.Count} rows of colony {right.Colony}";
            var row = own[0];
            var start = oracle.SeasonStart();
            var difference = Place(row.YardId, row.Yard, row.Spot, right.At, oracle)
                ?? Differ("colony", row.Colony, oracle.NameOf(right.Colony)) ?? Differ("presence", row.Presence, right.Presence) ?? Differ("queen", row.QueenId, right.Queen)
                ?? Differ("queen's name", row.Queen, right.Queen is { } queen ? oracle.NameOf(queen) : null)
                ?? Differ("born from", row.BornFrom, right.BornFrom) ?? Differ("born to", row.BornTo, right.BornTo)
                ?? Differ("season from", row.SeasonFrom, right.BornFrom is { } from ? OracleBooks.SeasonOf(from, start) : null)
                ?? Differ("season to", row.SeasonTo, right.BornTo is { } to ? OracleBooks.SeasonOf(to, start) : null)
                ?? Differ("sure", row.Sure, right.Sure) ?? Differ("mark due", row.MarkDue, right.MarkDue) ?? Differ("mark seen", row.MarkSeen, right.MarkSeen)
                ?? Differ("mother", row.MotherId, right.Mother) ?? Differ("mother's name", row.Mother, right.Mother is { } mother ? oracle.NameOf(mother) : null)
                ?? Differ("mother is", row.MotherIs, right.MotherIs) ?? Differ("line", row.Line, right.Line) ?? Differ("came", row.Came?.ToString(), right.Came)
                ?? Differ("since from", row.SinceFrom, right.SinceFrom) ?? Differ("since to", row.SinceTo, right.SinceTo) ?? Differ("last seen", row.LastSeen, right.LastSeen)
                ?? Differ("finding", row.Finding, right.Finding) ?? Differ("last look", row.LastLook, right.LastLook) ?? Differ("frames of bees", row.FramesOfBees, right.FramesOfBees)
                ?? Differ("frames of brood", row.FramesOfBrood, right.FramesOfBrood) ?? Differ("bees few", row.BeesFew, right.BeesFew)
                ?? (right.Rests.TrueForAll(row.Entries.Contains) ? null : "the row does not name all entries that it rests on");
            if (difference is not null) return $"colony {right.Colony}: {difference}";
        }

        return null;
    }

    private static string? Doses(List<DoseRow> rows, OracleBooks oracle)
    {
        var theirs = oracle.Doses();
        foreach (var row in rows)
            if (!theirs.Exists(right => Same(row, right)))
                return $"colony {row.ColonyId}, {row.Course} {row.Season}: no such row by the oracle";
        foreach (var right in theirs)
        {
            var own = rows.FindAll(row => Same(row, right));
            var difference = own.Count != 1 ? $"{own.Count} rows" : Dose(own[0], right, oracle);
            if (difference is not null) return $"colony {right.Colony}, {right.Course} {right.Season}: {difference}";
        }

        return null;

        static bool Same(DoseRow row, OracleDoseRow right) => row.ColonyId == right.Colony && row.Course == right.Course && row.Season == right.Season;
    }

    private static string? Dose(DoseRow row, OracleDoseRow right, OracleBooks oracle)
    {
        var full = right.Defined?.FullDoses;
        var less = right.Frames < right.Had;
        return Place(row.YardId, row.Yard, row.Spot, right.At, oracle) ?? Differ("colony", row.Colony, oracle.NameOf(right.Colony)) ?? Differ("ended", row.Ended, right.Ended)
            ?? Differ("full doses", row.FullDoses, full) ?? Differ("had", row.Had, right.Had)
            ?? Differ("owed", row.Owed, full is null ? null : full > right.Had ? full - right.Had : 0m)
            ?? Differ("too many", row.TooMany, full is null ? null : right.Had > full ? right.Had - full : 0m)
            ?? Differ("frames had", row.FramesHad, less ? right.Frames : null)
            ?? (less ? right.LeastFrames.Exists(frames => Remark(row.FramesRemark, frames, oracle)) ? null : $"the remark '{row.FramesRemark}' tells of none of the least treated frames" : Differ("remark", row.FramesRemark, null))
            ?? (right.Least.Exists(path => Fits(row, path, right, less, oracle)) ? null
                : $"'{row.Path}' with last dose {row.LastDose:yyyy-MM-dd} and {row.Entries.Count} entries is none of the least treated paths, or stands otherwise to the course's limits ({row}): {string.Join("; ", right.Least.Select(path => Words(path, oracle)))}");
    }

    private static bool Fits(DoseRow row, OraclePath path, OracleDoseRow right, bool less, OracleBooks oracle)
    {
        if (row.Path != Words(path, oracle) || row.LastDose != path.Steps.OfType<Treated>().LastOrDefault()?.On.Day) return false;
        var limits = oracle.Limits(row.ColonyId, path, right.Defined, row.Season);
        if ((row.TooSoon, row.TooLate, row.TooHot, row.TooCold, row.WarmthUnknown, row.SupersOn) != (limits.TooSoon, limits.TooLate, limits.TooHot, limits.TooCold, limits.WarmthUnknown, limits.SupersOn)) return false;
        if ((row.OutFrom, row.OutBy, row.OutOn, row.NextFrom, row.NextBy) != (limits.OutFrom, limits.OutBy, limits.OutOn, limits.NextFrom, limits.NextBy)) return false;
        if ((row.WithholdingUntil, row.BroodTooSoonUntil) != (limits.WithholdingUntil, limits.BroodTooSoonUntil)) return false;
        var rests = path.Steps.Select(step => step.Id).Concat(limits.Rests).ToList();
        if (right.Defined is not null) rests.Add(right.Defined.Id);
        return less ? right.LeastFrames.Exists(frames => row.Entries.ToHashSet().SetEquals([.. rests, frames.Id])) : row.Entries.ToHashSet().SetEquals(rests);
    }

    private static string Words(OraclePath path, OracleBooks oracle) => string.Join(" → ", path.Colonies.Select(oracle.NameOf));

    private static bool Remark(string? remark, FramesMoved frames, OracleBooks oracle) =>
        remark is not null && remark.Contains("from " + oracle.NameOf(frames.Colony)) && remark.Contains(frames.On.ToString()) && remark.Contains(frames.Of == FramesOf.Brood ? "brood" : "bees");

    private static string? Bands(List<BandRow> rows, OracleBooks oracle)
    {
        var theirs = oracle.Bands();
        if (rows.Count != theirs.Count) return $"{rows.Count} bands against the oracle's {theirs.Count}";
        foreach (var colony in oracle.AllColonies())
        {
            var (own, right) = (rows.FindAll(row => row.ColonyId == colony), theirs.FindAll(band => band.Colony == colony));
            if (own.Count != right.Count) return $"colony {colony}: {own.Count} bands against {right.Count}";
            for (var i = 0; i < own.Count; i++)
                if (Band(own[i], right[i], oracle) is { } difference)
                    return $"colony {colony}, band {i}: {difference}";
        }

        return null;
    }

    private static string? Band(BandRow row, OracleBand right, OracleBooks oracle) =>
        Place(row.YardId, row.Yard, row.Spot, right.Stay.Spot, oracle) ?? Differ("colony", row.Colony, oracle.NameOf(right.Colony)) ?? Differ("above", row.Above, right.Stay.Above)
        ?? Differ("from", row.From, right.Stay.Came.On.Earliest) ?? Differ("gone from", row.GoneFrom, right.Stay.GoneFrom) ?? Differ("gone to", row.GoneTo, right.Stay.GoneTo)
        ?? (right.Came is null ? null : Differ("came", row.Came, right.Came)) ?? Differ("went", row.Went, right.Went)
        ?? Differ("up", string.Join('|', row.Up), string.Join('|', right.Up)) ?? Differ("down", string.Join('|', row.Down), string.Join('|', right.Down))
        ?? Differ("queens", string.Join('|', row.Queens), string.Join('|', right.Queens)) ?? Differ("done", row.Done, right.Done.Count)
        ?? (row.Entries.SequenceEqual(right.Done) ? null : "it rests on other entries");

    private static string? Links(List<LinkRow> rows, OracleBooks oracle)
    {
        var own = rows.Select(row => new OracleLink(row.Link.ToString(), row.FromId, row.From, row.ToId, row.To, row.OnFrom, row.OnTo, row.Sure, row.Frames)).ToList();
        foreach (var right in oracle.Links())
            if (!own.Remove(right))
                return $"the oracle has {right}";
        return own.Count > 0 ? $"the oracle has no {own[0]}" : null;
    }

    private static string? Work(List<OpenWorkRow> rows, OracleBooks oracle)
    {
        var own = rows.Select(row => new OracleWorkRow(row.ColonyId, row.Work, row.OpenedBy, row.From, row.By, row.Until, row.Visits, row.PutOffUntil, row.Closed)).ToList();
        foreach (var right in oracle.Work())
            if (!own.Remove(right))
                return $"the oracle has {right}, the fold has {string.Join(", ", own.Where(row => row.Colony == right.Colony))}";
        return own.Count > 0 ? $"the oracle has no {own[0]}" : null;
    }

    private static string? Place(YardId? yardId, string? yard, string? spot, Spot? right, OracleBooks oracle) =>
        Differ("yard", yardId, right?.Yard) ?? Differ("yard's name", yard, right is { } at ? oracle.NameOf(at.Yard) : null) ?? Differ("spot", spot, right?.Number);

    private static string? Differ<T>(string field, T own, T right) => EqualityComparer<T>.Default.Equals(own, right) ? null : $"{field} is {Text(own)}, by the oracle {Text(right)}";

    private static string Text<T>(T value) => value switch { null => "nothing", DateOnly day => day.ToString("yyyy-MM-dd"), _ => value.ToString()! };
}
