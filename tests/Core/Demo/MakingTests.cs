using ColonyLineage.Command.Demo;
using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Core.Tests.Demo;

/// <summary>The demo outfit holds to the laws that every outfit holds to, whatever day and size it is made for.</summary>
public sealed class MakingTests
{
    [Fact]
    public void The_same_options_give_the_same_entries_to_the_byte()
    {
        var again = DemoOutfit.Make(new DemoOptions { Today = DemoBooks.Today });
        Assert.Equal(DemoBooks.Recorded.Select(Text), again.Select(Text));
    }

    [Fact]
    public void Another_seed_gives_other_entries()
    {
        var other = DemoOutfit.Make(new DemoOptions { Today = DemoBooks.Today, Seed = 7, Colonies = 60, Yards = 4, Seasons = 1 });
        Assert.Empty(other.Select(recorded => recorded.Entry.Id).Intersect(DemoBooks.Entries.Select(entry => entry.Id)));
    }

    [Theory]
    [InlineData(480, 16, 4, "2026-11-25")]
    [InlineData(60, 4, 2, "2027-03-05")]
    [InlineData(60, null, 3, "2027-07-31")]
    [InlineData(700, null, 2, "2027-02-28")]
    [InlineData(40, 4, 1, "2026-03-01")]
    public void Every_entry_may_be_recorded_and_nothing_is_in_the_future(int colonies, int? yards, int seasons, string today)
    {
        var day = DateOnly.Parse(today, System.Globalization.CultureInfo.InvariantCulture);
        var made = DemoOutfit.Make(new DemoOptions { Colonies = colonies, Yards = yards, Seasons = seasons, Today = day });
        Assert.Empty(made.SelectMany(recorded => recorded.Entry.Check().Select(refusal => $"{recorded.Entry}: {refusal}")));
        Assert.DoesNotContain(made, recorded => recorded.Entry.On.Day >= day);
        Assert.DoesNotContain(made, recorded => recorded.At >= new DateTimeOffset(day.ToDateTime(default), TimeSpan.Zero));
        Assert.DoesNotContain(made, recorded => DateOnly.FromDateTime(recorded.At.UtcDateTime) < recorded.Entry.On.Day);
    }

    [Fact]
    public void Ids_are_distinct_and_arrival_is_in_order_with_acts_together()
    {
        var made = DemoBooks.Recorded;
        Assert.Equal(made.Count, made.Select(recorded => recorded.Entry.Id).Distinct().Count());
        Assert.Equal(made.Select(recorded => recorded.At).Order(), made.Select(recorded => recorded.At));
        var acts = made.Select(recorded => recorded.Entry.Act).ToList();
        var runs = acts.Where((act, i) => i == 0 || acts[i - 1] != act).ToList();
        Assert.Equal(runs.Distinct().Count(), runs.Count);
        Assert.All(made.GroupBy(recorded => recorded.Entry.Act), act => Assert.Single(act.Select(recorded => recorded.At).Distinct()));
    }

    /// <summary>The size that the purpose of the demo asks for: some 16 yards and 480 colonies over four seasons.</summary>
    [Fact]
    public void It_is_as_large_as_asked()
    {
        Assert.InRange(DemoBooks.Recorded.Count, 25_000, 60_000);
        var living = DemoBooks.Whole.Rows(Questions.QueensByAge).ToList();
        Assert.InRange(living.Count, 440, 520);
        Assert.Equal(16, living.Select(row => row.YardId).Distinct().Count());
        Assert.Equal(4, DemoBooks.Entries.Select(entry => Season.Of(entry.On.Day, 3)).Distinct().Count());
    }

    private static string Text(Recorded recorded) => $"{recorded.At:O} {Kinds.Of(recorded.Entry).Stored} {EntryJson.Write(recorded.Entry)}";
}
