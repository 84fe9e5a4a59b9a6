using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>
/// Writes the entries down, in the order in which things happen, with ids named from the seed and with the instant at which
/// the books took them in.
/// </summary>
internal sealed class Pen(Guid space, DateOnly lastDay)
{
    private readonly List<(Recorded Recorded, int Written)> _written = [];
    private DateOnly _day;
    private int _order;
    private int _acts;
    private int _names;
    private Act _act = new(default, null, null, default);

    /// <summary>What every entry of one act has in common.</summary>
    private readonly record struct Act(ActId Id, VisitId? Visit, string? By, DateTimeOffset At);

    /// <summary>The day on which things happen now.</summary>
    public DateOnly Day => _day;

    /// <summary>The last day on which anything happens or is recorded.</summary>
    public DateOnly LastDay => lastDay;

    /// <summary>A new id.</summary>
    public Guid NewId(string kind) => NamedId.Of(space, $"{kind}:{++_names}");

    /// <summary>Another day begins.</summary>
    public void Turn(DateOnly day)
    {
        (_day, _order, _acts) = (day, 0, 0);
    }

    /// <summary>Another act begins. Its entries are recorded in the evening, or later where the crew was late.</summary>
    public void Begin(string? by, VisitId? visit = null, DateOnly? late = null) =>
        _act = new Act(new ActId(NewId("act")), visit, by, Evening(late ?? _day));

    /// <summary>A visit to a yard on this day.</summary>
    public VisitId Visit(DemoYard yard) => new(NamedId.Of(space, $"visit:{yard.Id}:{_day:yyyy-MM-dd}"));

    /// <summary>The act that goes on.</summary>
    public ActId Now => _act.Id;

    /// <summary>The id of the next entry.</summary>
    public EntryId Next() => new(NewId("entry"));

    /// <summary>The entry that was written last.</summary>
    public EntryId LastId => _written[^1].Recorded.Entry.Id;

    /// <summary>Entries of a kind that were written, in the order of writing.</summary>
    public IEnumerable<TEntry> Written<TEntry>(Func<TEntry, bool> wanted) where TEntry : Entry => _written.Select(written => written.Recorded.Entry).OfType<TEntry>().Where(wanted);

    /// <summary>Writes an entry of the act that goes on.</summary>
    public void Write(Entry entry) => Keep(entry with { Order = ++_order, Visit = _act.Visit, By = _act.By }, _act.At);

    /// <summary>
    /// Writes an entry that is wrong, then voids it some days later and records the right one beside it, with the day on which it
    /// occurred.
    /// </summary>
    public void WriteWrong(Entry wrong, Entry right, string why, int daysLater)
    {
        Write(wrong);
        var later = Min(_day.AddDays(daysLater), lastDay);
        var mending = new Act(new ActId(NewId("act")), null, _act.By, Evening(later));
        Keep(right with { Act = mending.Id, Order = ++_order, Visit = _act.Visit, By = _act.By }, mending.At);
        Keep(new Voided { Id = Next(), On = later, Act = mending.Id, By = _act.By, Entry = wrong.Id, Why = why, Of = wrong.Stream, AlsoOf = [.. wrong.AlsoConcerns] }, mending.At);
    }

    /// <summary>Everything written, in the order in which the books took it in; the entries of an act stand together.</summary>
    public IReadOnlyList<Recorded> All() => [.. _written.OrderBy(entry => entry.Recorded.At).ThenBy(entry => entry.Written).Select(entry => entry.Recorded)];

    /// <summary>Each act has an instant of its own, a tenth of a second after the one before.</summary>
    private DateTimeOffset Evening(DateOnly day) =>
        new DateTimeOffset(Min(day, lastDay).ToDateTime(new TimeOnly(17, 40)), TimeSpan.Zero).AddMilliseconds(100 * ++_acts);

    private void Keep(Entry entry, DateTimeOffset at) => _written.Add((new Recorded(entry, at), _written.Count));

    private static DateOnly Min(DateOnly left, DateOnly right) => left < right ? left : right;
}
