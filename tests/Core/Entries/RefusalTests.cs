using System.Reflection;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Support;

namespace ColonyLineage.Core.Tests;

/// <summary>The smallest entry that earns each refusal: <c>Refusals/NAME.json</c> or <c>Refusals/NAME.WHAT.json</c>, with the field that is wrong.</summary>
public class RefusalTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "Core", "Entries", "Refusals");

    /// <summary>Only given where more is known than the entry alone: today, or what the books hold. Their cases stand with those rooms.</summary>
    private static readonly string[] OfOtherRooms =
    [
        Refusals.DayInFuture, Refusals.SameIdOtherContent, Refusals.VoidOfVoid, Refusals.NotFound, Refusals.EmptyAct,
        "several-acts", "nobody-there", "named-twice",
    ];

    public static TheoryData<string> Cases => [.. Directory.GetFiles(Folder, "*.json").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Nonsense_is_refused_by_its_name_at_its_field_with_a_message(string name)
    {
        var text = JsonNode.Parse(File.ReadAllBytes(Path.Combine(Folder, name + ".json")))!;
        var refusal = Assert.Single(Check(text["entry"]!.AsObject()));
        Assert.Equal(name.Split('.')[0], refusal.Name);
        Assert.Equal(text["field"]!.GetValue<string>(), refusal.Field);
        Assert.Matches(@"^\S.{10,}\.$", refusal.Message);
    }

    [Fact]
    public void Every_refusal_that_an_entry_can_earn_has_a_case()
    {
        var names = typeof(Refusals).GetFields(BindingFlags.Public | BindingFlags.Static).Select(field => (string)field.GetRawConstantValue()!);
        Assert.Equal(names.Except(OfOtherRooms).Order(), Cases.Select(row => row.Data.Split('.')[0]).Distinct().Order());
    }

    [Fact]
    public void All_faults_are_found_not_only_the_first()
    {
        var text = """
            { "kind": "washed.v1", "id": "00000000-0000-0000-0000-000000000000", "on": "2026-08-29",
              "act": "01890000-0000-7000-8000-000000000001", "colony": "01890000-0000-7000-8000-000000000002", "mites": -1, "bees": 9999 }
            """;
        Assert.Equal(["id", "mites", "bees"], Check(JsonNode.Parse(text)!.AsObject()).Select(refusal => refusal.Field));
    }

    private static IReadOnlyList<Refusal> Check(JsonObject entry)
    {
        try
        {
            return EntryJson.ReadTagged(entry).Check();
        }
        catch (RefusedException refused)
        {
            return refused.Refusals;
        }
    }
}
