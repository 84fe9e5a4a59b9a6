using ColonyLineage.Desk;
using ColonyLineage.Projections;
using ColonyLineage.Projections.OwedWork;
using ColonyLineage.Projections.StoresAndFeed;

namespace ColonyLineage.Server.Answers;

/// <summary>Answers that depend on a day or on the whole outfit, so that no table holds them: put together from the rows of questions when they are asked.</summary>
internal sealed class Views(IRows rows)
{
    public static readonly IReadOnlyList<string> Names =
    [
        "owed-work", "load-list", "next-round", "winter-readiness", "readiness-truth", "treatment-record", "wintering", "paradox", "how-long", "queens-last", "efficacy", "mite-forecast",
        "line-comparison", "line-pairs", "inbreeding", "relationship", "planned-mating",
    ];

    public static string[] ParametersOf(string view) => view switch
    {
        "owed-work" => ["on", "round", "work", "state"],
        "load-list" => ["on", "round"],
        "readiness-truth" => ["on"],
        "treatment-record" => ["course"],
        "wintering" => ["period", "winter", "by"],
        "paradox" => ["winter", "by"],
        "how-long" => ["counted"],
        "line-comparison" => ["trait", "by", "pedigree", "living"],
        "line-pairs" => ["trait", "by", "pedigree"],
        "relationship" => ["with"],
        "planned-mating" => ["drones", "effective", "alleles"],
        _ => [],
    };

    /// <summary>Which parts of the outfit a view can be asked for: what would change nothing is refused.</summary>
    public static string[] PartsOf(string view) => view switch
    {
        "wintering" => ["yard"],
        "paradox" => [],
        "how-long" or "queens-last" => ["yard", "spot", "colony", "queen"],
        "efficacy" or "mite-forecast" => ["yard", "season"],
        "line-comparison" or "line-pairs" => ["season"],
        "inbreeding" or "relationship" or "planned-mating" => ["queen"],
        _ => ["yard", "spot", "colony", "queen", "season"],
    };

    public async Task<Answer> AnswerAsync(string view, Asked asked, CancellationToken cancel) => view switch
    {
        "owed-work" => Answer.Of(await OwedAsync(asked, cancel)),
        "load-list" => Answer.Of(await Gather.LoadAsync(rows, asked.Ask, asked.On, asked.Round, cancel)),
        "next-round" => Answer.Of(NextRound.Of((await rows.RowsAsync(Questions.StoresAndFeed, Gather.Clocks(asked.Ask), cancel)).Where(row => asked.Ask.Wants(row, Questions.StoresAndFeed.Columns)))),
        "winter-readiness" => Answer.Of((await Gather.ReadinessAsync(rows, asked.Ask, cancel)).Rows),
        "readiness-truth" => Answer.Of((await Gather.TruthAsync(rows, asked.Ask, asked.On, cancel)).Rows),
        "treatment-record" => Answer.Of(await Gather.TreatmentsAsync(rows, asked.Ask, asked.Course, cancel)),
        "efficacy" => Answer.Of((await WashedYards.OfAsync(rows, asked.Ask, cancel)).Treatments(asked.Ask)),
        "mite-forecast" => Answer.Of((await WashedYards.OfAsync(rows, asked.Ask, cancel)).Forecasts(asked.Ask)),
        "wintering" or "paradox" or "how-long" or "queens-last" => await new LossViews(rows).AnswerAsync(view, asked, cancel),
        "line-comparison" or "line-pairs" => await new LineViews(rows).AnswerAsync(view, asked, cancel),
        "inbreeding" or "relationship" or "planned-mating" => await new KinViews(rows).AnswerAsync(view, asked, cancel),
        _ => throw new InvalidOperationException(view),
    };

    /// <summary>Owed work by all that was asked of it.</summary>
    public async Task<IEnumerable<OwedRow>> OwedAsync(Asked asked, CancellationToken cancel) =>
        (await Gather.OwedAsync(rows, asked.Ask, asked.On, asked.Round, cancel, all: asked.State == "coming"))
            .Where(row => (asked.Work is null || row.Work == asked.Work) && (asked.State is null || OwedWords.Name(row.State) == asked.State));
}
