using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Support;

namespace ColonyLineage.Core.Tests;

/// <summary>
/// A stored sample of every kind and version, hand-written, of an invented outfit. A sample is never changed or taken
/// away: what was once stored must load for ever.
/// </summary>
public class SampleTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "Core", "Entries", "Samples");

    /// <summary>The names in the store. To be added to; a name that stands here is never changed and never taken away.</summary>
    private static readonly string[] Frozen =
    [
        "boxes-changed.v1", "colony-established.v1", "combined.v1", "conflict-settled.v1", "course-defined.v1", "daily-maximum.v1",
        "ended.v1", "fed.v1", "feeder-put-on.v1", "feeder-taken-off.v1", "found-dead.v1", "found-queenless.v1", "frames-moved.v1",
        "harvested.v1", "inspected.v1", "line-started.v1", "medicine-acquired.v1", "moved.v1", "noted.v1", "nuc-transferred.v1",
        "outfit-described.v1", "queen-accepted.v1", "queen-banked.v1", "queen-bought.v1", "queen-caged.v1", "queen-cell-given.v1",
        "queen-ended.v1", "queen-introduced.v1", "queen-killed.v1", "queen-marked.v1", "queen-mated.v1", "queen-raised.v1",
        "queen-released.v1", "readiness-set.v1", "requeened.v1", "round-planned.v1", "sold.v1", "split-from.v1", "spot-marked.v1",
        "spot-retired.v1", "stock-changed.v1", "stock-counted.v1", "stores-target-set.v1", "supered.v1", "supersedure-seen.v1",
        "supplement-given.v1", "taken-out.v1", "treated.v1", "treatment-taken-out.v1", "voided.v1", "washed.v1", "weighed.v1",
        "weighed.v2", "work-done-elsewhere.v1", "work-put-off.v1", "yard-closed.v1", "yard-described.v1", "yard-opened.v1",
    ];

    public static TheoryData<string> Samples => [.. Directory.GetFiles(Folder, "*.json").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> SamplesOfToday => [.. Samples.Select(row => row.Data).Where(stored => !Upcasts.All.ContainsKey(stored))];

    private static IEnumerable<string> Known => Kinds.All.Select(kind => kind.Kind.Stored).Concat(Upcasts.All.Keys);

    [Fact]
    public void Stored_names_are_frozen() => Assert.Equal(Frozen, Known.Order(StringComparer.Ordinal));

    [Fact]
    public void Every_kind_and_every_version_has_a_sample() =>
        Assert.Equal(Known.Order(StringComparer.Ordinal), Samples.Select(row => row.Data).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Samples))]
    public void A_sample_loads_has_no_fault_and_is_written_again_as_it_was(string stored)
    {
        var json = File.ReadAllBytes(Path.Combine(Folder, stored + ".json"));
        var entry = EntryJson.Read(stored, json);

        Assert.Empty(entry.Check());
        if (!Upcasts.All.TryGetValue(stored, out var today))
        {
            Assert.Equal(stored, Kinds.Of(entry).Stored);
            AssertSame(JsonNode.Parse(json)!, JsonNode.Parse(EntryJson.Write(entry))!);
        }
        else
        {
            Assert.IsType(today, entry);
        }

        // What a device sends is the same thing with its kind beside it.
        var tagged = EntryJson.WriteTagged(entry);
        Assert.Equal("kind", tagged.First().Key);
        Assert.Equal(EntryJson.Write(entry), EntryJson.Write(EntryJson.ReadTagged(tagged)));
    }

    [Theory]
    [MemberData(nameof(SamplesOfToday))]
    public void A_sample_fills_every_field_of_its_kind(string stored)
    {
        var fields = JsonNode.Parse(File.ReadAllBytes(Path.Combine(Folder, stored + ".json")))!.AsObject().Select(field => field.Key).ToHashSet();
        string[] common = ["id", "on", "act", "order", "visit", "by", "note", "stream", "alsoConcerns", "concerns"];
        var own = Kinds.All.Single(kind => kind.Kind.Stored == stored).Type.GetProperties()
            .Select(property => char.ToLowerInvariant(property.Name[0]) + property.Name[1..]).Except([.. common, "equalityContract"]);
        // Owed work is at a colony or at a yard, never at both: the two samples have one each.
        Assert.Empty(own.Except(fields).Except(stored.StartsWith("work-", StringComparison.Ordinal) ? ["colony", "yard"] : Array.Empty<string>()));
    }

    [Fact]
    public void A_first_version_weight_is_lifted_in_the_pounds_that_were_read_off()
    {
        var lifted = Assert.IsType<Weighed>(EntryJson.Read("weighed.v1", File.ReadAllBytes(Path.Combine(Folder, "weighed.v1.json"))));
        Assert.Equal(new Quantity(112.5m, "lb"), lifted.Gross);
        Assert.Equal(new Quantity(38m, "lb"), lifted.Tare);
        Assert.Equal("Nell", lifted.By);
    }

    [Fact]
    public void Entries_that_touch_more_than_one_stream_say_so()
    {
        var combined = Assert.IsType<Combined>(EntryJson.Read("combined.v1", File.ReadAllBytes(Path.Combine(Folder, "combined.v1.json"))));
        Assert.Equal([combined.Colony, combined.Into, combined.QueenKept!.Value], combined.Concerns);
    }

    /// <summary>Equal as JSON: the order of fields does not count, and '9' is '9.0' to no one, so numbers are compared as written.</summary>
    private static void AssertSame(JsonNode expected, JsonNode actual) =>
        Assert.True(JsonNode.DeepEquals(expected, actual), $"stored:  {expected.ToJsonString()}{Environment.NewLine}written: {actual.ToJsonString()}");
}
