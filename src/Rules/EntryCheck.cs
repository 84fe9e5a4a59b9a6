using System.Globalization;
using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>What is wrong with one entry, today: its own bounds, and days that have not come yet.</summary>
internal static class EntryCheck
{
    public static IEnumerable<Refusal> Of(Entry entry, Now now) =>
        entry.Check().Concat(Days(entry).Where(day => day.Day > now.LastDay).Select(day => InFuture(day.Field, day.Day, now)));

    private static IEnumerable<(string Field, DateOnly Day)> Days(Entry entry)
    {
        yield return ("on", entry.On.Day);
        switch (entry)
        {
            case QueenRaised raised:
                if (raised.Born is { } born) yield return ("born", born.Day);
                if (raised.Grafted is { } grafted) yield return ("grafted", grafted);
                break;
            case QueenBought { Born: { } emerged }:
                yield return ("born", emerged.Day);
                break;
        }
    }

    private static Refusal InFuture(string field, DateOnly day, Now now) =>
        new(Refusals.DayInFuture, field, string.Create(CultureInfo.InvariantCulture,
            $"{day:yyyy-MM-dd} has not come yet; today is {now.Today:yyyy-MM-dd}. Give the day on which it happened."));
}
