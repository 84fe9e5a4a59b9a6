using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Desk;

/// <summary>What the desk's pages need of the books. The server gives it; tests give one in memory.</summary>
public interface IOffice : IRows
{
    /// <summary>The outfit's settings, courses and lines.</summary>
    Task<Projections.Cards.OutfitCard> OutfitAsync(CancellationToken cancel);

    /// <summary>The open books around some subjects, as of and as known at what is asked: for a page about one colony, queen or yard.</summary>
    Task<Books> BooksAsync(Ask ask, CancellationToken cancel);

    /// <summary>All that was ever recorded about a subject, voided entries included, in the order of things.</summary>
    Task<IReadOnlyList<HistoryLine>> HistoryAsync(Subject subject, Ask ask, CancellationToken cancel);

    /// <summary>Entries by their ids: the evidence of a number.</summary>
    Task<IReadOnlyList<HistoryLine>> EntriesAsync(IReadOnlyCollection<EntryId> ids, CancellationToken cancel);

    /// <summary>The entries of one act.</summary>
    Task<IReadOnlyList<HistoryLine>> ActAsync(ActId act, CancellationToken cancel);

    /// <summary>Records entries, all or none. Empty where they stand recorded; else why not.</summary>
    Task<IReadOnlyList<Refusal>> RecordAsync(IReadOnlyList<Entry> entries, CancellationToken cancel);

    /// <summary>Decides on a request of Rules by the books as of its day and records what comes of it, all or nothing. Empty where it stands recorded; else why not.</summary>
    Task<IReadOnlyList<Refusal>> RunAsync(object request, CancellationToken cancel);

    /// <summary>Plans the import of a sheet by a mapping. Nothing is recorded.</summary>
    /// <exception cref="RefusedException">The sheet as a whole or the mapping cannot be read.</exception>
    Task<SheetPlan> PlanSheetAsync(byte[] sheet, string map, CancellationToken cancel);

    /// <summary>Plans it again by the books as they are now and records it as one act. Empty where it stands recorded; else why not.</summary>
    Task<IReadOnlyList<Refusal>> RecordSheetAsync(byte[] sheet, string map, bool skipBad, CancellationToken cancel);

    /// <summary>Entries in whose texts some words stand, voided ones included, the latest first.</summary>
    Task<IReadOnlyList<HistoryLine>> FindTextAsync(string words, int most, Ask ask, CancellationToken cancel);

    /// <summary>A new id for an act that a page is about to offer.</summary>
    Guid NewId();

    /// <summary>The place among the entries of a day for an act that a page is about to offer: after those offered before. 0 to 900,000.</summary>
    int NextOrder();
}
