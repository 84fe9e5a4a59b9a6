using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class RecordOneTests
{
    private static readonly Washed Wash = new() { Id = Entry("wash"), On = Day("2026-09-01"), Act = Act("one"), Colony = Colony("12"), Mites = 3, Bees = 300 };

    private static Outcome Decide(Entry entry) => RecordOne.Decide(new RecordOne(entry), Books.Small(), Books.Now);

    [Fact]
    public void As_it_is() => Assert.Equal([Wash], Decide(Wash).Entries);

    [Fact]
    public void What_begins_with_it_need_not_be_known()
    {
        Assert.False(Decide(new YardOpened { Id = Entry("opened"), On = Day("2026-09-01"), Act = Act("one"), Yard = Yard("fresh"), Name = "Fresh" }).IsRefused);
        Assert.False(Decide(new ColonyEstablished { Id = Entry("swarm"), On = Day("2026-09-01"), Act = Act("one"), Colony = Colony("swarm"), Number = "S", How = HowEstablished.Swarm }).IsRefused);
        Assert.False(Decide(new Requeened { Id = Entry("given"), On = Day("2026-09-01"), Act = Act("one"), Colony = Colony("12"), Queen = Queen("fresh"), OldQueen = OldQueen.Killed }).IsRefused);
    }

    [Fact]
    public void On_a_colony_and_in_a_yard_nobody_knows()
    {
        Expect.Refused(Decide(Wash with { Colony = Colony("unheard") }), "record first how it came", "not-found colony");
        Expect.Refused(
            Decide(new ColonyEstablished { Id = Entry("swarm"), On = Day("2026-09-01"), Act = Act("one"), Colony = Colony("swarm"), Number = "S", How = HowEstablished.Swarm, At = Spot("nowhere", "1") }),
            "record first how it came", "not-found yard");
    }

    [Fact]
    public void Its_bounds_hold_at_its_own_fields() => Expect.Refused(
        Decide(Wash with { Mites = -1, On = Day("2026-09-12") }), "from 0 to 10000", "out-of-range mites", "day-in-future on");
}
