using ColonyLineage.Desk.Drawing;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.MiteWatch;
using Xunit;

namespace ColonyLineage.Desk.Tests;

/// <summary>The plot of a yard's washes, checked by its own promises; washes are made from a fixed seed where many are needed.</summary>
public sealed class MitePlotTests
{
    private static readonly DateOnly July = new(2026, 7, 1);
    private static readonly OutfitCard Outfit = new();

    public static TheoryData<int, double> SeedsAndWidths
    {
        get
        {
            var data = new TheoryData<int, double>();
            for (var seed = 1; seed <= 40; seed++) data.Add(seed, seed % 2 == 0 ? MitePlot.Narrow : MitePlot.Broad);
            return data;
        }
    }

    [Theory, InlineData(5), InlineData(40)]
    public void More_mites_stand_higher_and_none_on_the_ground(double top)
    {
        var frame = new MiteFrame(July, new DateOnly(2026, 9, 30), top, 3);
        Assert.Equal(top == 40, frame.Roots);
        var plot = new MitePlot(frame, [], [], MitePlot.Narrow);
        Assert.Equal((MitePlot.Bottom, MitePlot.Top), (plot.Y(0), plot.Y(top)));
        var heights = Enumerable.Range(0, 101).Select(part => plot.Y(top * part / 100)).ToList();
        Assert.All(heights.Zip(heights.Skip(1)), pair => Assert.True(pair.First > pair.Second));
        // What is higher than the picture stands at its edge, and does not leave it.
        Assert.Equal(MitePlot.Top, plot.Y(3 * top));
    }

    /// <summary>On a scale of roots a quarter of the top stands half way up.</summary>
    [Fact]
    public void Roots_are_drawn_where_a_few_high_washes_would_press_the_others_down()
    {
        var plot = new MitePlot(new MiteFrame(July, new DateOnly(2026, 9, 30), 40, 3), [], [], MitePlot.Narrow);
        Assert.Equal((MitePlot.Bottom + MitePlot.Top) / 2, plot.Y(10), 6);
    }

    [Theory, InlineData(MitePlot.Narrow), InlineData(MitePlot.Broad)]
    public void Later_days_stand_further_right_within_the_plot(double width)
    {
        var frame = new MiteFrame(July, new DateOnly(2026, 9, 30), 5, 3);
        var plot = new MitePlot(frame, [], [], width);
        var days = Enumerable.Range(0, 92).Select(day => plot.X(July.AddDays(day))).ToList();
        Assert.All(days.Zip(days.Skip(1)), pair => Assert.Equal((days[^1] - days[0]) / 91, pair.Second - pair.First, 6));
        Assert.True(days[^1] - days[0] > 0.95 * (plot.Right - MitePlot.Left));
        Assert.True(days[0] > MitePlot.Left && days[^1] < plot.Right);
    }

    [Theory, MemberData(nameof(SeedsAndWidths))]
    public void No_label_touches_another_nor_leaves_the_picture(int seed, double width)
    {
        var plot = Random(seed, width);
        var labels = plot.Labels.ToList();
        foreach (var (one, i) in labels.Select((label, i) => (label, i)))
        {
            Assert.True(one.Left >= 0 && one.Right <= width && one.Y <= MitePlot.Height && one.Y >= PlacedLabel.Size, $"{one}");
            foreach (var other in labels.Skip(i + 1)) Assert.False(one.Touches(other), $"{one} and {other}");
        }

        Assert.True(plot.Numbers.Count >= 3 && plot.Months.Count >= 2);
    }

    [Theory, MemberData(nameof(SeedsAndWidths))]
    public void Washes_stay_in_the_plot_near_their_day_and_rounds_stay_apart(int seed, double width)
    {
        var plot = Random(seed, width);
        Assert.All(plot.Washes, wash =>
        {
            Assert.InRange(wash.X, MitePlot.Left + MitePlot.Dot, plot.Right - MitePlot.Dot);
            Assert.InRange(Math.Abs(wash.X - plot.X(wash.Wash.On)), 0, 18);
            Assert.Equal(plot.Y((double)wash.Wash.Per100Bees), wash.Y);
            Assert.True(wash.High <= wash.Y && wash.Y <= wash.Low);
        });
        Assert.All(plot.Rounds.Zip(plot.Rounds.Skip(1)), pair => Assert.True(pair.First.X + pair.First.Width <= pair.Second.X, $"{pair}"));
        Assert.All(plot.Rounds, round => Assert.All(plot.Washes.Where(wash => wash.Wash.On >= round.Round.From && wash.Wash.On <= round.Round.To), wash => Assert.InRange(wash.X, round.X, round.X + round.Width)));
    }

    [Fact]
    public void Washes_of_the_same_day_and_count_step_aside_for_each_other()
    {
        var plot = Of(MitePlot.Narrow, [.. Enumerable.Range(0, 4).Select(i => Wash(i, 40, 0))]);
        var xs = plot.Washes.Select(wash => wash.X).Order().ToList();
        Assert.All(xs.Zip(xs.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 2 * MitePlot.Dot));
    }

    /// <summary>Eight washes of 300 bees with 24 mites: mean 1, upper limit 6.637498 a wash by R 4.2.2, so 2.2125 per 100 (tests/Core/Projections/Sums/Golden/mites/SOURCE.md).</summary>
    [Fact]
    public void A_round_is_a_bar_from_its_mean_up_to_its_upper_limit()
    {
        var plot = Of(MitePlot.Narrow, [.. Enumerable.Range(0, 8).Select(i => Wash(i, 40, 3))]);
        var round = Assert.Single(plot.Rounds);
        Assert.Equal((plot.Y(1), plot.Y(2.2125)), (round.Mean, round.Upper));
        Assert.False(round.GoesOn);
    }

    /// <summary>The limit of one wash lies far above what was counted; the picture does not follow it there, and says that it goes on.</summary>
    [Fact]
    public void The_limit_of_a_single_wash_does_not_press_the_washes_down()
    {
        var plot = Of(MitePlot.Narrow, [Wash(0, 40, 3)]);
        Assert.True(plot.Frame.Top <= 6, $"{plot.Frame}");
        Assert.Equal((true, MitePlot.Top), (plot.Rounds[0].GoesOn, plot.Rounds[0].Upper));
    }

    [Fact]
    public void Doses_stand_on_the_day_before_the_wash_that_they_are_known_by_and_near_ones_together()
    {
        var plot = Of(MitePlot.Narrow, [Wash(0, 80, 0) with { DaysSinceDose = 40 }, Wash(1, 81, 0) with { DaysSinceDose = 41 }, Wash(2, 81, 1) with { DaysSinceDose = 40 }, Wash(3, 81, 1) with { DaysSinceDose = 300 }]);
        var dose = Assert.Single(plot.Doses);
        Assert.Equal([July.AddDays(40), July.AddDays(41)], dose.Days);
        Assert.InRange(dose.X, plot.X(July.AddDays(40)), plot.X(July.AddDays(41)));
        Assert.Equal("dose", dose.Label!.Said);
    }

    /// <summary>Such a wash is a conflict; it is drawn all the same, without an interval.</summary>
    [Fact]
    public void A_wash_with_more_mites_than_bees_has_no_interval()
    {
        var plot = Of(MitePlot.Narrow, [Wash(0, 40, 12) with { Bees = 10, Per100Bees = 120 }, Wash(1, 40, 2)]);
        Assert.Null(plot.Washes.Single(wash => wash.Wash.Mites == 12).High);
        Assert.NotNull(plot.Washes.Single(wash => wash.Wash.Mites == 2).High);
    }

    [Fact]
    public void The_name_of_the_threshold_stands_where_nothing_is()
    {
        // Washes at the height of the name on the left of the plot; the right is free.
        var plot = Of(MitePlot.Narrow, [.. Enumerable.Range(0, 9).Select(i => Wash(i, i, 10 + (i % 3)))]);
        Assert.DoesNotContain(plot.Washes, wash => plot.Threshold.Covers(wash.X - MitePlot.Dot, wash.X + MitePlot.Dot, wash.Y - MitePlot.Dot, wash.Y + MitePlot.Dot));
        Assert.Equal(plot.Y(3) - 4, plot.Threshold.Y);
    }

    [Theory]
    [InlineData(Claim.Below, 0.0123, null, "below 3 per 100, error 1.2 %")]
    [InlineData(Claim.Below, 0.00004, null, "below 3 per 100, error below 0.1 %")]
    [InlineData(Claim.CannotSay, 0.3, 4, "cannot say: 4 more colonies to wash")]
    [InlineData(Claim.CannotSay, 0.3, 1, "cannot say: 1 more colony to wash")]
    [InlineData(Claim.CannotSay, 0.6, null, "cannot say: up to 100 washes like these would not show it below")]
    [InlineData(Claim.Above, 0.99, null, "above 3 per 100, error 5 % at most")]
    public void What_the_statistics_say_in_words(Claim claim, double error, int? more, string said)
    {
        var round = Rounds.Of([Wash(0, 1, 3)], Outfit)[0] with { IsBelow = claim, ErrorOfBelow = (decimal)error, MoreWashes = more };
        Assert.Equal(said, MiteWords.Of(round));
    }

    private static MitePlot Of(double width, IReadOnlyList<WashRow> washes)
    {
        var rounds = Rounds.Of(washes, Outfit);
        return new MitePlot(MiteFrame.Around(washes, rounds, Outfit.MiteThreshold), washes, rounds, width);
    }

    /// <summary>One to seven rounds over one to fifteen months, with doses between them, and now and then a very high wash.</summary>
    private static MitePlot Random(int seed, double width)
    {
        var random = new Random(seed);
        var washes = new List<WashRow>();
        var day = random.Next(30);
        for (var rounds = 1 + random.Next(7); rounds > 0; rounds--)
        {
            for (var count = 1 + random.Next(12); count > 0; count--)
                washes.Add(Wash(washes.Count, day + random.Next(3), random.Next(9) == 0 ? random.Next(60) : random.Next(8)) with { DaysSinceDose = random.Next(3) == 0 ? null : random.Next(60) });
            day += 14 + random.Next(70);
        }

        return Of(width, washes);
    }

    private static WashRow Wash(int colony, int day, int mites) => new()
    {
        YardId = new YardId(new Guid(1, 0, 0, new byte[8])), Yard = "Alder", Spot = "1", ColonyId = new ColonyId(new Guid(colony + 1, 0, 0, new byte[8])), Colony = $"c{colony}",
        WashId = Guid.Empty, On = July.AddDays(day), Nth = 1, Mites = mites, Bees = 300, BeesEstimated = false, Per100Bees = Math.Round(mites / 3m, 4), Entries = [],
    };
}
