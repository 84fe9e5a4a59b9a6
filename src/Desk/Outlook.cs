using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Conflicts;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.QueensByAge;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk;

/// <summary>What the yards' pages show of living colonies: each with its queen, its doses of the season and its open conflicts.</summary>
/// <param name="Queen">Its queen's row.</param>
/// <param name="Register">Its row in the register.</param>
/// <param name="Doses">Its courses of the season, the yard made whole.</param>
/// <param name="Conflicts">Conflicts that nobody has settled.</param>
public sealed record Outlook(QueenRow Queen, RegisterRow? Register, IReadOnlyList<DoseRow> Doses, IReadOnlyList<ConflictRow> Conflicts)
{
    /// <summary>It stands in its nuc box: to be transferred.</summary>
    public bool InNucBox => Register?.Housing is Housing.NucBox or Housing.MatingNuc;

    /// <summary>Courses that are not complete.</summary>
    public IEnumerable<DoseRow> Owing => Doses.Where(dose => dose.Owed > 0);

    /// <summary>The last day on which somebody looked into it or gave it a dose.</summary>
    public DateOnly? LastTouched => Doses.Select(dose => dose.LastDose).Append(Queen.LastLook).Max();

    /// <summary>All living colonies asked for, in the order of yards and spots.</summary>
    public static async Task<IReadOnlyList<Outlook>> OfAsync(IOffice office, Ask ask, int season, int startMonth, CancellationToken cancel)
    {
        var queens = await office.RowsAsync(Questions.QueensByAge, ask, cancel);
        var register = (await office.RowsAsync(Questions.Register, ask, cancel)).Where(row => row.Kind == SubjectKind.Colony).ToDictionary(row => row.Id);
        var doses = await DosesAsync(office, ask, season, startMonth, queens, register, cancel);
        var byColony = doses.ToLookup(dose => dose.ColonyId);
        var conflicts = (await office.RowsAsync(Questions.Conflicts, ask, cancel)).Where(conflict => !conflict.Settled).ToLookup(conflict => conflict.ColonyId);
        return
        [
            .. queens.OrderBy(row => row.Yard, ByNumber.Order).ThenBy(row => row.YardId?.Value).ThenBy(row => row.Spot, ByNumber.Order).ThenBy(row => row.Colony, ByNumber.Order).ThenBy(row => row.ColonyId.Value)
                .Select(row => new Outlook(row, register.GetValueOrDefault(row.ColonyId.Value), [.. byColony[row.ColonyId]], [.. conflicts[row.ColonyId]])),
        ];
    }

    /// <summary>The doses of living colonies in a season, with the colonies of a begun yard that had nothing.</summary>
    public static async Task<IReadOnlyList<DoseRow>> DosesAsync(IOffice office, Ask ask, int season, int startMonth, IReadOnlyList<QueenRow> living, IReadOnlyDictionary<Guid, RegisterRow> register, CancellationToken cancel)
    {
        var rows = await office.RowsAsync(Questions.DoseCompleteness, ask with { Season = season }, cancel);
        return DoseCompletenessQuestion.WholeYards([.. rows.Where(row => row.Ended is null)], living, register, season, startMonth);
    }
}
