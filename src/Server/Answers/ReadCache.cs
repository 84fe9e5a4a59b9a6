using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Server.Answers;

/// <summary>
/// Rows of the read tables, and what is made of them, kept until they are different. Whoever recorded something, this process or another,
/// the version that the ledger gives tells.
/// </summary>
public sealed class ReadCache(OutfitLedger ledger)
{
    private readonly Dictionary<string, (object[] Of, object Value)> _made = [];
    private (long Version, OutfitCard Card)? _outfit;
    private (long Version, Household Household)? _household;

    /// <summary>The rows of a question, everything as known now; the same list as long as none of them is different.</summary>
    public Task<IReadOnlyList<TRow>> RowsAsync<TRow>(Question<TRow> question, CancellationToken cancel) where TRow : class, IRow => ledger.KeptRowsAsync(question, cancel);

    /// <summary>What is made of some lists of rows, kept under a name as long as they are the same lists.</summary>
    public T Made<T>(string name, Func<T> make, params object[] of) where T : class
    {
        lock (_made)
            if (_made.TryGetValue(name, out var kept) && kept.Of.Zip(of).All(pair => ReferenceEquals(pair.First, pair.Second)))
                return (T)kept.Value;
        var value = make();
        lock (_made) _made[name] = (of, value);
        return value;
    }

    /// <summary>What is known of the outfit itself.</summary>
    public async Task<OutfitCard> OutfitAsync(CancellationToken cancel)
    {
        var version = await ledger.VersionAsync(cancel);
        lock (_made)
            if (_outfit is { } kept && kept.Version == version)
                return kept.Card;
        var card = ledger.OpenBooks(cancel).Outfit;
        lock (_made) _outfit = (version, card);
        return card;
    }

    /// <summary>The outfit, its store and the cards of all its yards.</summary>
    public async Task<Household> HouseholdAsync(CancellationToken cancel)
    {
        var version = await ledger.VersionAsync(cancel);
        lock (_made)
            if (_household is { } kept && kept.Version == version)
                return kept.Household;
        var yards = (await RowsAsync(Questions.Register, cancel)).Where(row => row.Kind == SubjectKind.Yard).Select(row => new YardId(row.Id)).ToList();
        var books = await ledger.OpenBooksAsync([Subject.Outfit, Subject.Store, .. yards.Select(yard => (Subject)yard)], cancel);
        var household = new Household(books.Outfit, books.Store, [.. yards.Select(books.Yard)]);
        lock (_made) _household = (version, household);
        return household;
    }
}
