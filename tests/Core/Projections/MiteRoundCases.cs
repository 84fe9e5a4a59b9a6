using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.MiteWatch;
using ColonyLineage.Support;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>Rounds of washes. Allowed totals and upper limits: R 4.2.2, see Sums/Golden/mites/SOURCE.md.</summary>
public class MiteRoundCases
{
    /// <summary>Eight washes of 300 bees with 24 mites: 33 are allowed at 3 %, the upper limit is 6.637498 a wash; and yet one colony had 12.</summary>
    [Fact]
    public void Below_by_the_statistics_and_due_by_the_rule_of_thumb()
    {
        var round = Assert.Single(Rounds(Washed(0, 1, 0, 5, 2, 12, 0, 4)));
        Assert.Equal((8, 24, 2400, 1m), (round.Washes, round.Mites, round.Bees, round.Per100Bees));
        Assert.Equal((Claim.Below, 33, 2.2125m), (round.IsBelow, round.MostAllowed, round.UpperPer100));
        Assert.Equal((12, "c6", Thumb.YardDue), (round.MostMites, round.MostIn, round.RuleOfThumb));
        Assert.Null(round.MoreWashes);
        Assert.Equal(16, round.Entries.Count);
    }

    /// <summary>Four washes of 4 mites: 10 are allowed of four, so nothing can be said; if others are like them, the first number of washes that allows 4 each would do.</summary>
    [Fact]
    public void What_cannot_be_said_says_how_many_more_to_wash()
    {
        var round = Assert.Single(Rounds(Washed(4, 4, 4, 4)));
        Assert.Equal((Claim.CannotSay, 10, 4.3382m), (round.IsBelow, round.MostAllowed, round.UpperPer100));
        var enough = File.ReadLines(Path.Combine(Repository.Root, "tests/Core/Projections/Sums/Golden/mites/allowed-totals.csv")).Skip(1).Select(line => line.Split(','))
            .Where(row => row[1] == "1" && row[2] == "9").Select(row => (Washes: int.Parse(row[0]), Most: int.Parse(row[3]))).First(row => row.Washes > 4 && row.Most >= 4 * row.Washes).Washes;
        Assert.Equal(enough - 4, round.MoreWashes);
    }

    [Fact]
    public void Far_above_is_said_too_and_more_washes_would_not_help()
    {
        var round = Assert.Single(Rounds(Washed(60, 45, 80, 50)));
        Assert.Equal(Claim.Above, round.IsBelow);
        Assert.Null(round.MoreWashes);
    }

    /// <summary>At k 1 not even none of one wash speaks for a yard below 3 %: no mites is not 'free of mites'.</summary>
    [Fact]
    public void One_wash_without_a_mite_says_nothing_of_the_yard()
    {
        var round = Assert.Single(Rounds(Washed(0)));
        Assert.Equal((Claim.CannotSay, null, Thumb.Wanted), (round.IsBelow, round.MostAllowed, round.RuleOfThumb));
        Assert.True(round.UpperPer100 > 3);
    }

    /// <summary>After a treatment the spread is wider: eight washes without a mite have the upper limit .557371 a wash, and 6 mites are allowed at 1 %.</summary>
    [Fact]
    public void After_a_treatment_the_spread_is_another_and_the_threshold_is_the_outfits()
    {
        var story = Washed(0, 0, 0, 0, 0, 0, 0, 0);
        for (var i = 1; i <= 5; i++) story.Dose($"c{i}", "1 Jul 2026", 1);
        story.Tell((id, act, order) => new OutfitDescribed { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2026"), MiteThreshold = 1 });
        var round = Assert.Single(Rounds(story));
        Assert.Equal((0.5m, 1m, 0.1858m, 6), (round.Spread, round.Threshold, round.UpperPer100, round.MostAllowed));
        Assert.Equal((Claim.Below, Thumb.Wanted), (round.IsBelow, round.RuleOfThumb));
    }

    [Fact]
    public void Eleven_days_without_a_wash_end_a_round()
    {
        var story = Washed(1, 2);
        Wash(story, 1, "11 Aug 2026", 3);
        Wash(story, 2, "22 Aug 2026", 5);
        Assert.Equal([(3, 6, Thumb.AtLimit), (1, 5, Thumb.YardDue)], Rounds(story).Select(round => (round.Washes, round.Mites, round.RuleOfThumb)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(21)]
    public void A_threshold_that_makes_no_sense_is_refused(int threshold)
    {
        var refusal = Assert.Single(new OutfitDescribed { Id = new(Guid.NewGuid()), Act = new(Guid.NewGuid()), On = Story.Day("1 Jan 2026"), MiteThreshold = threshold }.Check());
        Assert.Equal(Refusals.OutOfRange, refusal.Name);
    }

    private static IReadOnlyList<RoundRow> Rounds(Story story) => ColonyLineage.Projections.MiteWatch.Rounds.Of(story.Books().Rows(Questions.MiteWatch), story.Books().Books.Outfit);

    /// <summary>Colonies c1, c2 … in one yard, each washed on 1 August, 300 bees.</summary>
    private static Story Washed(params int[] mites)
    {
        var story = new Story();
        story.OpenYard("M");
        for (var i = 1; i <= mites.Length; i++) story.Begins($"c{i}", "1 May 2026", $"M {i}");
        for (var i = 1; i <= mites.Length; i++) Wash(story, i, "1 Aug 2026", mites[i - 1]);
        return story;
    }

    private static void Wash(Story story, int colony, string day, int mites) =>
        story.Tell((id, act, order) => new Washed { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony($"c{colony}"), Mites = mites, Bees = 300 });
}
