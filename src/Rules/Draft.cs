using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>Gathers the entries of one act and everything that is wrong with it, each at the field of the request.</summary>
internal sealed class Draft(ActRequest request, IStanding standing)
{
    private readonly List<(Entry Entry, string At, (string Field, string Path)[] Named)> _entries = [];
    private readonly List<Refusal> _refusals = [];
    private readonly HashSet<Subject> _noted = [];
    private readonly HashSet<(string What, object Named)> _named = [];

    /// <summary>Adds the next thing that was done.</summary>
    /// <param name="entry">The entry; its order, visit, reporter and note are filled in here.</param>
    /// <param name="at">The path in the request under which its fields stand, for instance <c>rows[3].wash.</c>.</param>
    /// <param name="named">Fields that stand elsewhere in the request, with their paths there.</param>
    public void Add(Entry entry, string at = "", params (string Field, string Path)[] named)
    {
        // A long, since a first order near the end of int must be refused by its bounds and not by an overflow.
        var order = (int)Math.Min((long)request.FirstOrder + _entries.Count, int.MaxValue);
        var note = _noted.Add(entry.Stream) ? request.Note : null;
        _entries.Add((entry with { Order = order, Visit = request.Visit, By = request.By, Note = note }, at, named));
    }

    /// <summary>Notes a reason why the act cannot be recorded.</summary>
    public void Refuse(string name, string field, string message) => _refusals.Add(new Refusal(name, field, message));

    /// <summary>A colony that must be in the books. All zeros are left to the bounds of the entry.</summary>
    public void Known(ColonyId colony, string field) => Known(colony, colony.Value, field, "colony");

    /// <summary>A yard that must be in the books.</summary>
    public void Known(YardId yard, string field) => Known(yard, yard.Value, field, "yard");

    /// <summary>A queen that must be in the books, where one is named.</summary>
    public void Known(QueenId? queen, string field)
    {
        if (queen is { } given) Known(given, given.Value, field, "queen");
    }

    /// <summary>Something that can be named once in this act.</summary>
    public void Once(object named, string field, string what)
    {
        if (!_named.Add((what, named)))
            Refuse(Refusals.NamedTwice, field, $"This {what} is named twice in one act: take one of the two out.");
    }

    /// <summary>The colony of one row: the one that is named, else the one on the spot. Null after a refusal.</summary>
    public ColonyId? ColonyAt(YardId yard, string? number, ColonyId? named, string row)
    {
        if (named is { } colony)
        {
            Known(colony, $"{row}colony");
            return colony;
        }

        if (string.IsNullOrWhiteSpace(number))
        {
            Refuse(Refusals.Missing, $"{row}spot", "Say the spot, or which colony.");
            return null;
        }

        if (standing.ColonyOn(new Spot(yard, number)) is { } there) return there;
        Refuse(Refusals.NobodyThere, $"{row}spot", $"By the books nobody stands on spot {number} that day. Mend the number, name the colony, or record first how it came there.");
        return null;
    }

    /// <summary>
    /// The colonies of a yard, at least one, in the order of its spots, so that the same yard always gives the same order.
    /// Empty after a refusal.
    /// </summary>
    public IReadOnlyList<Tenant> TenantsOf(YardId yard, string field)
    {
        var tenants = standing.ColoniesIn(yard);
        if (tenants.Count == 0)
        {
            Known(yard, field);
            if (standing.Knows(yard)) Refuse(Refusals.NobodyThere, field, "By the books nobody stands in that yard that day: name another yard or another day.");
            else if (yard.Value == Guid.Empty) Refuse(Refusals.NoId, field, "Say which yard.");
        }

        return
        [
            .. tenants
                .OrderBy(tenant => tenant.Spot.Number.Length).ThenBy(tenant => tenant.Spot.Number, StringComparer.Ordinal)
                .ThenBy(tenant => tenant.Above).ThenBy(tenant => tenant.Colony.Value),
        ];
    }

    /// <summary>All of it, or every reason why not.</summary>
    public Outcome Finish(Now now)
    {
        var faults = _entries.SelectMany(entry => EntryCheck.Of(entry.Entry, now).Select(fault => InRequest(fault, entry.At, entry.Named)));
        Refusal[] refusals = [.. _refusals.Concat(faults).Distinct()];
        if (refusals.Length > 0) return Outcome.Refused(refusals);
        return _entries.Count is > 0 and <= RecordEntries.Most
            ? Outcome.Of([.. _entries.Select(entry => entry.Entry)])
            : Outcome.Refused([RecordEntries.WrongCount(_entries.Count)]);
    }

    private void Known(Subject subject, Guid id, string field, string what)
    {
        if (id != Guid.Empty && !standing.Knows(subject))
            Refuse(Refusals.NotFound, field, $"The books know no such {what}: take one that they know, or record first how it came.");
    }

    private static Refusal InRequest(Refusal fault, string at, (string Field, string Path)[] named) => fault with
    {
        Field = fault.Field switch
        {
            "on" or "act" or "visit" or "by" or "note" => fault.Field,
            "order" => "firstOrder",
            var field when named.FirstOrDefault(pair => pair.Field == field) is { Path: { } path } => path,
            var field => $"{at}{field}".TrimEnd('.'),
        },
    };
}
