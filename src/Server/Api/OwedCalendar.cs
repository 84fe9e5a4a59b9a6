using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Projections.OwedWork;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace ColonyLineage.Server.Api;

/// <summary>
/// Owed work as a calendar by RFC 5545: one item for each yard and kind of work, since nobody looks at a calendar with five hundred. All-day events
/// (what most calendars show), or to-dos.
/// </summary>
/// <param name="today">Today, in the outfit's place.</param>
/// <param name="name">What the calendar is called.</param>
/// <param name="root">Where the desk answers, without a slash at the end.</param>
/// <param name="toDos">To-dos instead of events.</param>
internal sealed class OwedCalendar(DateOnly today, string name, string root, bool toDos)
{
    /// <summary>So many colonies are described; the page has the others.</summary>
    private const int Described = 40;

    private readonly HashSet<string> _taken = [];

    /// <summary>The calendar as text.</summary>
    public string Of(IEnumerable<OwedRow> owed)
    {
        var calendar = new Calendar { ProductId = "-//ColonyLineage//Owed work//EN", Method = "PUBLISH" };
        calendar.AddProperty("X-WR-CALNAME", Clean(name));
        // What is put off to a day of its own is an item of its own, after what is not.
        foreach (var group in owed.GroupBy(row => (row.YardId, row.Work, Until: row.State == Due.PutOff ? row.PutOffUntil : null)).OrderBy(group => group.Key.Until is not null).ThenBy(group => group.Key.Until))
        {
            var item = Item([.. group]);
            Describe(item, [.. group]);
            calendar.AddChild(item);
        }

        return new CalendarSerializer().SerializeToString(calendar) ?? "";
    }

    private RecurringComponent Item(IReadOnlyList<OwedRow> rows)
    {
        var from = rows.Min(From);
        // The first of them to be late says by when.
        var by = rows.Min(By);
        if (toDos) return new Todo { Start = new CalDateTime(from), Due = by is { } due ? new CalDateTime(due) : null, Status = TodoStatus.NeedsAction };
        var last = by ?? from;
        // In a calendar nobody looks back: what is late, or has no day set, reaches to today.
        if (last < today && (by is null || rows.Any(row => row.State == Due.Late))) last = today;
        // An event ends before its end: the day after its last.
        return new CalendarEvent { Start = new CalDateTime(from), End = new CalDateTime(last.AddDays(1)), Transparency = TransparencyType.Transparent };
    }

    private void Describe(RecurringComponent item, IReadOnlyList<OwedRow> rows)
    {
        var (first, late) = (rows[0], rows.Count(row => row.State == Due.Late));
        var link = $"{root}/owed-work?{(first.Yard is { } yard ? $"yard={Uri.EscapeDataString(yard)}&" : "")}work={first.Work}";
        item.Uid = Uid(rows);
        // The start of the day: what is fetched twice on a day is the same.
        item.DtStamp = new CalDateTime(today.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc));
        item.Summary = Clean($"{first.Yard ?? "On no spot"}: {OwedWords.Of(first.Work)}{HowMany(rows)}{(late == 0 ? "" : rows.Count == late ? ", late" : $", {late} late")}{(first is { State: Due.PutOff, PutOffUntil: { } until } ? $", put off until {Text.Day(until)}" : "")}");
        item.Description = Clean(string.Join('\n',
        [
            .. rows.Take(Described).Select(row => $"{OwedWords.Where(row)}: {row.What} ({OwedWords.Of(row.State)}, {OwedWords.When(row)})"),
            .. rows.Count > Described ? [$"and {rows.Count - Described} more"] : Array.Empty<string>(),
            link,
        ]));
        item.Url = new Uri(link);
        item.Categories = [first.Work];
    }

    /// <summary>By the yard, the work and the entry that opened it first; with the day it is put off to where another item has that already.</summary>
    private string Uid(IReadOnlyList<OwedRow> rows)
    {
        var first = rows.OrderBy(row => row.Opened).ThenBy(row => row.OpenedBy).First();
        var uid = $"{first.YardId?.Value.ToString() ?? "no-yard"}.{first.Work}.{first.OpenedBy}";
        if (!_taken.Add(uid)) uid += $".{Text.Iso(first.PutOffUntil)}";
        return $"{uid}@colony-lineage";
    }

    private static string HowMany(IReadOnlyList<OwedRow> rows) => rows switch
    {
        [{ Colony: { } colony }] => $", colony {colony}",
        [{ Of: > 1 and var of }] => $" ({of})",
        [_] => "",
        _ => $", {rows.Count} colonies",
    };

    private static DateOnly From(OwedRow row) => row is { State: Due.PutOff, PutOffUntil: { } until } && until > row.From ? until : row.From;

    private static DateOnly? By(OwedRow row) => row.By is { } by && by < From(row) ? From(row) : row.By;

    /// <summary>Without control characters, which the standard forbids in a text. Line breaks are escaped as it is written.</summary>
    private static string Clean(string text) => string.Concat(text.ReplaceLineEndings("\n").Where(letter => letter is '\n' or '\t' || !char.IsControl(letter)));
}
