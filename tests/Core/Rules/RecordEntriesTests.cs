using System.Reflection;
using ColonyLineage.Entries;
using ColonyLineage.Rules;
using Xunit;
using static ColonyLineage.Core.Tests.Rules.Named;

namespace ColonyLineage.Core.Tests.Rules;

public sealed class RecordEntriesTests
{
    private static Inspected Look(string name) =>
        new() { Id = Entry(name), On = Day("2026-09-01"), Act = Act("visit"), Colony = Colony(name), Signs = ["chalky"], FramesOfBees = 8 };

    private static Voided Void(string name, string of) =>
        new() { Id = Entry(name), On = Day("2026-09-02"), Act = Act("visit"), Entry = Entry(of), Why = "wrong", Of = Colony(of) };

    private static Outcome Decide(params Entry[] entries) => RecordEntries.Decide(entries, Books.Now);

    [Fact]
    public void As_they_are_also_for_colonies_that_nobody_knows_yet() => Assert.Equal([Entry("1"), Entry("2")], Decide(Look("1"), Look("2")).Entries.Select(entry => entry.Id));

    [Fact]
    public void The_same_entry_sent_twice_is_one() => Assert.Single(Decide(Look("1"), Look("1")).Entries);

    [Fact]
    public void The_same_id_with_other_content() => Expect.Refused(
        Decide(Look("1"), Look("1") with { Signs = ["sunken"] }), "an id of its own", "same-id-other-content entries[1].id");

    [Fact]
    public void The_same_id_with_another_kind() => Expect.Refused(
        Decide(Look("1"), Void("1", "2")), "an id of its own", "same-id-other-content entries[1].id");

    [Fact]
    public void Each_bad_field_by_the_entry_it_stands_in() => Expect.Refused(
        Decide(
            Look("1"), Look("2") with { Signs = null, FramesOfBees = null }, Look("3") with { On = Day("2026-09-12"), FramesOfBees = -1 },
            new QueenBought { Id = Entry("b"), On = Day("2026-09-01"), Act = Act("visit"), Queen = Queen("b"), Born = Day("2027-01-01") }),
        "Say at least one thing", "says-nothing entries[1]", "out-of-range entries[2].framesOfBees", "day-in-future entries[2].on", "day-in-future entries[3].born");

    [Fact]
    public void Of_two_acts() => Expect.Refused(
        Decide(Look("1"), Look("2") with { Act = Act("other") }), "send each act by itself", "several-acts entries[1].act");

    [Fact]
    public void A_void_of_an_entry_of_the_same_act_is_taken_in() => Assert.Equal(2, Decide(Look("1"), Void("v", "1")).Entries.Count);

    [Fact]
    public void A_void_of_a_void_in_either_order()
    {
        Expect.Refused(Decide(Void("v", "1"), Void("w", "v")), "record the right entry again", "void-of-void entries[1].entry");
        Expect.Refused(Decide(Void("w", "v"), Void("v", "1")), "record the right entry again", "void-of-void entries[0].entry");
        Expect.Refused(Decide(Void("v", "v")), "cannot name itself", "of-itself entries[0].entry");
    }

    [Fact]
    public void A_void_in_nobodys_history() => Expect.Refused(
        Decide(Void("v", "1") with { Of = default }), "in whose history", "no-id entries[0].of");

    [Fact]
    public void Nothing_and_far_too_much()
    {
        Expect.Refused(Decide(), "nothing to record", "empty-act");
        Expect.Refused(RecordEntries.Decide([.. Enumerable.Repeat(Look("1"), 20_001)], Books.Now), "Send it in parts", "empty-act");
        Assert.False(RecordEntries.Decide([.. Enumerable.Repeat(Look("1"), 20_000)], Books.Now).IsRefused);
    }

    /// <summary>Every field that holds a day is looked at; a new kind with one more must be added to the check of the future.</summary>
    [Fact]
    public void No_day_of_any_kind_escapes()
    {
        var days = Kinds.All.SelectMany(kind => kind.Type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(field => new[] { typeof(DateOnly), typeof(DateOnly?), typeof(Occurred), typeof(Occurred?) }.Contains(field.PropertyType) && field.Name != nameof(Washed.On))
            .Select(field => $"{kind.Type.Name}.{field.Name}"));
        // A packet's last day of use, and the day until which work is put off, may be to come.
        Assert.Equal(["MedicineAcquired.UseBy", "QueenBought.Born", "QueenRaised.Born", "QueenRaised.Grafted", "WorkPutOff.Until"], days.Order());
    }
}
