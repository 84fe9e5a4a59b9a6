using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.StoresAndFeed;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>Stores by weight, heft and feed. 1 lb = 0.45359237 kg, 1 US gal = 3.785411784 L, exact (NIST SP 811).</summary>
public class StoresCases
{
    [Fact]
    public void By_weight_with_its_own_tare_against_the_target_of_its_housing()
    {
        var story = Yard(Housing.Double);
        Target(story, Housing.Double, new Quantity(80, "lb"));
        Weigh(story, "1 Sep 2026", new Quantity(150, "lb"), new Quantity(95, "lb"));
        var row = Only(story);
        // 55 of 80 lb: 25 lb lacking, 11.34 kg.
        Assert.Equal((24.95m, 36.29m, 11.34m), (row.StoresKg, row.TargetKg, row.LackingKg));
        Assert.Equal("the hills, own winters", row.TargetBy);
    }

    [Fact]
    public void Without_a_tare_the_outfits_figure_for_the_housing_counts()
    {
        var story = Yard(Housing.Single);
        Target(story, Housing.Single, new Quantity(20, "kg"), new Quantity(18, "kg"));
        Weigh(story, "1 Sep 2026", new Quantity(30, "kg"));
        Assert.Equal((18m, 12m, 8m), (Only(story).TareKg, Only(story).StoresKg, Only(story).LackingKg));
    }

    /// <summary>A US gallon of 2:1 by weight holds 7.38 lb of sugar (density table; check values) and adds about 7 lb of stores (extension guides).</summary>
    [Fact]
    public void What_was_fed_since_the_weighing_counts_as_stores()
    {
        var story = Yard(Housing.Single);
        Target(story, Housing.Single, new Quantity(20, "kg"), new Quantity(18, "kg"));
        GiveSyrup(story, "20 Aug 2026", new Quantity(9, "gal-us"), 2, 1);
        Weigh(story, "1 Sep 2026", new Quantity(30, "kg"));
        GiveSyrup(story, "2 Sep 2026", new Quantity(1, "gal-us"), 2, 1);
        var row = Only(story);
        Assert.Equal(7.38, (double)row.FedSugarKg / 0.45359237, 0.01);
        Assert.Equal(7.0, (double)(row.StoresKg! - 12m) / 0.45359237, 0.02);
        Assert.Equal(20m, row.StoresKg + row.LackingKg);
    }

    /// <summary>One part of sugar to one of water by volume has less sugar than by weight: a litre of poured sugar weighs less than a litre of water.</summary>
    [Fact]
    public void A_ratio_by_volume_is_not_a_ratio_by_weight()
    {
        var (weight, volume) = (Yard(Housing.Single), Yard(Housing.Single));
        GiveSyrup(weight, "1 Sep 2026", new Quantity(10, "L"), 1, 1);
        GiveSyrup(volume, "1 Sep 2026", new Quantity(10, "L"), 1, 1, PartsBy.Volume);
        // 50 % at 20 °C: 1.2296 kg/L (NBS Circular 440), so 10 L hold 6.15 kg of sugar.
        Assert.Equal(6.15m, Only(weight).FedSugarKg);
        Assert.True(Only(volume).FedSugarKg < Only(weight).FedSugarKg);
    }

    [Fact]
    public void Dry_sugar_is_its_weight_and_what_does_not_tell_is_counted_as_unknown()
    {
        var story = Yard(Housing.Single);
        story.Tell((id, act, order) => new Fed { Id = id, Act = act, Order = order, On = Story.Day("1 Sep 2026"), Colony = Story.Colony("A"), Feed = "sugar on paper", Amount = new Quantity(2, "kg"), SugarParts = 1 });
        story.Tell((id, act, order) => new Fed { Id = id, Act = act, Order = order, On = Story.Day("2 Sep 2026"), Colony = Story.Colony("A"), Feed = "what was left" });
        Assert.Equal((2m, 1, Story.Day("2 Sep 2026")), (Only(story).FedSugarKg, Only(story).FedUnknown, Only(story).LastFed));
    }

    /// <summary>20 lb in a gallon of water is 70.6 %, over the 67.1 % that dissolve at 20 °C (Mohos 2010; check values).</summary>
    [Fact]
    public void A_syrup_that_does_not_stay_dissolved_is_named()
    {
        var story = Yard(Housing.Single);
        GiveSyrup(story, "1 Sep 2026", new Quantity(5, "L"), 20, 8.33m);
        Assert.Equal("syrup of 70.6 % sugar: more than the 67.1 % that stay dissolved at 20 °C", Assert.Single(Only(story).Remarks));
    }

    [Fact]
    public void A_heft_is_no_weight()
    {
        var story = Yard(Housing.Single);
        Target(story, Housing.Single, new Quantity(20, "kg"));
        story.Tell((id, act, order) => new Inspected { Id = id, Act = act, Order = order, On = Story.Day("1 Sep 2026"), Colony = Story.Colony("A"), Heft = Heft.Light });
        Assert.Equal((Heft.Light, null, null), (Only(story).Heft, Only(story).StoresKg, Only(story).LackingKg));
        var total = NextRound.Of(story.Books().Rows(Questions.StoresAndFeed))[^1];
        Assert.Equal((0, 1, 1, 1), (total.Lacking, total.NotKnown, total.Light, total.LargeFeeders));
    }

    [Fact]
    public void Gained_since_the_weighing_before()
    {
        var story = Yard(Housing.Single);
        Weigh(story, "1 Sep 2026", new Quantity(30, "kg"));
        Weigh(story, "15 Sep 2026", new Quantity(34.5m, "kg"));
        Assert.Equal((4.5m, Story.Day("1 Sep 2026"), null), (Only(story).GainedKg, Only(story).GainedSince, Only(story).WeighedStoresKg));
    }

    [Theory]
    [InlineData(3, 9, "a feeder of 9 L on a small colony")]
    [InlineData(3, 2, null)]
    [InlineData(9, 9, null)]
    public void A_small_colony_is_not_given_the_large_feeder(int frames, int litres, string? remark)
    {
        var story = Yard(Housing.Single);
        story.Look("A", "1 Sep 2026", bees: frames);
        var put = story.Tell((id, act, order) => new FeederPutOn { Id = id, Act = act, Order = order, On = Story.Day("2 Sep 2026"), Colony = Story.Colony("A"), Holds = new Quantity(litres, "L"), Place = FeederPlace.Above });
        Assert.Equal((remark, Story.Day("2 Sep 2026"), FeederPlace.Above), (Only(story).Remarks.SingleOrDefault(), Only(story).FeederOn, Only(story).FeederPlace));
        story.Void(put, "3 Sep 2026");
        Assert.Null(Only(story).FeederOn);
    }

    /// <summary>25 lb lacking at 7 lb a gallon are 3.57 gallons, 13.5 L, of 2:1; sugar 26.36 lb, 11.96 kg.</summary>
    [Fact]
    public void What_the_next_round_takes()
    {
        var story = Yard(Housing.Double);
        Target(story, Housing.Double, new Quantity(80, "lb"));
        Weigh(story, "1 Sep 2026", new Quantity(150, "lb"), new Quantity(95, "lb"));
        var rounds = NextRound.Of(story.Books().Rows(Questions.StoresAndFeed));
        Assert.Equal(["M", null], rounds.Select(round => round.Yard));
        Assert.All(rounds, round => Assert.Equal((1, 12.0m, 13.5m, 1, 0), (round.Lacking, round.SugarKg, round.SyrupL, round.LargeFeeders, round.SmallFeeders)));
    }

    private static StoresRow Only(Story story) => Assert.Single(story.Books().Rows(Questions.StoresAndFeed));

    private static Story Yard(Housing housing)
    {
        var story = new Story();
        story.OpenYard("M");
        story.Begins("A", "1 May 2026", "M 1", housing: housing);
        return story;
    }

    private static void Target(Story story, Housing housing, Quantity stores, Quantity? tare = null) =>
        story.Tell((id, act, order) => new StoresTargetSet { Id = id, Act = act, Order = order, On = Story.Day("1 Jan 2026"), Housing = housing, Stores = stores, Tare = tare, Region = "the hills", Source = "own winters" });

    private static void Weigh(Story story, string day, Quantity gross, Quantity? tare = null) =>
        story.Tell((id, act, order) => new Weighed { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony("A"), Gross = gross, Tare = tare });

    private static void GiveSyrup(Story story, string day, Quantity amount, decimal sugar, decimal water, PartsBy by = PartsBy.Weight) =>
        story.Tell((id, act, order) => new Fed { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony("A"), Feed = "syrup", Amount = amount, SugarParts = sugar, WaterParts = water, PartsBy = by });
}
