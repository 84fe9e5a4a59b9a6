using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.MiteWatch;

namespace ColonyLineage.Core.Tests.Projections;

/// <summary>Washes before and after a treatment, and what grows from the last. Worked out by hand from the sources named.</summary>
public class EfficacyCases
{
    /// <summary>Henderson and Tilton 1955, Journal of Economic Entomology 48:157: 12 before and 2 after, controls 10 and 15: 88.89 %, naive 83.33 %.</summary>
    [Fact]
    public void A_treated_yard_beside_an_untreated_one()
    {
        var row = Assert.Single(Rows(Told("K")));
        Assert.Equal(("T", 12, 2, 4m, .6667m), (row.Yard, row.MitesBefore, row.MitesAfter, row.Per100Before, row.Per100After));
        Assert.Equal((3.3333m, 5m), (row.ControlPer100Before, row.ControlPer100After));
        Assert.Equal(["K"], row.ControlYards);
        Assert.Equal((88.9m, 83.3m), (row.Percent, row.NaivePercent));
        Assert.Equal((Story.Day("2 Aug 2026"), Story.Day("20 Aug 2026")), (row.DosedFrom, row.AfterFrom));
        // Two washes of one colony, its place and its dose; two of the control and its place.
        Assert.Equal(7, row.Entries.Count);
    }

    [Fact]
    public void Without_controls_only_the_naive_percent()
    {
        var row = Assert.Single(Rows(Told(control: null)));
        Assert.Empty(row.ControlYards);
        Assert.Equal((null, null, 83.3m), (row.Percent, row.ControlPer100After, row.NaivePercent));
    }

    [Fact]
    public void A_yard_washed_at_another_time_is_no_control()
    {
        var story = Told(control: null);
        story.OpenYard("K");
        story.Begins("k", "1 May 2026", "K 1");
        Wash(story, "k", "15 Jul 2026", 10);
        Wash(story, "k", "20 Aug 2026", 15);
        Assert.Empty(Assert.Single(Rows(story)).ControlYards);
    }

    [Fact]
    public void A_yard_half_of_which_was_treated_is_neither()
    {
        var story = Told("K");
        story.Begins("k2", "1 May 2026", "K 2");
        story.Dose("k2", "3 Aug 2026", 1);
        Wash(story, "k2", "20 Aug 2026", 1);
        Assert.Empty(Assert.Single(Rows(story)).ControlYards);
    }

    /// <summary>A colony that was treated and then washed on the first day of the round is no 'before'.</summary>
    [Fact]
    public void What_was_washed_after_its_dose_is_not_before()
    {
        var story = Told(control: null);
        story.Begins("u", "1 May 2026", "T 2");
        story.Dose("u", "1 Aug 2026", 1);
        Wash(story, "u", "1 Aug 2026", 90);
        Assert.Equal((1, 12), (Assert.Single(Rows(story)).WashesBefore, Assert.Single(Rows(story)).MitesBefore));
    }

    [Fact]
    public void Rounds_a_season_apart_are_not_compared()
    {
        var story = new Story();
        story.OpenYard("T");
        story.Begins("t", "1 May 2026", "T 1");
        Wash(story, "t", "1 May 2026", 12);
        story.Dose("t", "2 Aug 2026", 1);
        Wash(story, "t", "20 Aug 2026", 2);
        Assert.Empty(Rows(story));
    }

    /// <summary>1 % to 3 % at .021 a day is 52.3 days, and doubling 33.0 (Fries et al. 1994; Martin 1998): 52 days from 1 August are 22 September.</summary>
    [Fact]
    public void From_one_in_a_hundred_to_three()
    {
        var story = new Story();
        story.OpenYard("T");
        for (var i = 1; i <= 8; i++) story.Begins($"t{i}", "1 May 2026", $"T {i}");
        for (var i = 1; i <= 8; i++) Wash(story, $"t{i}", "1 Aug 2026", 3);
        var rounds = Rounds.Of(story.Books().Rows(Questions.MiteWatch), story.Books().Books.Outfit);
        var row = Assert.Single(Forecast.OfLast(rounds));
        Assert.Equal((52, Story.Day("22 Sep 2026")), (row.DaysByMean, row.OnByMean));
        // 24 mites in 8 washes have the upper limit 6.637498 a wash (Golden/mites): ln(9 / 6.637498) / .021 = 14.5.
        Assert.Equal((14, Story.Day("15 Aug 2026")), (row.DaysByUpper, row.OnByUpper));
        Assert.Equal(4, row.Assumptions.Count);
        Assert.Equal(104, Assert.Single(Forecast.OfLast(rounds, .0105m)).DaysByMean);
    }

    [Fact]
    public void Nothing_grows_from_no_mites_but_from_their_upper_limit()
    {
        var story = new Story();
        story.OpenYard("T");
        story.Begins("t", "1 May 2026", "T 1");
        Wash(story, "t", "1 Aug 2026", 0);
        var row = Assert.Single(Forecast.OfLast(Rounds.Of(story.Books().Rows(Questions.MiteWatch), story.Books().Books.Outfit)));
        // At k 1 one wash without a mite has the upper limit of 19 a wash: (1 + m)⁻¹ = .05.
        Assert.Equal((null, 0), (row.DaysByMean, row.DaysByUpper));
        Assert.Equal(6.3333m, row.UpperPer100);
    }

    private static IReadOnlyList<EfficacyRow> Rows(Story story) => Efficacies.Of(story.Books().Rows(Questions.MiteWatch), story.Books().Books.Outfit);

    /// <summary>A colony with 12 mites before its dose and 2 after, and one of another yard without a dose, with 10 and 15; 300 bees each.</summary>
    private static Story Told(string? control)
    {
        var story = new Story();
        story.OpenYard("T");
        story.Begins("t", "1 May 2026", "T 1");
        Wash(story, "t", "1 Aug 2026", 12);
        story.Dose("t", "2 Aug 2026", 1);
        Wash(story, "t", "20 Aug 2026", 2);
        if (control is null) return story;
        story.OpenYard(control);
        story.Begins("k", "1 May 2026", $"{control} 1");
        Wash(story, "k", "3 Aug 2026", 10);
        Wash(story, "k", "22 Aug 2026", 15);
        return story;
    }

    private static void Wash(Story story, string colony, string day, int mites) =>
        story.Tell((id, act, order) => new Washed { Id = id, Act = act, Order = order, On = Story.Day(day), Colony = Story.Colony(colony), Mites = mites, Bees = 300 });
}
