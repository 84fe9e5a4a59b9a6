using ColonyLineage.Entries;

namespace ColonyLineage.Projections;

/// <summary>An entry's place in the order of things: the day it occurred, then its order within the day, then its id.</summary>
public readonly record struct Place(DateOnly Day, int Order, EntryId Id) : IComparable<Place>
{
    public static Place Of(Entry entry) => new(entry.On.Day, entry.Order, entry.Id);

    /// <summary>Whether an entry lies between two others, the first included; null for no end.</summary>
    public static bool During(Entry entry, Entry from, Entry? until) => Of(entry) >= Of(from) && (until is null || Of(entry) < Of(until));

    public int CompareTo(Place other)
    {
        var byDay = Day.CompareTo(other.Day);
        if (byDay != 0) return byDay;
        var byOrder = Order.CompareTo(other.Order);
        return byOrder != 0 ? byOrder : Id.CompareTo(other.Id);
    }

    public static bool operator <(Place left, Place right) => left.CompareTo(right) < 0;

    public static bool operator >(Place left, Place right) => left.CompareTo(right) > 0;

    public static bool operator <=(Place left, Place right) => left.CompareTo(right) <= 0;

    public static bool operator >=(Place left, Place right) => left.CompareTo(right) >= 0;
}
