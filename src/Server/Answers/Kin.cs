using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Lineage;
using ColonyLineage.Projections.Register;

namespace ColonyLineage.Server.Answers;

/// <summary>Who came of whom, and who was in contact with whom, out of the links of the lineage.</summary>
internal sealed class Kin(OutfitLedger ledger, ReadCache cache)
{
    private static readonly AnswerColumn[] Columns =
    [
        new("kind", ColumnType.Text), new("id", ColumnType.Id), new("name", ColumnType.Text), new("steps", ColumnType.Whole), new("link", ColumnType.Text), new("by", ColumnType.Text),
        new("sure", ColumnType.Text), new("yard", ColumnType.Text), new("spot", ColumnType.Text), new("colony", ColumnType.Text), new("began", ColumnType.Day), new("ended", ColumnType.Day),
        new("fate", ColumnType.Text), new("living", ColumnType.Flag), new("taken_out", ColumnType.Text), new("entries", ColumnType.Entries),
    ];

    private static readonly AnswerColumn[] ContactColumns =
    [
        new("colony_id", ColumnType.Id), new("colony", ColumnType.Text), new("how", ColumnType.Text), new("where", ColumnType.Text), new("from", ColumnType.Day), new("to", ColumnType.Day),
        new("entries", ColumnType.Entries),
    ];

    /// <summary>All descendants or ancestors of a queen or colony, nearest first, each once, with where it stands and what became of it.</summary>
    public async Task<Answer> AnswerAsync(Asked asked, CancellationToken cancel)
    {
        var tree = await TreeAsync(asked.Ask, cancel);
        var down = asked.DescendantsOf is not null;
        var starts = tree.Named(asked.DescendantsOf ?? asked.AncestorsOf!, down ? "descendants-of" : "ancestors-of", null);
        var seen = starts.ToHashSet();
        var rows = new List<object?[]>();
        var queue = new Queue<(Guid Id, int Steps)>(starts.Select(start => (start, 0)));
        while (queue.TryDequeue(out var here))
            foreach (var link in down ? tree.Graph.From(here.Id) : tree.Graph.To(here.Id))
            {
                var there = down ? link.ToId : link.FromId;
                if (!seen.Add(there)) continue;
                queue.Enqueue((there, here.Steps + 1));
                var row = tree.Row(link, there, down ? link.To : link.From, down ? link.From : link.To, here.Steps + 1);
                if (Wanted(asked, row)) rows.Add(row);
            }

        return new Answer(Columns, rows);
    }

    /// <summary>Every colony that shared frames, a yard or a parent with one since a day.</summary>
    public async Task<Answer> ContactsAsync(Asked asked, CancellationToken cancel)
    {
        var tree = await TreeAsync(asked.Ask, cancel);
        var bands = asked.Ask.LooksBack ? await ledger.RowsAsync(Questions.SpotStory, Clocks(asked.Ask), cancel) : await cache.RowsAsync(Questions.SpotStory, cancel);
        var contacts = tree.Named(asked.ContactsOf!, "contacts-of", SubjectKind.Colony).SelectMany(colony => Contacts.Of(colony, asked.Since!.Value, tree.Links, bands)).Where(one => asked.How is null || one.How == asked.How);
        return new Answer(
            ContactColumns,
            [.. contacts.Select(one => (object?[])[one.ColonyId, one.Colony, one.How, one.Where, one.From, one.To, one.Entries.Select(id => id.Value).ToArray()])]);
    }

    private static bool Wanted(Asked asked, object?[] row) =>
        (!asked.Living || row[13] is true)
        && (asked.Ask.Yard is null || Same(asked.Ask.Yard, row[7]))
        && (asked.Ask.Spot is null || Same(asked.Ask.Spot, row[8]))
        && (asked.Ask.Colony is null || Same(asked.Ask.Colony, row[9]));

    private static bool Same(string wanted, object? value) => string.Equals(wanted, value as string, StringComparison.OrdinalIgnoreCase);

    private static Ask Clocks(Ask ask) => new() { AsOf = ask.AsOf, KnownAt = ask.KnownAt };

    private async Task<Tree> TreeAsync(Ask ask, CancellationToken cancel)
    {
        if (!ask.LooksBack)
            return await cache.GetAsync("tree", async stop => new Tree(await ledger.RowsAsync(Questions.Lineage, Ask.Everything, stop), await ledger.RowsAsync(Questions.Register, Ask.Everything, stop)), cancel);
        return new Tree(await ledger.RowsAsync(Questions.Lineage, Clocks(ask), cancel), await ledger.RowsAsync(Questions.Register, Clocks(ask), cancel));
    }

    /// <summary>The links to walk along, with who is who.</summary>
    private sealed class Tree(IReadOnlyList<LinkRow> links, IReadOnlyList<RegisterRow> register)
    {
        private readonly Dictionary<Guid, RegisterRow> _byId = register.Where(row => row.Kind != SubjectKind.Yard).ToDictionary(row => row.Id);
        private readonly ILookup<string, RegisterRow> _byName = register.Where(row => row.Kind != SubjectKind.Yard).ToLookup(row => row.Name, StringComparer.OrdinalIgnoreCase);

        public IReadOnlyList<LinkRow> Links { get; } = links;

        public Graph Graph { get; } = new(links);

        /// <summary>The queens and colonies of a name, or the one of an id. A name that several bear gives all of them.</summary>
        public IReadOnlyList<Guid> Named(string name, string field, SubjectKind? kind)
        {
            Guid[] found = Guid.TryParse(name, out var id)
                ? _byId.TryGetValue(id, out var one) && (kind is null || one.Kind == kind) ? [id] : []
                : [.. _byName[name].Where(row => kind is null || row.Kind == kind).Select(row => row.Id)];
            if (found.Length > 0) return found;
            throw Answering.Refuse(Refusals.NotFound, field, $"The books know no {(kind is null ? "queen or colony" : "colony")} '{name}'. Look the name up with the question register.");
        }

        public object?[] Row(LinkRow link, Guid id, string name, string by, int steps)
        {
            var known = _byId.GetValueOrDefault(id);
            var kind = link.Link is LinkKind.Mother or LinkKind.Drones ? "queen" : "colony";
            return
            [
                kind, id, name, steps, Word(link.Link), by, link.Sure is { } sure ? Word(sure) : null, known?.Yard, known?.Spot, kind == "colony" ? name : known?.Colony, known?.Began, known?.Ended,
                known?.Fate, known is { Ended: null } && (kind == "colony" || known.ColonyId is not null), known?.TakenOut, link.Entries.Concat(known?.Entries ?? []).Select(entry => entry.Value).Distinct().ToArray(),
            ];
        }

        private static string Word<TEnum>(TEnum word) where TEnum : struct, Enum => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(word.ToString());
    }
}
