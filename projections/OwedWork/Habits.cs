namespace ColonyLineage.Projections.OwedWork;

/// <summary>
/// How many days after something was done the next is owed. Common practice, no source, but where one is named. They open and close lines of
/// a list; nobody is told to treat or to feed by them.
/// </summary>
internal static class Habits
{
    /// <summary>A given queen's laying is looked at from a week on, and within three.</summary>
    public const int LayingFrom = 7, LayingBy = 21;

    /// <summary>
    /// Cells are given 10 days after grafting, queens emerge at 12 and lay 10 days or more after that (queen-rearing timetables): looked at from 12
    /// days after the cell was given, and within four weeks.
    /// </summary>
    public const int CellFrom = 12, CellBy = 28;

    /// <summary>A colony without a queen does not wait longer than two weeks.</summary>
    public const int QueenlessBy = 14;

    /// <summary>Combined boxes are looked at a week later, and within three.</summary>
    public const int CombinedFrom = 7, CombinedBy = 21;

    /// <summary>A feeder is empty within a week, and off within four.</summary>
    public const int FeederFrom = 7, FeederBy = 28;

    /// <summary>A queen in doubt is looked at again after two weeks, and within four.</summary>
    public const int DoubtFrom = 14, DoubtBy = 28;

    /// <summary>An old queen is looked at within a month before winter, or a month into it.</summary>
    public const int OldBefore = 30, OldAfter = 30;

    /// <summary>Supplement goes on every other round for two months.</summary>
    public const int SupplementFor = 60;

    /// <summary>A yard is washed again two weeks after a wash at the limit, and within four.</summary>
    public const int WashFrom = 14, WashBy = 28;

    /// <summary>After a course is complete a wash tells whether it worked: from three weeks on, and within six.</summary>
    public const int WashAfterFrom = 21, WashAfterBy = 42;
}
