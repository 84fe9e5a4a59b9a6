using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.TreatmentRecord;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>The columns of Regulation (EU) 2019/6, Article 108(2), and what is missing, named.</summary>
public class TreatmentRecordCases
{
    [Fact]
    public void A_use_with_its_lot_has_all_that_the_article_asks_for()
    {
        var story = Yard();
        var lot = Lot(story);
        var use = Treat(story, "20 Jul 2026", "T26-1", new Quantity(50, "g"));
        TakeOut(story, "31 Aug 2026");
        var row = Assert.Single(Rows(story));
        Assert.Equal((Story.Day("20 Jul 2026"), Story.Day("31 Aug 2026"), 42), (row.On, row.TakenOut, row.Days));
        Assert.Equal(("the strips in the box", "amitraz", "T26-1", 50m, "g"), (row.Product, row.Substance, row.Lot, row.Amount, row.Unit));
        Assert.Equal(("the shop at the ford, Lower Lane 3", "folder 9", "none asked for"), (row.Supplier, row.Proof, row.Prescriber));
        // Withdrawal counts from the day on which the strips came out.
        Assert.Equal((14, Story.Day("14 Sep 2026")), (row.WithdrawalDays, row.WithdrawalUntil));
        Assert.Equal(("M", "1", "A", "Nell", 2026), (row.Yard, row.Spot, row.Colony, row.By, row.Season));
        Assert.Equal((1m, 1m), (row.CourseHad, row.CourseFull));
        Assert.Empty(row.Missing);
        Assert.Subset(row.Entries.ToHashSet(), new HashSet<EntryId> { use.Id, lot.Id });
    }

    [Fact]
    public void A_withdrawal_period_of_zero_is_a_figure()
    {
        var story = Yard(course => course with { WithholdingDays = 0, TakenOut = null });
        Treat(story, "20 Jul 2026", null, null);
        var row = Assert.Single(Rows(story));
        Assert.Equal((0, Story.Day("20 Jul 2026")), (row.WithdrawalDays, row.WithdrawalUntil));
        Assert.Equal(["product", "amount", "lot"], row.Missing);
    }

    [Fact]
    public void What_is_missing_is_counted_by_name()
    {
        var story = Yard();
        Treat(story, "20 Jul 2026", null, null);
        Treat(story, "20 Jul 2025", "unknown lot", null);
        var missing = Uses.Missing(Rows(story));
        Assert.Equal([("amount", 2), ("product", 2), ("taken out", 2), ("lot", 1), ("purchase of the lot", 1)], missing.Select(row => (row.What, row.Uses)).OrderByDescending(row => row.Uses).ThenBy(row => row.What));
    }

    [Fact]
    public void A_voided_use_stays_struck_through_with_who_and_why_and_how_late()
    {
        var story = Yard();
        story.RecordedAt = new DateTimeOffset(2026, 11, 14, 19, 30, 0, TimeSpan.Zero);
        var wrong = Treat(story, "20 Jul 2026", "T26-1", null);
        story.RecordedAt = new DateTimeOffset(2026, 11, 20, 8, 0, 0, TimeSpan.Zero);
        story.Void(wrong, "20 Nov 2026", "wrong line of the sheet");
        var row = Assert.Single(Rows(story));
        Assert.Equal((true, "wrong line of the sheet", "2026-11-20T08:00Z", "2026-11-14T19:30Z", 117), (row.Voided, row.VoidedWhy, row.VoidedAt, row.Recorded, row.DaysLate));
        Assert.Empty(row.Missing);
        Assert.Null(row.CourseHad);
    }

    [Fact]
    public void Colonies_since_moved_combined_dead_or_sold_are_in_it_where_they_stood()
    {
        var story = Yard();
        story.OpenYard("P");
        foreach (var (colony, spot) in (ReadOnlySpan<(string, string)>)[("B", "M 2"), ("C", "M 3"), ("D", "M 4"), ("E", "M 5")]) story.Begins(colony, "1 May 2020", spot);
        foreach (var colony in (string[])["A", "B", "C", "D", "E"]) story.Dose(colony, "20 Jul 2026", 1, "S");
        story.Move("A", "P 7", "1 Aug 2026");
        story.Combine("B", "C", "2 Aug 2026");
        story.Dead("D", "20 Feb 2027");
        story.Tell((id, act, order) => new Sold { Id = id, Act = act, Order = order, On = Story.Day("1 Mar 2027"), Colony = Story.Colony("E"), To = "a neighbour" });
        var rows = Rows(story);
        Assert.All(rows, row => Assert.Equal("M", row.Yard));
        Assert.Equal(["moved to P 7, 2026-08-01", "combined into C 2026-08-02", null, "found dead 2020-05-01/2027-02-20", "sold 2027-03-01"], rows.OrderBy(row => row.Colony).Select(row => row.Since));
    }

    [Fact]
    public void The_daily_maximum_stands_beside_where_it_is_known()
    {
        var story = Yard();
        Treat(story, "20 Jul 2026", null, null);
        Assert.Null(Assert.Single(Rows(story)).DailyMaximumC);
        // 60 °F is 15.556 °C (exact conversion).
        story.Tell((id, act, order) => new DailyMaximum { Id = id, Act = act, Order = order, On = Story.Day("20 Jul 2026"), Yard = Story.Yard("M"), Maximum = new Temperature(60, "F") });
        Assert.Equal(15.6m, Assert.Single(Rows(story)).DailyMaximumC);
    }

    private static IReadOnlyList<TreatmentRow> Rows(Story story)
    {
        var whole = story.Books();
        var voids = story.Recorded.Where(one => one.Entry is Voided).ToLookup(one => ((Voided)one.Entry).Entry);
        return Uses.Of([.. story.Recorded.Where(one => one.Entry is Treated or TreatmentTakenOut).Select(one => new HistoryLine(one, voids[one.Entry.Id].Select(found => (Recorded?)found).FirstOrDefault()))], whole.Books, whole.Rows(Questions.DoseCompleteness));
    }

    private static Story Yard(Func<CourseDefined, CourseDefined>? other = null)
    {
        var story = new Story();
        story.OpenYard("M");
        story.Begins("A", "1 May 2020", "M 1");
        story.Tell((id, act, order) =>
        {
            var course = new CourseDefined { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2020"), Course = "S", FullDoses = 1, Substance = "amitraz", TakenOut = true, DaysInAtLeast = 42, DaysInAtMost = 56, WithholdingDays = 14 };
            return other?.Invoke(course) ?? course;
        });
        return story;
    }

    private static Entry Lot(Story story) => story.Tell((id, act, order) => new MedicineAcquired
    {
        Id = id, Act = act, Order = order, On = Story.Day("1 Jul 2026"), Product = "the strips in the box", Substance = "amitraz", Lot = "T26-1", Supplier = "the shop at the ford, Lower Lane 3", Proof = "folder 9", Prescriber = "none asked for",
    });

    private static Entry Treat(Story story, string day, string? lot, Quantity? amount) =>
        story.Tell((id, act, order) => new Treated { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony("A"), Course = "S", Doses = 1, Lot = lot, Amount = amount, By = "Nell" });

    private static void TakeOut(Story story, string day) =>
        story.Tell((id, act, order) => new TreatmentTakenOut { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony("A"), Course = "S" });
}
