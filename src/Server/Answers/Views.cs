using ColonyLineage.Desk;
using ColonyLineage.Projections;
using ColonyLineage.Projections.OwedWork;
using ColonyLineage.Projections.StoresAndFeed;

namespace ColonyLineage.Server.Answers;

/// <summary>Answers that depend on a day or on the whole outfit, so that no table holds them: put together from the rows of questions when they are asked.</summary>
internal sealed class Views(IRows rows)
{
    public static readonly IReadOnlyList<string> Names = ["owed-work", "load-list", "next-round"];

    public static string[] ParametersOf(string view) => view switch
    {
        "owed-work" => ["on", "round", "work", "state"],
        "load-list" => ["on", "round"],
        _ => [],
    };

    public async Task<Answer> AnswerAsync(string view, Asked asked, CancellationToken cancel) => view switch
    {
        "owed-work" => Answer.Of(await OwedAsync(asked, cancel)),
        "load-list" => Answer.Of(await Gather.LoadAsync(rows, asked.Ask, asked.On, asked.Round, cancel)),
        "next-round" => Answer.Of(NextRound.Of((await rows.RowsAsync(Questions.StoresAndFeed, Gather.Clocks(asked.Ask), cancel)).Where(row => asked.Ask.Wants(row, Questions.StoresAndFeed.Columns)))),
        _ => throw new InvalidOperationException(view),
    };

    /// <summary>Owed work by all that was asked of it.</summary>
    public async Task<IEnumerable<OwedRow>> OwedAsync(Asked asked, CancellationToken cancel) =>
        (await Gather.OwedAsync(rows, asked.Ask, asked.On, asked.Round, cancel, all: asked.State == "coming"))
            .Where(row => (asked.Work is null || row.Work == asked.Work) && (asked.State is null || OwedWords.Name(row.State) == asked.State));
}
