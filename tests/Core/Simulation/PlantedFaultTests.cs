using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.LineComparison;
using ColonyLineage.Simulation;

namespace ColonyLineage.Core.Tests.Simulation;

/// <summary>The laws are seen failing: a fault is planted, and they must find it and make the history small.</summary>
public class PlantedFaultTests(ITestOutputHelper output)
{
    /// <summary>Finds the first history that fails, makes it small, and shows that its JSON fails again.</summary>
    private (Failure Failure, IReadOnlyList<Recorded> Small) Found(Folds folds)
    {
        for (ulong seed = 1; seed <= 2_000; seed++)
        {
            var history = Generator.Make(seed);
            if (new Checks(folds, seed).Find(history) is not { } failure) continue;
            output.WriteLine(Report.Of(folds, history, seed, failure, out var json));
            var small = HistoryText.Read(json);
            Assert.NotNull(new Checks(folds, seed).Find(small));
            Assert.Null(new Checks(Folds.Real, seed).Find(small));
            return (failure, small);
        }

        throw new InvalidOperationException("The fault was not found in 2,000 histories.");
    }

    [Fact]
    public void Empty_comb_that_counts_as_a_path_is_found()
    {
        var faulty = Folds.Real with { Questions = [.. Folds.Real.Questions.Select(question => question == Questions.DoseCompleteness ? new EmptyComb() : question)] };
        var (failure, small) = Found(faulty);
        Assert.StartsWith("the oracle agrees", failure.Law);
        Assert.Contains(small, recorded => recorded.Entry is FramesMoved { Of: FramesOf.EmptyComb });
        Assert.InRange(small.Count, 1, 6);
    }

    [Fact]
    public void Folding_in_the_order_of_arrival_is_found()
    {
        var faulty = Folds.Real with
        {
            Order = (recorded, asOf, knownAt) =>
            {
                var stands = Standing.Of(recorded, asOf, knownAt).Select(entry => entry.Id).ToHashSet();
                return [.. recorded.Select(one => one.Entry).DistinctBy(entry => entry.Id).Where(entry => stands.Contains(entry.Id))];
            },
        };
        var (failure, small) = Found(faulty);
        Assert.Equal("the law of order", failure.Law);
        Assert.InRange(small.Count, 2, 6);
    }

    [Fact]
    public void A_void_that_must_come_after_its_target_is_found()
    {
        var faulty = Folds.Real with
        {
            Order = (recorded, asOf, knownAt) =>
            {
                var known = new Dictionary<EntryId, Entry>();
                foreach (var (entry, at) in recorded)
                    if (knownAt is null || at <= knownAt)
                        if (entry is Voided voided) known.Remove(voided.Entry);
                        else known[entry.Id] = entry;
                return Standing.InOrder(known.Values, asOf);
            },
        };
        var (failure, small) = Found(faulty);
        // Both laws let entries arrive in an order drawn by chance; which of them brings the void first depends on the history.
        Assert.Contains(failure.Law, (string[])["the law of order", "read tables equal a full fold"]);
        Assert.Equal(2, small.Count);
        Assert.Contains(small, recorded => recorded.Entry is Voided);
    }

    [Fact]
    public void Rows_that_read_a_card_without_noting_it_are_found()
    {
        var faulty = Folds.Real with { Questions = [.. Folds.Real.Questions.Select(question => question == Questions.DoseCompleteness ? new Unnoted() : question)] };
        var (failure, small) = Found(faulty);
        Assert.Equal("read tables equal a full fold", failure.Law);
        Assert.InRange(small.Count, 2, 6);
    }

    [Fact]
    public void Rows_that_rest_on_a_void_entry_are_found()
    {
        var faulty = Folds.Real with { Questions = [.. Folds.Real.Questions.Select(question => question == Questions.DoseCompleteness ? new Elsewhere() : question)] };
        Assert.Equal("the law of evidence", Found(faulty).Failure.Law);
    }

    [Fact]
    public void A_pattern_seen_too_soon_that_is_counted_is_found()
    {
        var (failure, small) = Found(Folds.Real with { Questions = [.. Folds.Real.Questions.Select(question => question == Questions.Traits ? new NeverTooSoon() : question)] });
        Assert.StartsWith("the oracle agrees", failure.Law);
        Assert.Contains(small, recorded => recorded.Entry is CourseDefined { BroodTooSoonDays: not null });
    }

    private sealed class NeverTooSoon : Question<TraitRow>
    {
        public override string Name => Questions.Traits.Name;

        public override bool Asks(SubjectKind kind) => Questions.Traits.Asks(kind);

        public override IEnumerable<TraitRow> RowsFor(Books books, Subject subject) => Questions.Traits.RowsFor(books, subject).Select(row => row with { PatternsTooSoon = 0 });
    }

    private sealed class EmptyComb : Question<DoseRow>
    {
        public override string Name => Questions.DoseCompleteness.Name;

        public override bool Asks(SubjectKind kind) => Questions.DoseCompleteness.Asks(kind);

        public override IEnumerable<DoseRow> RowsFor(Books books, Subject subject)
        {
            var combs = books.Colony(new ColonyId(subject.Id)).Counted.OfType<FramesMoved>().LastOrDefault(frames => frames.Of == FramesOf.EmptyComb && frames.To.Value == subject.Id);
            return Questions.DoseCompleteness.RowsFor(books, subject)
                .Select(row => combs is not null && row.Had > 0 && row.FramesHad is null ? row with { FramesHad = 0, FramesRemark = "empty comb" } : row);
        }
    }

    private sealed class Unnoted : Question<DoseRow>
    {
        public override string Name => Questions.DoseCompleteness.Name;

        public override bool Asks(SubjectKind kind) => Questions.DoseCompleteness.Asks(kind);

        public override IEnumerable<DoseRow> RowsFor(Books books, Subject subject)
        {
            books.StopNoting();
            var rows = Questions.DoseCompleteness.RowsFor(books, subject).ToList();
            books.StartNoting();
            return rows;
        }
    }

    private sealed class Elsewhere : Question<DoseRow>
    {
        public override string Name => Questions.DoseCompleteness.Name;

        public override bool Asks(SubjectKind kind) => Questions.DoseCompleteness.Asks(kind);

        public override IEnumerable<DoseRow> RowsFor(Books books, Subject subject) =>
            Questions.DoseCompleteness.RowsFor(books, subject).Select(row => row with { Entries = [.. row.Entries, new EntryId(subject.Id)] });
    }
}
