using System.Reflection;
using System.Runtime.CompilerServices;
using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Ledger.Tables;
using ColonyLineage.Projections;
using ColonyLineage.Projections.DoseCompleteness;
using ColonyLineage.Projections.MiteWatch;
using ColonyLineage.Projections.QueensByAge;

namespace ColonyLineage.Server.Answers;

/// <summary>Answers questions by name, for addresses and the command line.</summary>
public sealed class Answering(OutfitLedger ledger, ReadCache cache, Clock clock)
{
    private readonly RowsOverLedger _rows = new(ledger, cache, clock);

    // A row that is still the same object has the same JSON.
    private static readonly ConditionalWeakTable<QueenRow, ReadyQueen> Ready = [];

    private static readonly MethodInfo Plain = typeof(Answering).GetMethod(nameof(PlainAsync), BindingFlags.Instance | BindingFlags.NonPublic)!;

    /// <summary>The question that lists entries themselves, so that any answer can be audited.</summary>
    public const string Entries = "entries";

    /// <summary>The history of one subject takes the two clocks and nothing else.</summary>
    internal const string History = "history";

    /// <summary>The names of all questions.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Questions.All.Select(question => question.Name), .. Views.Names, Entries];

    /// <summary>The parameters that a question takes, clocks included; by the names that addresses and the command line use.</summary>
    public static IReadOnlyList<string> ParametersOf(string question) =>
    [
        .. question == History ? Array.Empty<string>() : Views.PartsOf(question),
        "as-of", "known-at",
        .. question == History ? Array.Empty<string>() : ["count-by"],
        .. question switch
        {
            "queens-by-age" => ["seasons-back", "of", "few", "sure"],
            "dose-completeness" => ["course", "state"],
            "conflicts" => ["conflict", "state"],
            "lineage" => ["descendants-of", "ancestors-of", "contacts-of", "since", "how", "living"],
            "mite-watch" => ["pooled", "rounds", "groups"],
            _ when Views.Names.Contains(question) => Views.ParametersOf(question),
            Entries => ["kind", "act"],
            _ => Array.Empty<string>(),
        },
    ];

    /// <summary>The answer.</summary>
    /// <exception cref="RefusedException">What is asked makes no sense, or names what the books do not know.</exception>
    public async Task<Answer> AnswerAsync(string question, Asked asked, CancellationToken cancel)
    {
        Check(question, asked);
        var answer = await RowsAsync(question, asked, cancel);
        return asked.CountBy is { } columns ? answer.CountBy(columns) : answer;
    }

    private async Task<Answer> RowsAsync(string question, Asked asked, CancellationToken cancel)
    {
        return question switch
        {
            _ when Views.Names.Contains(question) => await new Views(_rows).AnswerAsync(question, asked, cancel),
            Entries => await new EntryList(ledger).AnswerAsync(asked, cancel),
            "queens-by-age" when Filters(asked) => await QueensAsync(asked, cancel),
            "dose-completeness" when Filters(asked) || asked.Ask.Season is not null => await DosesAsync(asked, cancel),
            "mite-watch" when asked.Rounds || asked.Pooled || asked.Groups || asked.Ask.Season is not null => await WashesAsync(asked, cancel),
            "conflicts" when Filters(asked) => await ConflictsAsync(asked, cancel),
            "lineage" when asked.DescendantsOf is not null || asked.AncestorsOf is not null => await new Kin(ledger, cache).AnswerAsync(asked, cancel),
            "lineage" when asked.ContactsOf is not null => await new Kin(ledger, cache).ContactsAsync(asked, cancel),
            _ => await (Task<Answer>)Plain.MakeGenericMethod(RowOf(Find(question))).Invoke(this, [Find(question), asked.Ask, cancel])!,
        };
    }

    /// <summary>
    /// Writes the rows as a JSON array by the quick way, where there is one: straight from the read table, or out of what is kept
    /// ready. False where the answer has to be worked out.
    /// </summary>
    public async Task<bool> TryWriteRowsAsync(string question, Asked asked, Stream utf8, CancellationToken cancel)
    {
        Check(question, asked);
        if (question == Entries || Views.Names.Contains(question) || asked.Ask.LooksBack) return false;
        if (!Filters(asked) && !(question is "dose-completeness" or "mite-watch" && asked.Ask.Season is not null))
        {
            await ledger.WriteJsonAsync(Find(question), asked.Ask, utf8, cancel);
            return true;
        }

        if (asked.CountBy is not null) return false;
        if (question == "lineage" && (asked.DescendantsOf ?? asked.AncestorsOf) is not null)
        {
            await new Kin(ledger, cache).WriteAsync(asked, utf8, cancel);
            return true;
        }

        if (question != "queens-by-age") return false;
        utf8.WriteByte((byte)'[');
        var first = true;
        foreach (var (queen, answers) in await QueensReadyAsync(asked, cancel))
        {
            if (!first) utf8.WriteByte((byte)',');
            first = false;
            // The row without its last brace, then the one column that depends on what was asked.
            utf8.Write(queen.Json.AsSpan(0, queen.Json.Length - 1));
            utf8.Write(answers switch { "certain" => ",\"answers\":\"certain\"}"u8, "possible" => ",\"answers\":\"possible\"}"u8, _ => ",\"answers\":\"unknown\"}"u8 });
        }

        utf8.WriteByte((byte)']');
        return true;
    }

    /// <summary>Something is asked for beyond the part of the outfit and the clocks.</summary>
    private static bool Filters(Asked asked) => asked with { Ask = Ask.Everything } != new Asked();

    /// <summary>The question of a name.</summary>
    public static IQuestion Find(string question) => Questions.All.FirstOrDefault(known => known.Name == question)
        ?? throw Refuse(Refusals.NotFound, "question", $"There is no question '{question}'. Take one of {string.Join(", ", Names)}.");

    internal static void Check(string question, Asked asked)
    {
        if (question != Entries && !Views.Names.Contains(question)) Find(question);
        var takes = ParametersOf(question);
        foreach (var (name, _) in asked.Given())
            if (!takes.Contains(name))
                throw Refuse(ServerRefusals.UnknownParameter, name, $"The question {question} does not take '{name}'. It takes {string.Join(", ", takes)}.");
        if (asked.SeasonsBack is < 0 or > 100) throw Refuse(Refusals.OutOfRange, "seasons-back", "From 0 (born this season or before) to 100.");
        string[] states = question switch { "conflicts" => ["open", "settled"], "owed-work" => ["coming", "now", "late", "putOff"], _ => ["owed", "complete", "too-many"] };
        if (asked.State is { } state && !states.Contains(state)) throw Refuse(Refusals.UnknownWord, "state", $"Take one of {string.Join(", ", states)}.");
        if (asked.Sure is not (null or "certain" or "possible" or "unknown")) throw Refuse(Refusals.UnknownWord, "sure", "Take one of certain, possible, unknown.");
        if (new[] { asked.DescendantsOf, asked.AncestorsOf, asked.ContactsOf }.Count(given => given is not null) > 1)
            throw Refuse(ServerRefusals.Malformed, "descendants-of", "Ask for one of descendants-of, ancestors-of and contacts-of at a time.");
        if (asked.ContactsOf is not null != asked.Since is not null)
            throw Refuse(Refusals.Missing, asked.Since is null ? "since" : "contacts-of", "Contacts are asked for with both: contacts-of=COLONY and since=DAY.");
        if (asked.Living && question == "lineage" && asked.DescendantsOf is null && asked.AncestorsOf is null)
            throw Refuse(Refusals.Missing, "descendants-of", "'living' goes with descendants-of or ancestors-of.");
    }

    internal static RefusedException Refuse(string name, string field, string message) => new(new Refusal(name, field, message));

    private static Type RowOf(IQuestion question)
    {
        for (var type = question.GetType(); ; type = type.BaseType!)
            if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Question<>)) return type.GetGenericArguments()[0];
    }

    private async Task<Answer> PlainAsync<TRow>(Question<TRow> question, Ask ask, CancellationToken cancel) where TRow : class, IRow =>
        Answer.Of(await ledger.RowsAsync(question, ask, cancel));

    /// <summary>
    /// The queens that the filter of the desk's page lets through, with how surely each answers in the column <c>answers</c>: who may be younger
    /// than asked for is 'possible', whose birth nobody knows 'unknown'.
    /// </summary>
    private async Task<Answer> QueensAsync(Asked asked, CancellationToken cancel)
    {
        var added = new AnswerColumn("answers", ColumnType.Text);
        if (!asked.Ask.LooksBack) return Answer.Of((await QueensReadyAsync(asked, cancel)).Select(queen => (queen.Queen.Row, (object?)queen.Answers)), added);
        var rows = await ledger.RowsAsync(Questions.QueensByAge, asked.Ask, cancel);
        return Answer.Of((await ThatAnswerAsync(rows, row => row, asked, cancel)).Select(queen => (queen.One, (object?)queen.Answers)), added);
    }

    private async Task<IEnumerable<(ReadyQueen Queen, string Answers)>> QueensReadyAsync(Asked asked, CancellationToken cancel)
    {
        var (question, ask) = (Questions.QueensByAge, asked.Ask);
        var rows = await cache.RowsAsync(question, cancel);
        IEnumerable<ReadyQueen> ready = cache.Made("queens ready", () => rows.Select(row => Ready.GetValue(row, ReadyQueen.Of)).ToList(), rows);
        if (ask != Ask.Everything) ready = ready.Where(queen => ask.Wants(queen.Row, question.Columns));
        return await ThatAnswerAsync(ready, queen => queen.Row, asked, cancel);
    }

    private async Task<IEnumerable<(T One, string Answers)>> ThatAnswerAsync<T>(IEnumerable<T> all, Func<T, QueenRow> rowOf, Asked asked, CancellationToken cancel)
    {
        var filter = new QueenFilter(asked.SeasonsBack, asked.Of, asked.Few, asked.Sure);
        var season = Season.Of(Day(asked.Ask), (await OutfitAsync(asked.Ask, cancel)).SeasonStartMonth);
        return from one in all
               let answers = filter.Answers(rowOf(one), season)
               where answers is not null && (filter.Sure is null || filter.Sure == answers)
               select (one, answers);
    }

    /// <summary>Doses; of one season with the colonies of a begun yard that had nothing.</summary>
    private async Task<Answer> DosesAsync(Asked asked, CancellationToken cancel)
    {
        var (question, ask) = (Questions.DoseCompleteness, asked.Ask);
        // The yard as it stands decides what is owed, so what is asked of it is picked out afterwards.
        var all = new Ask { AsOf = ask.AsOf, KnownAt = ask.KnownAt };
        var rows = await ledger.RowsAsync(question, all with { Season = ask.Season }, cancel);
        if (ask.Season is { } season)
        {
            var living = await ledger.RowsAsync(Questions.QueensByAge, all, cancel);
            var register = (await ledger.RowsAsync(Questions.Register, all, cancel)).Where(row => row.Kind == SubjectKind.Colony).ToDictionary(row => row.Id);
            var outfit = await OutfitAsync(ask, cancel);
            rows = DoseCompletenessQuestion.WholeYards(rows, living, register, season, outfit.SeasonStartMonth);
        }

        return Answer.Of(new DoseFilter(asked.Course, asked.State, Ended: true).Apply(rows.Where(row => ask.Wants(row, question.Columns))));
    }

    /// <summary>Washes one by one, in rounds or pooled. A wash is of the season of its day, a round of the one in which it ended, whole.</summary>
    private async Task<Answer> WashesAsync(Asked asked, CancellationToken cancel)
    {
        var washes = await ledger.RowsAsync(Questions.MiteWatch, asked.Ask, cancel);
        var outfit = await OutfitAsync(asked.Ask, cancel);
        if (asked.Rounds) return Answer.Of(Rounds.Of(washes, outfit).Where(round => InSeason(round.To)));
        var ofSeason = washes.Where(wash => InSeason(wash.On));
        if (asked.Groups) return Answer.OfGroups(MiteWatchQuestion.Grouped(ofSeason));
        return asked.Pooled ? Answer.OfPools(MiteWatchQuestion.Pooled(ofSeason)) : Answer.Of(ofSeason);

        bool InSeason(DateOnly day) => asked.Ask.Season is null || Season.Of(day, outfit.SeasonStartMonth) == asked.Ask.Season;
    }

    private async Task<Answer> ConflictsAsync(Asked asked, CancellationToken cancel)
    {
        var rows = await ledger.RowsAsync(Questions.Conflicts, asked.Ask, cancel);
        return Answer.Of(rows.Where(row => (asked.Conflict is null || row.Conflict == asked.Conflict) && (asked.State is null || row.Settled == (asked.State == "settled"))));
    }

    private async Task<Projections.Cards.OutfitCard> OutfitAsync(Ask ask, CancellationToken cancel) => ask.LooksBack
        ? (await ledger.WholeAsync(ask.AsOf, ask.KnownAt, cancel)).Books.Outfit
        : await cache.OutfitAsync(cancel);

    /// <summary>The day that 'seasons back' is reckoned from: the day looked back to, else today.</summary>
    private DateOnly Day(Ask ask) => Gather.Day(_rows, ask);

    /// <summary>A queen's row with its JSON.</summary>
    private sealed record ReadyQueen(QueenRow Row, byte[] Json)
    {
        public static ReadyQueen Of(QueenRow row)
        {
            var json = RowJson.Array([row], Questions.QueensByAge.Columns);
            // Without the brackets of the array.
            return new ReadyQueen(row, json[1..^1]);
        }
    }
}
