using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Desk;

/// <summary>What answers over the whole outfit are put together from.</summary>
public interface IRows
{
    /// <summary>Today, in the outfit's place.</summary>
    DateOnly Today { get; }

    /// <summary>The rows of a question that are asked for, by the clocks asked for.</summary>
    Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, Ask ask, CancellationToken cancel) where TRow : class, IRow;

    /// <summary>The outfit, its store and the cards of all its yards, by the clocks asked for.</summary>
    Task<Household> HouseholdAsync(Ask clocks, CancellationToken cancel);

    /// <summary>Books with some subjects fetched at once, by the clocks asked for.</summary>
    Task<Books> BooksOnAsync(IReadOnlyList<Subject> subjects, Ask clocks, CancellationToken cancel);

    /// <summary>Treatments and takings-out of some colonies as the history has them, voided ones among them.</summary>
    Task<IReadOnlyList<HistoryLine>> TreatmentsAsync(IReadOnlyCollection<ColonyId> colonies, Ask clocks, CancellationToken cancel);
}

/// <summary>What belongs to the outfit as a whole.</summary>
public sealed record Household(OutfitCard Outfit, StoreCard Store, IReadOnlyList<YardCard> Yards);
