using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class VoidTests
{
    private static readonly Treated Dose = new() { Id = Entry("dose"), On = Day("2026-07-20"), Act = Act("old"), Colony = Colony("12"), Course = "T", Doses = 1 };

    private static readonly Combined Joined = new() { Id = Entry("joined"), On = Day("2026-08-01"), Act = Act("old"), Colony = Colony("Z"), Into = Colony("12"), QueenKept = Queen("Q12") };

    private static readonly Voided Void = new() { Id = Entry("void"), On = Day("2026-08-02"), Act = Act("older"), Entry = Entry("dose"), Why = "on 40", Of = Colony("12") };

    internal static readonly Books Held = Books.Small().Holding(Dose, Joined, Void);

    private static VoidEntries Request => new() { Act = Act("voiding"), On = Day("2026-09-10"), Entries = [Dose.Id, Joined.Id, Dose.Id], Why = "wrong page" };

    private static Outcome Decide(VoidEntries request) => VoidEntries.Decide(request, Held, Books.Now);

    [Fact]
    public void Every_history_that_the_wrong_entry_stands_in_hears_of_it()
    {
        var outcome = Decide(Request);
        Assert.Equal([Dose.Id, Joined.Id], outcome.Entries.Cast<Voided>().Select(entry => entry.Entry));
        Assert.Equal(Dose.Concerns, outcome.Entries[0].Concerns);
        Assert.Equal(Joined.Concerns, outcome.Entries[1].Concerns);
        Assert.Equal([Colony("12"), Queen("Q12")], outcome.Entries[1].AlsoConcerns);
    }

    [Fact]
    public void A_void() => Expect.Refused(
        Decide(Request with { Entries = [Dose.Id, Void.Id] }), "record the right entry again", "void-of-void entries[1]");

    [Fact]
    public void An_entry_that_is_not_there() => Expect.Refused(
        Decide(Request with { Entries = [Entry("unheard")] }), "open the history", "not-found entries[0]");

    [Fact]
    public void Without_a_reason() => Expect.Refused(Decide(Request with { Why = "" }), "Why is missing: fill it in", "missing why");

    [Fact]
    public void Nothing() => Expect.Refused(Decide(Request with { Entries = [] }), "nothing to record", "empty-act");

    [Fact]
    public void Recorded_by_itself()
    {
        var fresh = Void with { Id = Entry("fresh void") };
        Assert.Equal([fresh], RecordOne.Decide(new RecordOne(fresh), Held, Books.Now).Entries);
        Expect.Refused(RecordOne.Decide(new RecordOne(fresh with { Entry = Void.Id }), Held, Books.Now), "A void is final", "void-of-void entry");
        Expect.Refused(RecordOne.Decide(new RecordOne(fresh with { Entry = Entry("unheard") }), Held, Books.Now), "open the history", "not-found entry");
        Expect.Refused(RecordOne.Decide(new RecordOne(fresh with { Of = Colony("40") }), Held, Books.Now), "from its own history", "not-found of");
        Expect.Refused(RecordOne.Decide(new RecordOne(fresh with { Entry = fresh.Id }), Held, Books.Now), "cannot name itself", "of-itself entry");
    }
}
