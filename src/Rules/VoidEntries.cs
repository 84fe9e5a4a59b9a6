using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>Entries were wrong: each is struck through, with the reason, in every history that it stands in.</summary>
public sealed record VoidEntries : ActRequest
{
    /// <summary>The entries that were wrong; one named twice is voided once.</summary>
    public required IReadOnlyList<EntryId> Entries { get; init; }

    /// <summary>Why, 1 to 1,000 characters.</summary>
    public required string Why { get; init; }

    /// <summary>One void for each entry.</summary>
    public static Outcome Decide(VoidEntries request, IStanding standing, Now now)
    {
        var draft = new Draft(request, standing);
        var done = new HashSet<EntryId>();
        for (var i = 0; i < request.Entries.Count; i++)
        {
            var id = request.Entries[i];
            var field = $"entries[{i}]";
            switch (standing.Find(id))
            {
                case null:
                    draft.Refuse(Refusals.NotFound, field, "The books hold no entry of this id: open the history and void it there.");
                    break;
                case Voided:
                    draft.Refuse(Refusals.VoidOfVoid, field, OfVoid(field).Message);
                    break;
                case var wrong when done.Add(id):
                    draft.Add(new Voided
                    {
                        Id = new EntryId(request.Derived($"void {id}")), On = request.On, Act = request.Act,
                        Entry = id, Why = request.Why, Of = wrong.Stream, AlsoOf = [.. wrong.Concerns.Where(subject => subject != wrong.Stream)],
                    });
                    break;
            }
        }

        return draft.Finish(now);
    }

    internal static Refusal OfVoid(string field) =>
        new(Refusals.VoidOfVoid, field, "A void is final and cannot itself be voided: record the right entry again instead.");
}
