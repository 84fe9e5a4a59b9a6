using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Projections;

/// <summary>
/// The open books: a card for every subject, folded from its standing entries when it is first looked at. Whoever works out
/// an answer reads through here, so that it can be told afterwards which cards the answer rests on.
/// </summary>
/// <param name="about">The standing entries that concern a subject, in the order of things; empty where there are none.</param>
public sealed class Books(Func<Subject, IReadOnlyList<Entry>> about)
{
    private readonly Dictionary<Subject, object> _cards = [];
    private HashSet<Subject>? _read;

    /// <summary>The outfit's settings, courses and lines.</summary>
    public OutfitCard Outfit => Card(Subject.Outfit, entries => OutfitCard.Fold(entries));

    /// <summary>What the outfit has at hand, and the rounds that are planned.</summary>
    public StoreCard Store => Card(Subject.Store, entries => StoreCard.Fold(entries));

    /// <summary>A colony's card; an empty one where nothing is known of it.</summary>
    public ColonyCard Colony(ColonyId id) => Card(id, entries => ColonyCard.Fold(id, entries));

    /// <summary>A queen's card; an empty one where nothing is known of her.</summary>
    public QueenCard Queen(QueenId id) => Card(id, entries => QueenCard.Fold(id, entries));

    /// <summary>A yard's card; an empty one where nothing is known of it.</summary>
    public YardCard Yard(YardId id) => Card(id, entries => YardCard.Fold(id, entries));

    /// <summary>Lets go of a subject's card, since its entries changed: it is folded again when it is next looked at.</summary>
    public void Forget(Subject subject) => _cards.Remove(subject);

    /// <summary>Starts to note which subjects are read.</summary>
    public void StartNoting() => _read = [];

    /// <summary>The subjects read since <see cref="StartNoting"/>, in a fixed order.</summary>
    public IReadOnlyList<Subject> StopNoting()
    {
        var read = _read ?? [];
        _read = null;
        return [.. read.Order()];
    }

    private TCard Card<TCard>(Subject subject, Func<IReadOnlyList<Entry>, TCard> fold) where TCard : class
    {
        _read?.Add(subject);
        if (_cards.TryGetValue(subject, out var known)) return (TCard)known;
        var card = fold(about(subject));
        _cards.Add(subject, card);
        return card;
    }
}
