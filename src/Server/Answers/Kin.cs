using System.Runtime.CompilerServices;
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
    public async Task<Answer> AnswerAsync(Asked asked, CancellationToken cancel) =>
        new(Columns, [.. (await WalkAsync(asked, cancel)).Select(found => found.Values())]);

    /// <summary>The same as a JSON array.</summary>
    public async Task WriteAsync(Asked asked, Stream utf8, CancellationToken cancel)
    {
        utf8.WriteByte((byte)'[');
        var first = true;
        foreach (var found in await WalkAsync(asked, cancel))
        {
            if (!first) utf8.WriteByte((byte)',');
            first = false;
            found.Write(utf8);
        }

        utf8.WriteByte((byte)']');
    }

    private async Task<IEnumerable<Found>> WalkAsync(Asked asked, CancellationToken cancel)
    {
        var tree = await TreeAsync(asked.Ask, cancel);
        var down = asked.DescendantsOf is not null;
        var starts = tree.Named(asked.DescendantsOf ?? asked.AncestorsOf!, down ? "descendants-of" : "ancestors-of", SubjectKind.Queen, SubjectKind.Colony);
        return tree.Graph.Walk(starts, down).Select(step => new Found(step.Link, down, step.Steps, tree.Who(down ? step.Link.ToId : step.Link.FromId))).Where(found => Wanted(asked, found));
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

    private static bool Wanted(Asked asked, Found found) =>
        (!asked.Living || found.IsLiving)
        && (asked.Ask.Yard is null || Same(asked.Ask.Yard, found.Known?.Yard))
        && (asked.Ask.Spot is null || Same(asked.Ask.Spot, found.Known?.Spot))
        && (asked.Ask.Colony is null || Same(asked.Ask.Colony, found.Colony));

    private static bool Same(string wanted, string? value) => string.Equals(wanted, value, StringComparison.OrdinalIgnoreCase);

    private static Ask Clocks(Ask ask) => new() { AsOf = ask.AsOf, KnownAt = ask.KnownAt };

    private async Task<Tree> TreeAsync(Ask ask, CancellationToken cancel)
    {
        if (ask.LooksBack) return new Tree(await ledger.RowsAsync(Questions.Lineage, Clocks(ask), cancel), await ledger.RowsAsync(Questions.Register, Clocks(ask), cancel));
        var (links, register) = (await cache.RowsAsync(Questions.Lineage, cancel), await cache.RowsAsync(Questions.Register, cancel));
        return cache.Made("tree", () => new Tree(links, register), links, register);
    }

    /// <summary>The links to walk along, with who is who.</summary>
    private sealed class Tree(IReadOnlyList<LinkRow> links, IReadOnlyList<RegisterRow> register)
    {
        private readonly Dictionary<Guid, RegisterRow> _byId = register.Where(row => row.Kind != SubjectKind.Yard).ToDictionary(row => row.Id);

        public IReadOnlyList<LinkRow> Links { get; } = links;

        public Graph Graph { get; } = new(links);

        /// <summary>The queens and colonies of a name, or the one of an id. A name that several bear gives all of them.</summary>
        public IReadOnlyList<Guid> Named(string name, string field, params IReadOnlyList<SubjectKind> kinds)
        {
            Guid[] found = [.. Desk.Named.Among(register, name, kinds).Select(row => row.Id)];
            if (found.Length > 0) return found;
            throw Answering.Refuse(Refusals.NotFound, field, $"The books know no {(kinds.Count > 1 ? "queen or colony" : "colony")} '{name}'. Look the name up with the question register.");
        }

        /// <summary>What the register knows of a queen or colony.</summary>
        public RegisterRow? Who(Guid id) => _byId.GetValueOrDefault(id);
    }

    /// <summary>One that was come upon.</summary>
    /// <param name="Link">The link that led to it.</param>
    /// <param name="Down">The link was followed from mother to daughter, from maker to made.</param>
    /// <param name="Steps">How many links lie between.</param>
    /// <param name="Known">What the register knows of it.</param>
    private readonly record struct Found(LinkRow Link, bool Down, int Steps, RegisterRow? Known)
    {
        // A link and a row of the register that are still the same objects read the same, but for the steps.
        private static readonly ConditionalWeakTable<LinkRow, Written> Downwards = [], Upwards = [];

        public bool IsLiving => Known is { Ended: null } && (!IsQueen || Known.ColonyId is not null);

        public string? Colony => IsQueen ? Known?.Colony : Name;

        private bool IsQueen => Link.Link is LinkKind.Mother or LinkKind.Drones;

        private string Name => Down ? Link.To : Link.From;

        public object?[] Values() =>
        [
            IsQueen ? "queen" : "colony", Down ? Link.ToId : Link.FromId, Name, Steps, Word(Link.Link), Down ? Link.From : Link.To, Link.Sure is { } sure ? Word(sure) : null, Known?.Yard, Known?.Spot,
            Colony, Known?.Began, Known?.Ended, Known?.Fate, IsLiving, Known?.TakenOut, Link.Entries.Concat(Known?.Entries ?? []).Select(entry => entry.Value).Distinct().ToArray(),
        ];

        public void Write(Stream utf8)
        {
            var kept = Down ? Downwards : Upwards;
            if (!kept.TryGetValue(Link, out var written) || !ReferenceEquals(written.Known, Known)) kept.AddOrUpdate(Link, written = Written.Of(this));
            utf8.Write(written.Before);
            Span<byte> steps = stackalloc byte[11];
            System.Buffers.Text.Utf8Formatter.TryFormat(Steps, steps, out var length);
            utf8.Write(steps[..length]);
            utf8.Write(written.After);
        }

        private static string Word<TEnum>(TEnum word) where TEnum : struct, Enum => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(word.ToString());
    }

    /// <summary>A row as JSON, before and after the number of steps.</summary>
    private sealed record Written(RegisterRow? Known, byte[] Before, byte[] After)
    {
        private static readonly int Steps = Array.FindIndex(Columns, column => column.Name == "steps");

        public static Written Of(Found found)
        {
            var values = found.Values();
            var (before, after) = (Object(values, 0, Steps), Object(values, Steps + 1, values.Length));
            // Both are whole objects: of the one the last brace is taken, of the other the first.
            after[0] = (byte)',';
            return new Written(found.Known, [.. before.AsSpan(0, before.Length - 1), .. ",\"steps\":"u8], after);
        }

        private static byte[] Object(object?[] values, int from, int to)
        {
            using var buffer = new MemoryStream();
            using (var json = new System.Text.Json.Utf8JsonWriter(buffer, AnswerJson.Options))
            {
                json.WriteStartObject();
                for (var i = from; i < to; i++)
                {
                    json.WritePropertyName(Columns[i].Name);
                    AnswerJson.WriteValue(json, values[i]);
                }

                json.WriteEndObject();
            }

            return buffer.ToArray();
        }
    }
}
