using ColonyLineage.Desk;
using ColonyLineage.Projections;
using ColonyLineage.Projections.StoresAndFeed;

namespace ColonyLineage.Server.Answers;

/// <summary>Answers that depend on a day or on the whole outfit, so that no table holds them: put together from the rows of questions when they are asked.</summary>
internal sealed class Views(IRows rows)
{
    public static readonly IReadOnlyList<string> Names = ["owed-work", "load-list", "next-round", "winter-readiness", "readiness-truth", "treatment-record"];

    public static string[] ParametersOf(string view) => view switch
    {
        "owed-work" => ["on", "round", "work", "state"],
        "load-list" => ["on", "round"],
        "readiness-truth" => ["on"],
        "treatment-record" => ["course"],
        _ => [],
    };

    public async Task<Answer> AnswerAsync(string view, Asked asked, CancellationToken cancel) => view switch
    {
        "owed-work" => Answer.Of((await Gather.OwedAsync(rows, asked.Ask, asked.On, asked.Round, cancel, all: asked.State == "coming"))
            .Where(row => (asked.Work is null || row.Work == asked.Work) && (asked.State is null || System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(row.State.ToString()) == asked.State))),
        "load-list" => Answer.Of(await Gather.LoadAsync(rows, asked.Ask, asked.On, asked.Round, cancel)),
        "next-round" => Answer.Of(NextRound.Of((await rows.RowsAsync(Questions.StoresAndFeed, Gather.Clocks(asked.Ask), cancel)).Where(row => asked.Ask.Wants(row, Questions.StoresAndFeed.Columns)))),
        "winter-readiness" => Answer.Of((await Gather.ReadinessAsync(rows, asked.Ask, cancel)).Rows),
        "readiness-truth" => Answer.Of((await Gather.TruthAsync(rows, asked.Ask, asked.On, cancel)).Rows),
        "treatment-record" => Answer.Of(await Gather.TreatmentsAsync(rows, asked.Ask, asked.Course, cancel)),
        _ => throw new InvalidOperationException(view),
    };
}
