using System.Net;
using ColonyLineage.Entries;
using Xunit;
using static ColonyLineage.Desk.Tests.Said;

namespace ColonyLineage.Desk.Tests;

/// <summary>The brood patterns on the page of a queen: what was seen beside what her mating leads one to expect, and the caution always.</summary>
public sealed class BroodPatternPageTests : IAsyncLifetime
{
    private const string Caution = "<strong>A pattern alone condemns no queen.</strong>";
    private DeskHost _host = null!;

    public async ValueTask InitializeAsync()
    {
        var act = new ActId(Guid.Parse("5b3c0000-0000-8000-8000-0000000000a1"));
        Entry[] more =
        [
            // 26-03 is a daughter of 25-01: those are her brothers.
            new QueenMated { Id = new EntryId(Guid.Parse("5b3c0000-0000-8000-8000-0000000000b1")), Act = act, On = new DateOnly(2026, 6, 12), Queen = SmallOutfit.QueenNamed("26-03"), Drones = [SmallOutfit.QueenNamed("25-01")], EffectiveDrones = 8 },
            new Inspected { Id = new EntryId(Guid.Parse("5b3c0000-0000-8000-8000-0000000000b2")), Act = act, On = new DateOnly(2026, 6, 30), Colony = SmallOutfit.ColonyNamed("3"), BroodPattern = 2 },
        ];
        var recorded = SmallOutfit.Make().Recorded.Concat(more.Select(entry => new Recorded(entry, new DateTimeOffset(2026, 9, 1, 12, 0, 0, TimeSpan.Zero))));
        _host = await DeskHost.StartAsync(new MemoryOffice([.. recorded], SmallOutfit.Today));
    }

    public ValueTask DisposeAsync() => _host.DisposeAsync();

    [Fact]
    public async Task A_mating_with_recorded_drones()
    {
        var text = await TextAsync("26-03");
        InOrder(text,
            "<h2 id=\"brood\">Brood pattern</h2>", Caution, "Lee et al. 2019, Insects 10:12",
            "30 Jun 2026</time>", "2 of 5", "so soon after she came that brood of the queen before her may be in it", "id=5b3c0000-0000-8000-8000-0000000000b2",
            "18 Aug 2026</time>", "4 of 5",
            "Mated with drones of 25-01.", "25 % <small>at least", "30 % <small>of fertilised eggs, give or take 8.7 % from queen to queen, with 8 drones and about 10 sex alleles",
            "37 % <small>of the cells", "over 99.9 % <small>of looks at 100 cells would find 16 or more empty; of a queen without any diploid drone 4 %", "no score can be set against these figures");
        Assert.Contains($"/planned-mating?queen={SmallOutfit.QueenNamed("26-03").Value}&drones={SmallOutfit.QueenNamed("25-01").Value}&effective=8\"", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mating_in_the_open_and_one_that_nobody_recorded()
    {
        var open = await TextAsync("25-01");
        InOrder(open, Caution, "She was mated in the open, so nobody knows her drones", "10 % <small>of fertilised eggs, give or take 5.8 %", "19 % <small>", "81.2 % <small>of looks");
        Assert.DoesNotContain("Inbreeding of her brood", open, StringComparison.Ordinal);
        InOrder(await TextAsync("26-01"), Caution, "4 of 5", "Nobody recorded her mating: reckoned with drones that are no kin of hers.", "10 % <small>");
    }

    [Fact]
    public async Task Where_nothing_was_seen_the_caution_stands_all_the_same()
    {
        var text = await TextAsync("M0");
        InOrder(text, Caution, "None was recorded while she reigned.");
        Assert.DoesNotContain("What her mating leads one to expect", text, StringComparison.Ordinal);
    }

    private async Task<string> TextAsync(string queen)
    {
        using var http = new HttpClient { BaseAddress = new Uri(_host.Root) };
        var text = await http.GetStringAsync($"/queens/{SmallOutfit.QueenNamed(queen).Value}", TestContext.Current.CancellationToken);
        return string.Join(' ', WebUtility.HtmlDecode(text).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
