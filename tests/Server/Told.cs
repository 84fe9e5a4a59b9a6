using System.Text.Json.Nodes;
using ColonyLineage.Entries;

namespace ColonyLineage.Server.Tests;

/// <summary>Entries for tests, each test with names and ids of its own.</summary>
internal sealed class Told
{
    private int _order;

    public ActId Act { get; init; } = new(Guid.NewGuid());

    public YardId Yard { get; } = new(Guid.NewGuid());

    public YardOpened Opened(string name) => new() { Id = Id(), On = new DateOnly(2024, 3, 1), Act = Act, Yard = Yard, Name = name, Order = _order++ };

    public ColonyEstablished Colony(string number, string spot, out ColonyId colony, QueenId? queen = null)
    {
        colony = new ColonyId(Guid.NewGuid());
        return new() { Id = Id(), On = new DateOnly(2024, 5, 1), Act = Act, Colony = colony, Number = number, How = HowEstablished.OpeningCount, At = new Spot(Yard, spot), Queen = queen, Order = _order++ };
    }

    public ColonyEstablished Made(string number, string spot, out ColonyId colony)
    {
        colony = new ColonyId(Guid.NewGuid());
        return new() { Id = Id(), On = new DateOnly(2026, 5, 1), Act = Act, Colony = colony, Number = number, How = HowEstablished.Split, At = new Spot(Yard, spot), Order = _order++ };
    }

    public SplitFrom Split(ColonyId maker, ColonyId into) => new() { Id = Id(), On = new DateOnly(2026, 5, 1), Act = Act, Colony = maker, Into = into, Order = _order++ };

    public QueenRaised Raised(QueenId queen, string name, DateOnly born, QueenId? mother = null) => new()
    {
        Id = Id(), On = born, Act = Act, Queen = queen, Name = name, Born = born, Mother = mother, MotherIs = mother is null ? Certainty.Unknown : Certainty.Known, From = RaisedFrom.Graft, Order = _order++,
    };

    public Treated Dose(ColonyId colony, decimal doses, DateOnly? on = null) => new() { Id = Id(), On = on ?? new DateOnly(2026, 8, 1), Act = Act, Colony = colony, Course = "T", Doses = doses, Order = _order++ };

    public Washed Wash(ColonyId colony, int mites = 3) => new() { Id = Id(), On = new DateOnly(2026, 8, 20), Act = Act, Colony = colony, Mites = mites, Bees = 300, Order = _order++ };

    public static EntryId Id() => new(Guid.NewGuid());

    /// <summary>A problem's short name and the fields at fault.</summary>
    public static (string Name, string[] Fields) Problem(string body)
    {
        var problem = JsonNode.Parse(body)!;
        const string Before = "urn:colony-lineage:refusal:";
        var type = problem["type"]!.GetValue<string>();
        Assert.StartsWith(Before, type);
        Assert.NotEmpty(problem["title"]!.GetValue<string>());
        Assert.NotEmpty(problem["detail"]!.GetValue<string>());
        return (type[Before.Length..], [.. problem["refusals"]?.AsArray().Select(refusal => refusal!["field"]!.GetValue<string>()) ?? []]);
    }
}
