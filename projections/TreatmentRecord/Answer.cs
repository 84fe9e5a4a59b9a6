using ColonyLineage.Entries;

namespace ColonyLineage.Projections.TreatmentRecord;

/// <summary>
/// One use of a treatment as it was recorded, voided ones too. The columns are those that Regulation (EU) 2019/6, Article 108(2), names for the owner's
/// record, and what an inspector asks beside them.
/// </summary>
public sealed record TreatmentRow : IRow
{
    /// <summary>Where the colony stood that day.</summary>
    public YardId? YardId { get; init; }

    public string? Yard { get; init; }

    public string? Spot { get; init; }

    /// <summary>The animals treated.</summary>
    public required ColonyId ColonyId { get; init; }

    public required string Colony { get; init; }

    /// <summary>What became of the colony since: moved, combined, dead, sold; null where it stands there still.</summary>
    public string? Since { get; init; }

    /// <summary>The outfit's season of the day.</summary>
    public required int Season { get; init; }

    /// <summary>The date of administration.</summary>
    public required DateOnly On { get; init; }

    /// <summary>The day on which it was taken out; null where that is not recorded.</summary>
    public DateOnly? TakenOut { get; init; }

    /// <summary>Days from administration to taking out: the duration of the treatment.</summary>
    public int? Days { get; init; }

    public required string Course { get; init; }

    /// <summary>Share of a full dose.</summary>
    public required decimal Doses { get; init; }

    public string? Substance { get; init; }

    /// <summary>The name of the product in the owner's words; of the lot's purchase, where the use names none.</summary>
    public string? Product { get; init; }

    public string? Lot { get; init; }

    /// <summary>The quantity administered.</summary>
    public decimal? Amount { get; init; }

    public string? Unit { get; init; }

    /// <summary>Name and address of the supplier, by the lot.</summary>
    public string? Supplier { get; init; }

    /// <summary>Evidence of acquisition, by the lot.</summary>
    public string? Proof { get; init; }

    /// <summary>The prescribing veterinarian, where there was one, by the lot.</summary>
    public string? Prescriber { get; init; }

    /// <summary>Withdrawal period in days, even if zero, by the outfit's course; null where the course does not say.</summary>
    public int? WithdrawalDays { get; init; }

    public DateOnly? WithdrawalUntil { get; init; }

    public bool? SupersOn { get; init; }

    /// <summary>The highest temperature of the day at the yard, degrees Celsius, where it was recorded.</summary>
    public decimal? DailyMaximumC { get; init; }

    /// <summary>What the colony's bees had of the course in the season, and what makes it complete.</summary>
    public decimal? CourseHad { get; init; }

    public decimal? CourseFull { get; init; }

    /// <summary>Who reports it.</summary>
    public string? By { get; init; }

    /// <summary>When the books took it in (UTC), and how many days after the day it happened.</summary>
    public required string Recorded { get; init; }

    public required int DaysLate { get; init; }

    /// <summary>Struck through: another entry says that it was wrong.</summary>
    public required bool Voided { get; init; }

    public string? VoidedBy { get; init; }

    public string? VoidedAt { get; init; }

    public string? VoidedWhy { get; init; }

    /// <summary>What is not recorded, by name.</summary>
    public required IReadOnlyList<string> Missing { get; init; }

    public required IReadOnlyList<EntryId> Entries { get; init; }
}

/// <summary>What is not recorded, counted over the uses that stand.</summary>
public sealed record MissingRow(string What, int Uses);
