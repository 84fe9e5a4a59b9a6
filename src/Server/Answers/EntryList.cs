using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Server.Answers;

/// <summary>The entries themselves as rows, voided ones included, so that any answer can be gone through by hand.</summary>
internal sealed class EntryList(OutfitLedger ledger)
{
    private static readonly string[] Shared = ["id", "on", "act", "order", "visit", "by", "note", "colony", "queen", "yard"];

    private static readonly AnswerColumn[] First =
    [
        new("id", ColumnType.Id), new("kind", ColumnType.Text), new("on_from", ColumnType.Day), new("on_to", ColumnType.Day), new("order", ColumnType.Whole),
        new("colony", ColumnType.Text), new("queen", ColumnType.Text), new("yard", ColumnType.Text), new("spot", ColumnType.Text),
    ];

    private static readonly AnswerColumn[] Last =
    [
        new("note", ColumnType.Text), new("by", ColumnType.Text), new("act", ColumnType.Id), new("visit", ColumnType.Id), new("recorded", ColumnType.Text), new("voided", ColumnType.Flag),
        new("voided_why", ColumnType.Text),
    ];

    public async Task<Answer> AnswerAsync(Asked asked, CancellationToken cancel)
    {
        var kind = asked.Kind is null ? null : KindOf(asked.Kind);
        ActId? act = asked.Act is null ? null : Guid.TryParse(asked.Act, out var id) ? new ActId(id) : throw Answering.Refuse(Refusals.NotReadable, "act", "An act is named by its id.");
        var known = new List<Recorded>();
        await foreach (var recorded in ledger.ReadAllAsync(cancel))
            if (asked.Ask.KnownAt is null || recorded.At <= asked.Ask.KnownAt) known.Add(recorded);

        var voids = known.Select(one => one.Entry).OfType<Voided>().GroupBy(one => one.Entry).ToDictionary(group => group.Key, group => group.First());
        // Where things stood is told by the whole books, not by those of a past day.
        var books = WholeBooks.Of(known).Books;
        var wanted = known.Where(one => (kind is null || one.Entry.GetType() == kind) && (act is null || one.Entry.Act == act) && (asked.Ask.AsOf is null || one.Entry.On.Day <= asked.Ask.AsOf))
            .OrderBy(one => Place.Of(one.Entry))
            .Select(one => Row.Of(one, books, voids.GetValueOrDefault(one.Entry.Id)))
            .Where(row => row.IsWanted(asked.Ask, books.Outfit.SeasonStartMonth)).ToList();
        var fields = kind is null
            ? [new AnswerColumn("fields", ColumnType.Text)]
            : wanted.SelectMany(row => row.Fields.Keys).Distinct().Select(name => new AnswerColumn(System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(name), ColumnType.Text)).ToArray();
        var names = wanted.SelectMany(row => row.Fields.Keys).Distinct().ToArray();
        return new Answer([.. First, .. fields, .. Last], [.. wanted.Select(row => row.Values(kind is null ? null : names))]);
    }

    private static Type KindOf(string name)
    {
        var found = Kinds.All.FirstOrDefault(kind => kind.Kind.Name == name || kind.Kind.Stored == name);
        return found.Type ?? throw Answering.Refuse(Refusals.UnknownKind, "kind", $"'{name}' is not a kind of entry. Take one of {string.Join(", ", Kinds.All.Select(kind => kind.Kind.Name))}.");
    }

    private sealed record Row(Recorded Recorded, Voided? Void, string? Colony, ColonyId? ColonyId, string? Queen, string? Yard, YardId? YardId, string? Spot, IReadOnlyDictionary<string, object?> Fields)
    {
        public static Row Of(Recorded recorded, Books books, Voided? @void)
        {
            var entry = recorded.Entry;
            var colony = entry.Concerns.Where(subject => subject.Kind == SubjectKind.Colony).Select(subject => (ColonyId?)new ColonyId(subject.Id)).FirstOrDefault();
            var queen = entry.Concerns.Where(subject => subject.Kind == SubjectKind.Queen).Select(subject => (QueenId?)new QueenId(subject.Id)).FirstOrDefault();
            var stay = colony is { } c ? books.Colony(c).Stays.LastOrDefault(stay => stay.From.Day <= entry.On.Day) : null;
            var yard = stay?.Spot.Yard ?? entry.Concerns.Where(subject => subject.Kind == SubjectKind.Yard).Select(subject => (YardId?)new YardId(subject.Id)).FirstOrDefault();
            var fields = EntryJson.WriteTagged(entry).Where(field => field.Key != "kind" && !Shared.Contains(field.Key)).ToDictionary(field => field.Key, field => Plain(field.Value, books));
            return new Row(
                recorded, @void, colony is { } known ? Names.Of(books.Colony(known)) : null, colony, queen is { } her ? Names.Of(books.Queen(her)) : null,
                yard is { } there ? Names.Of(books.Yard(there)) : null, yard, stay?.Spot.Number, fields);
        }

        public bool IsWanted(Ask ask, int startMonth) =>
            Fits(ask.Yard, Yard, YardId?.Value) && Fits(ask.Colony, Colony, ColonyId?.Value) && Fits(ask.Queen, Queen, null) && Fits(ask.Spot, Spot, null)
            && (ask.Season is null || Season.Of(Recorded.Entry.On.Day, startMonth) == ask.Season);

        public object?[] Values(string[]? names)
        {
            var entry = Recorded.Entry;
            IEnumerable<object?> fields = names is null
                ? [string.Join(", ", Fields.Select(field => $"{field.Key} {Convert.ToString(field.Value, System.Globalization.CultureInfo.InvariantCulture)}"))]
                : names.Select(name => Fields.GetValueOrDefault(name));
            return
            [
                entry.Id.Value, Kinds.Of(entry).Stored, entry.On.Earliest, entry.On.Day, entry.Order, Colony, Queen, Yard, Spot, .. fields,
                entry.Note, entry.By, entry.Act.Value, entry.Visit?.Value, Recorded.At, Void is not null, Void?.Why,
            ];
        }

        private static bool Fits(string? wanted, string? name, Guid? id) =>
            wanted is null || string.Equals(wanted, name, StringComparison.OrdinalIgnoreCase) || (id is not null && Guid.TryParse(wanted, out var asked) && asked == id);

        // Ids of things that the books know become their names; what is made of several parts stays JSON.
        private static object? Plain(JsonNode? node, Books books)
        {
            if (node is not JsonValue value) return node?.ToJsonString();
            if (value.TryGetValue(out bool flag)) return flag;
            if (value.TryGetValue(out decimal number)) return number == decimal.Truncate(number) && Math.Abs(number) < int.MaxValue ? (int)number : number;
            var text = value.GetValue<string>();
            if (!Guid.TryParse(text, out var id)) return text;
            return books.Colony(new ColonyId(id)).Number ?? books.Queen(new QueenId(id)).Name ?? books.Yard(new YardId(id)).Name ?? text;
        }
    }
}
