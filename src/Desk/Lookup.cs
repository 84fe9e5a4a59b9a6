using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Desk;

/// <summary>What several parts of one page ask for, fetched once: the outfit, the day that 'now' means, the register.</summary>
public sealed class Lookup(IOffice office, Address address)
{
    private Task<OutfitCard>? _outfit;
    private Task<IReadOnlyList<RegisterRow>>? _register;
    private Task<Books>? _books;

    /// <summary>The outfit's settings.</summary>
    public Task<OutfitCard> OutfitAsync(CancellationToken cancel) => _outfit ??= office.OutfitAsync(cancel);

    /// <summary>All yards, colonies and queens by name, by the clocks of this page.</summary>
    public Task<IReadOnlyList<RegisterRow>> RegisterAsync(CancellationToken cancel) => _register ??= office.RowsAsync(Questions.Register, address.Ask, cancel);

    /// <summary>The books by the clocks of this page.</summary>
    public Task<Books> BooksAsync(CancellationToken cancel) => _books ??= office.BooksAsync(address.Ask, cancel);

    /// <summary>The yards by name.</summary>
    public async Task<IReadOnlyList<RegisterRow>> YardsAsync(CancellationToken cancel) =>
        [.. (await RegisterAsync(cancel)).Where(row => row.Kind == SubjectKind.Yard).OrderBy(row => row.Name, ByNumber.Order).ThenBy(row => row.Id)];

    /// <summary>The day that 'this season' and 'seasons back' are reckoned from: the day looked back to, else today.</summary>
    public DateOnly Day => Gather.Day(office, address.Ask);

    /// <summary>The season of <see cref="Day"/>.</summary>
    public async Task<int> SeasonAsync(CancellationToken cancel) => Season.Of(Day, (await OutfitAsync(cancel)).SeasonStartMonth);
}
