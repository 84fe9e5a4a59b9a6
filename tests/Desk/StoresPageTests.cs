using System.Net;
using ColonyLineage.Entries;
using Xunit;
using static ColonyLineage.Desk.Tests.Said;

namespace ColonyLineage.Desk.Tests;

/// <summary>The page of stores, the batch of syrup on it, and what the doses page says of a path.</summary>
public sealed class StoresPageTests(Browser browser)
{
    [Theory]
    // A litre of 50 % has 1.2296 kg at 20 °C (NBS Circular 440; the row as quoted in the tests of the sums): 10 L are 12.30 kg, half of it sugar.
    [InlineData(10, "L", 1, 1, "6.1 kg (13.6 lb)", "6.1 kg (13.6 lb)")]
    // A US gallon of two to one by weight holds 7.38 lb of sugar (extension guides), and half as much water.
    [InlineData(1, "gal-us", 2, 1, "3.3 kg (7.4 lb)", "1.7 kg (3.7 lb)")]
    public void A_batch_of_syrup_takes_so_much_sugar_and_water(int wanted, string unit, int sugar, int water, string sugarSaid, string waterSaid)
    {
        var mixed = new SyrupBatch(wanted, unit, sugar, water, PartsBy.Weight, 20).Mixed;
        Assert.Equal((sugarSaid, waterSaid), (SyrupBatch.Mass(mixed.Sugar), SyrupBatch.Mass(mixed.Water)));
    }

    [Theory]
    // 67.1 % stay dissolved at 20 °C (Mohos 2010): 68.75 % does not, 66.7 % is close to it, 65.5 % is not.
    [InlineData(2.2, 20, "68.8 % sugar is more than the 67.1 % that stay dissolved at 20 °C")]
    [InlineData(2.0, 20, "66.7 % sugar is close to the 67.1 % that stay dissolved at 20 °C")]
    [InlineData(2.0, 10, "66.7 % sugar is more than the 65.6 % that stay dissolved at 10 °C")]
    [InlineData(1.9, 20, null)]
    public void A_syrup_that_does_not_stay_dissolved_is_warned_of(double sugar, int celsius, string? warning)
    {
        var said = new SyrupBatch(1, "L", (decimal)sugar, 1, PartsBy.Weight, celsius).Warning();
        if (warning is null) Assert.Null(said);
        else Assert.StartsWith(warning, said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mix=much", "mix", "'much' is not a number.")]
    [InlineData("mix=-1", "mix", "From 0.01 to 1000000.")]
    [InlineData("mix-at=61", "mix-at", "From 0 to 60.")]
    [InlineData("mix-sugar=20", "mix-sugar", "So much sugar makes no syrup: take more water.")]
    public async Task What_cannot_be_mixed_is_said_at_its_blank(string query, string blank, string message)
    {
        var html = await TextAsync(browser.Root, $"/stores-and-feed?{query}");
        Assert.Contains($"id=\"{blank}-wrong\">{message}", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<dt>As stores</dt>", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_volume_it_is_another_syrup_and_said_to_be_never_exact()
    {
        var html = await TextAsync(browser.Root, "/stores-and-feed?mix=10&mix-sugar=2&mix-water=1&mix-by=volume");
        Holds(html, "By volume it is never exact", "Two to one by volume is thinner than two to one by weight.");
        // 2 × 0.845 kg of sugar to 0.998 kg of water.
        Holds(html, "62.9 % sugar");
    }

    /// <summary>38 kg gross less 20 kg of hive and bees is 18 kg of stores; 20 kg are wanted; sugar that adds 2 kg is 2 × 7.38 / 7 = 2.1 kg.</summary>
    [Fact]
    public async Task Yards_and_colonies_say_what_they_lack_and_what_the_next_round_takes()
    {
        var act = new ActId(Guid.CreateVersion7());
        var yard = SmallOutfit.YardNamed("Y");
        Entry[] entries =
        [
            new YardOpened { Id = New(), On = Day(3, 1), Act = act, Yard = yard, Name = "Y", Order = 1 },
            new StoresTargetSet { Id = New(), On = Day(3, 1), Act = act, Housing = Housing.Single, Stores = new Quantity(20, "kg"), Tare = new Quantity(20, "kg"), Region = "these hills", Source = "the owner", Order = 2 },
            .. Colony("1", 3), .. Colony("2", 5),
            new Weighed { Id = New(), On = Day(9, 20), Act = act, Colony = SmallOutfit.ColonyNamed("1"), Gross = new Quantity(38, "kg"), Order = 7 },
            new Inspected { Id = New(), On = Day(9, 20), Act = act, Colony = SmallOutfit.ColonyNamed("2"), Heft = Heft.Light, FramesOfBees = 2, Order = 8 },
            new FeederPutOn { Id = New(), On = Day(9, 21), Act = act, Colony = SmallOutfit.ColonyNamed("2"), Holds = new Quantity(8, "L"), Order = 9 },
        ];
        await using var host = await DeskHost.StartAsync(new MemoryOffice(entries.Select(entry => new Recorded(entry, new DateTimeOffset(entry.On.Day, TimeOnly.MinValue, TimeSpan.Zero))), SmallOutfit.Today));
        var html = await TextAsync(host.Root, "/stores-and-feed");
        Holds(html, "2 living colonies: 1 lack 2 kg", "data-head=\"Sugar, kg\">2.1<", "data-head=\"Feeders to put on\">1 large<", "a feeder of 8 L on a small colony", "single 20 kg, these hills, the owner", "A heft is no weight");
        Assert.Equal(2, Rows(html));
        Assert.Equal(1, Rows(await TextAsync(host.Root, "/stores-and-feed?view=lacking")));
        Assert.Equal(1, Rows(await TextAsync(host.Root, "/stores-and-feed?view=remarks")));

        static int Rows(string html) => html[html.IndexOf("id=\"by-colony\"", StringComparison.Ordinal)..].Split("<th scope=\"row\">").Length - 1;

        IEnumerable<Entry> Colony(string name, int order) =>
            [new ColonyEstablished { Id = New(), On = Day(5, 1), Act = act, Colony = SmallOutfit.ColonyNamed(name), Number = name, How = HowEstablished.Nuc, At = new Spot(yard, name), Housing = Housing.Single, Order = order }];

        static EntryId New() => new(Guid.CreateVersion7());
        static Occurred Day(int month, int day) => new DateOnly(2026, month, day);
    }

    [Fact]
    public async Task The_doses_page_unfolds_how_the_bees_came_together()
    {
        var html = await TextAsync(browser.Root, "/dose-completeness?colony=4");
        Holds(html, "<summary>how its bees came together", "7");
    }

    private static async Task<string> TextAsync(string root, string path)
    {
        using var http = new HttpClient { BaseAddress = new Uri(root) };
        return WebUtility.HtmlDecode(await http.GetStringAsync(path, TestContext.Current.CancellationToken));
    }
}
