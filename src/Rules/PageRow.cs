using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>A counted sample of bees as it stands on the page; both counts are needed.</summary>
public sealed record WashCount
{
    internal static readonly WashCount Blank = new();

    /// <summary>Mites counted, 0 to 10,000.</summary>
    public int? Mites { get; init; }

    /// <summary>Bees in the sample, 1 to 5,000.</summary>
    public int? Bees { get; init; }

    /// <summary>The bees were measured by volume, not counted.</summary>
    public bool BeesEstimated { get; init; }

    /// <summary>How it was done.</summary>
    public WashMethod? Method { get; init; }
}

/// <summary>What a colony was fed.</summary>
public sealed record Feeding
{
    internal static readonly Feeding Blank = new();

    /// <summary>What it was given, 1 to 100 characters.</summary>
    public string? Feed { get; init; }

    /// <summary>How much.</summary>
    public Quantity? Amount { get; init; }
}

/// <summary>One row of a paper page: one spot. A row with nothing in it is passed over, since a page has a line for every spot.</summary>
public sealed record PageRow
{
    private static readonly Dose NoDose = new();

    /// <summary>The number of the spot.</summary>
    public string? Spot { get; init; }

    /// <summary>The colony, where the spot alone does not say which.</summary>
    public ColonyId? Colony { get; init; }

    /// <summary>What was seen.</summary>
    public Look? Look { get; init; }

    /// <summary>The wash.</summary>
    public WashCount? Wash { get; init; }

    /// <summary>It was found dead.</summary>
    public bool Dead { get; init; }

    /// <summary>The supposed cause of its death, at most 200 characters: a supposition, never a diagnosis.</summary>
    public string? Cause { get; init; }

    /// <summary>The dose it was given.</summary>
    public Dose? Dose { get; init; }

    /// <summary>The feed it was given.</summary>
    public Feeding? Feed { get; init; }

    /// <summary>Honey supers put on, 1 to 12.</summary>
    public int? SupersPutOn { get; init; }

    /// <summary>Anything else, at most 4,000 characters.</summary>
    public string? Note { get; init; }

    private bool HasLook => Look is not null && Look != Look.Blank;

    private bool HasWash => Wash is not null && Wash != WashCount.Blank;

    private bool HasDose => Dose is not null && Dose != NoDose;

    private bool HasFeed => Feed is not null && Feed != Feeding.Blank;

    internal bool IsBlank => !(HasLook || HasWash || HasDose || HasFeed || Dead || Cause is not null || SupersPutOn is not null || Note is not null);

    /// <summary>
    /// Adds what the row says: what was seen comes before what was done, and a colony found dead is dead before it is treated
    /// or fed, so that a row which says both shows as the contradiction that it is.
    /// </summary>
    internal void AddTo(Draft draft, VisitPage page, ColonyId colony, string at)
    {
        if (HasLook) Look!.AddTo(draft, page, colony, $"{at}look.");
        if (HasWash) AddWash(draft, page, colony, $"{at}wash.");
        if (Dead) draft.Add(new FoundDead { Id = page.IdOf("found dead", colony), On = page.On, Act = page.Act, Colony = colony, Cause = Cause }, at);
        else if (Cause is not null) draft.Refuse(Refusals.Missing, $"{at}dead", "A cause of death is given: say that the colony was found dead, or take the cause out.");
        if (HasDose) Dose!.AddTo(draft, page, colony, $"{at}dose.");
        if (HasFeed)
            draft.Add(new Fed { Id = page.IdOf("fed", colony), On = page.On, Act = page.Act, Colony = colony, Feed = Feed!.Feed!, Amount = Feed.Amount }, $"{at}feed.");
        if (SupersPutOn is { } supers)
            draft.Add(new Supered { Id = page.IdOf("supered", colony), On = page.On, Act = page.Act, Colony = colony, Supers = supers }, at, ("supers", $"{at}supersPutOn"));
        if (Note is not null)
            draft.Add(new Noted { Id = page.IdOf("noted", colony), On = page.On, Act = page.Act, Colony = colony, Text = Note }, at, ("text", $"{at}note"));
    }

    private void AddWash(Draft draft, VisitPage page, ColonyId colony, string at)
    {
        if (Wash is { Mites: { } mites, Bees: { } bees })
        {
            draft.Add(
                new Washed
                {
                    Id = page.IdOf("washed", colony), On = page.On, Act = page.Act, Colony = colony, Mites = mites, Bees = bees, BeesEstimated = Wash.BeesEstimated, Method = Wash.Method,
                },
                at);
            return;
        }

        if (Wash!.Mites is null) draft.Refuse(Refusals.Missing, $"{at}mites", "Say how many mites were counted; 0 where there were none.");
        if (Wash.Bees is null) draft.Refuse(Refusals.Missing, $"{at}bees", "Say how many bees were in the sample.");
    }
}
