using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Rules;

namespace ColonyLineage.Server.Acts;

/// <summary>The acts by their names: the name of the request in lower case with hyphens, for instance <c>fix-spot-with-nuc</c>.</summary>
public static class ActCatalogue
{
    private static readonly Dictionary<string, Act> ByName = new Act[]
    {
        Act.Of<Combine>(Combine.Decide),
        Act.Of<FixSpotWithNuc>(FixSpotWithNuc.Decide),
        Act.Of<KillAndShareOut>(KillAndShareOut.Decide),
        Act.Of<MoveColonies>(MoveColonies.Decide),
        Act.Of<RequeenYard>(RequeenYard.Decide),
        Act.Of<Split>(Split.Decide),
        Act.Of<SupersedureFound>(SupersedureFound.Decide),
        Act.Of<TransferNucs>(TransferNucs.Decide),
        Act.Of<TreatYard>(TreatYard.Decide),
        Act.Of<VisitPage>(VisitPage.Decide),
        Act.Of<VoidEntries>(VoidEntries.Decide),
    }.ToDictionary(act => act.Name);

    private static readonly Dictionary<Type, Act> ByType = ByName.Values.ToDictionary(act => act.Request);

    /// <summary>One entry by itself: its body is the entry with its kind.</summary>
    public const string RecordOne = "record-one";

    /// <summary>The names of all acts.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. ByName.Keys.Append(RecordOne).Order(StringComparer.Ordinal)];

    /// <summary>The type of the request of an act; null where there is no act of the name, or it is <see cref="RecordOne"/>.</summary>
    public static Type? RequestOf(string name) => ByName.GetValueOrDefault(name)?.Request;

    /// <summary>What comes of a request.</summary>
    /// <param name="request">The request.</param>
    /// <param name="standing">The books as of a day, without the entries of an act.</param>
    /// <param name="now">The present.</param>
    public static Outcome Decide(object request, Func<DateOnly, ActId, IStanding> standing, Now now) => request switch
    {
        RecordOne one => Rules.RecordOne.Decide(one, standing(one.Entry.On.Day, one.Entry.Act), now),
        ActRequest act => ByType[act.GetType()].Decide(act, standing(act.On.Day, act.Act), now),
        _ => throw new ArgumentException($"{request.GetType().Name} is no act.", nameof(request)),
    };

    private sealed record Act(string Name, Type Request, Func<ActRequest, IStanding, Now, Outcome> Decide)
    {
        public static Act Of<TRequest>(Func<TRequest, IStanding, Now, Outcome> decide) where TRequest : ActRequest =>
            new(JsonNamingPolicy.KebabCaseLower.ConvertName(typeof(TRequest).Name), typeof(TRequest), (request, standing, now) => decide((TRequest)request, standing, now));
    }
}
