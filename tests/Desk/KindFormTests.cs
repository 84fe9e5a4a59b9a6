using ColonyLineage.Entries;
using Xunit;

namespace ColonyLineage.Desk.Tests;

/// <summary>Forms laid out from the fields of a kind: what is filled in is recorded as it is, refusals stand at their blanks.</summary>
public sealed class KindFormTests(Browser browser) : IAsyncLifetime
{
    private readonly MemoryOffice _office = new(SmallOutfit.Make().Recorded, SmallOutfit.Today);
    private DeskHost _host = null!;

    public async ValueTask InitializeAsync() => _host = await DeskHost.StartAsync(_office);

    public async ValueTask DisposeAsync() => await _host.DisposeAsync();

    [Fact]
    public async Task A_course_starts_from_an_example_and_is_recorded_with_its_limits()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/courses");
        await page.Locator("a[href*='example=amitraz']").ClickAsync();
        Assert.Equal("42", await page.Locator("[name=daysInAtLeast]").InputValueAsync());
        await page.Locator("[name=course]").FillAsync("strips");
        await page.Locator("main form.act button[type=submit]").Last.ClickAsync();
        await page.WaitForURLAsync(url => !url.Contains("example=", StringComparison.Ordinal));
        var course = Assert.Single(_office.Recorded.Select(one => one.Entry).OfType<CourseDefined>(), defined => defined.Course == "strips");
        Assert.Equal((42, 56, true, 14, DosedBy.FramesOfBees), (course.DaysInAtLeast, course.DaysInAtMost, course.TakenOut, course.WithholdingDays, course.DoseBy));
    }

    [Fact]
    public async Task Limits_that_contradict_are_refused_at_their_blank_and_nothing_is_recorded()
    {
        var before = _office.Recorded.Count;
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/record?act=course-defined");
        await page.Locator("[name=course]").FillAsync("muddle");
        await page.Locator("[name=fullDoses]").FillAsync("2");
        await page.Locator("[name=daysBetweenAtLeast]").FillAsync("18");
        await page.Locator("[name=daysBetweenAtMost]").FillAsync("10");
        await page.Locator("main form.act button[type=submit]").Last.ClickAsync();
        Assert.Contains("the lower limit comes first", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal("true", await page.Locator("[name=daysBetweenAtLeast]").GetAttributeAsync("aria-invalid"));
        Assert.Equal(before, _office.Recorded.Count);
    }

    [Fact]
    public async Task Feed_keeps_its_parts_and_a_colony_that_nobody_knows_is_refused()
    {
        await using var opened = await browser.OpenAsync();
        var page = opened.Page;
        await page.GotoAsync(_host.Root + "/record?act=fed");
        await page.Locator("[name=colony]").FillAsync("nobody");
        await page.Locator("[name=feed]").FillAsync("syrup");
        await page.Locator("[name=amount]").FillAsync("2,5");
        await page.Locator("[name='amount.unit']").SelectOptionAsync("L");
        await page.Locator("[name=sugarParts]").FillAsync("2");
        await page.Locator("[name=waterParts]").FillAsync("1");
        await page.Locator("[name=partsBy]").SelectOptionAsync("Weight");
        await page.Locator("main form.act button[type=submit]").Last.ClickAsync();
        Assert.Contains("no colony 'nobody'", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        await page.Locator("[name=colony]").FillAsync("4");
        await page.Locator("main form.act button[type=submit]").Last.ClickAsync();
        await page.WaitForURLAsync(url => !url.Contains("act=fed", StringComparison.Ordinal));
        var fed = _office.Recorded.Select(one => one.Entry).OfType<Fed>().Last();
        Assert.Equal((new Quantity(2.5m, "L"), 2m, 1m, PartsBy.Weight), (fed.Amount, fed.SugarParts, fed.WaterParts, fed.PartsBy));
    }
}
