using ColonyLineage.Entries;
using ColonyLineage.Rules;
using CsCheck;
using Xunit;

namespace ColonyLineage.Core.Tests.Rules;

/// <summary>What holds of every act, over generated requests. A failure prints the request and the seed: set CsCheck_Seed to see it again.</summary>
public sealed class ActProperties
{
    public static TheoryData<string> Acts => [.. ActGens.Acts];

    [Theory]
    [MemberData(nameof(Acts))]
    public void All_or_nothing_and_sound(string act)
    {
        var (taken, refused) = (0, 0);
        ActGens.Of(act).Sample(
            request =>
            {
                var outcome = ActGens.Decide(request, VoidTests.Held, Books.Now);
                Interlocked.Increment(ref outcome.IsRefused ? ref refused : ref taken);
                Holds(request, outcome, ActGens.Decide(request, VoidTests.Held, Books.Now));
            },
            iter: 1000);
        Assert.True(taken >= 10 && refused >= 10, $"the generated requests must try both: {taken} taken, {refused} refused");
    }

    [Fact]
    public void Every_act_of_the_room_is_generated() => Assert.Equal(
        typeof(ActRequest).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(ActRequest))).Select(type => type.Name).Order(), ActGens.Acts.Order());

    private static void Holds(ActRequest request, Outcome outcome, Outcome again)
    {
        Assert.True(outcome.Entries.Count == 0 != (outcome.Refusals.Count == 0), "entries or refusals, never both, never neither");
        Assert.Equal(outcome.Entries.Select(Written), again.Entries.Select(Written));
        Assert.Equal(outcome.Refusals, again.Refusals);
        Assert.DoesNotContain(outcome.Refusals, refusal => string.IsNullOrWhiteSpace(refusal.Name) || string.IsNullOrWhiteSpace(refusal.Message) || refusal.Field.EndsWith('.'));
        Assert.Distinct(outcome.Entries.Select(entry => entry.Id));
        Assert.DoesNotContain(outcome.Entries, entry => entry.Check().Count > 0);
        Assert.DoesNotContain(outcome.Entries, entry => entry.Act != request.Act || entry.On.Day != request.On.Day);
        if (outcome.IsRefused) return;
        Assert.Equal(Enumerable.Range(request.FirstOrder, outcome.Entries.Count), outcome.Entries.Select(entry => entry.Order));
        // The server runs the same rules over what a device decided, and takes it in as it is.
        Assert.Equal(outcome.Entries.Select(Written), RecordEntries.Decide(outcome.Entries, Books.Now).Entries.Select(Written));
    }

    private static string Written(Entry entry) => Kinds.Of(entry).Stored + EntryJson.Write(entry);
}
