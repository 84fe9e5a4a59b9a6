using ColonyLineage.Projections;

namespace ColonyLineage.Server.Answers;

/// <summary>What somebody asks of a question, with what only some questions take.</summary>
public sealed record Asked
{
    /// <summary>The part of the outfit and the clocks.</summary>
    public Ask Ask { get; init; } = Ask.Everything;

    /// <summary>Of <c>queens-by-age</c>: queens born this many seasons back, or more.</summary>
    public int? SeasonsBack { get; init; }

    /// <summary>Of <c>queens-by-age</c>: colonies whose bees are few.</summary>
    public bool Few { get; init; }

    /// <summary>Of <c>queens-by-age</c>: <c>certain</c>, <c>possible</c> or <c>unknown</c>.</summary>
    public string? Sure { get; init; }

    /// <summary>Of <c>queens-by-age</c>: born in this season, certainly or possibly.</summary>
    public int? Of { get; init; }

    /// <summary>Of <c>dose-completeness</c>: one course by its name.</summary>
    public string? Course { get; init; }

    /// <summary>Of <c>dose-completeness</c>: <c>owed</c>, <c>complete</c> or <c>too-many</c>. Of <c>conflicts</c>: <c>open</c> or <c>settled</c>.</summary>
    public string? State { get; init; }

    /// <summary>Of <c>conflicts</c>: one kind by its name.</summary>
    public string? Conflict { get; init; }

    /// <summary>Of <c>lineage</c>: all that came of this queen or colony, by name or id.</summary>
    public string? DescendantsOf { get; init; }

    /// <summary>Of <c>lineage</c>: all that this queen or colony came of.</summary>
    public string? AncestorsOf { get; init; }

    /// <summary>Of <c>lineage</c>: every colony that shared frames, a yard or a parent with this one since <see cref="Since"/>.</summary>
    public string? ContactsOf { get; init; }

    /// <summary>The first day of the contacts asked for.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>Of contacts: only those of one way, for instance <c>same yard</c>.</summary>
    public string? How { get; init; }

    /// <summary>Of descendants and ancestors: only those that live.</summary>
    public bool Living { get; init; }

    /// <summary>Of <c>entries</c>: one kind, with or without its version.</summary>
    public string? Kind { get; init; }

    /// <summary>Of <c>entries</c>: one act.</summary>
    public string? Act { get; init; }

    /// <summary>Of <c>mite-watch</c>: the washes pooled by yard and by first, second, third wash.</summary>
    public bool Pooled { get; init; }

    /// <summary>Of <c>mite-watch</c>: what the washes of each round say of a yard.</summary>
    public bool Rounds { get; init; }

    /// <summary>Of <c>mite-watch</c>: the washes by what the colonies were given, and by first, second, third wash.</summary>
    public bool Groups { get; init; }

    /// <summary>Of <c>owed-work</c> and <c>load-list</c>: for this day, which may be to come; the yards that are planned for it, where some are.</summary>
    public DateOnly? On { get; init; }

    /// <summary>Of <c>owed-work</c> and <c>load-list</c>: the yards of this planned round, in its order.</summary>
    public string? Round { get; init; }

    /// <summary>Of <c>open-work</c> and <c>owed-work</c>: one kind of work by its name.</summary>
    public string? Work { get; init; }

    /// <summary>Of <c>wintering</c>: <c>winter</c>, <c>summer</c> or <c>year</c>.</summary>
    public string? Period { get; init; }

    /// <summary>Of <c>wintering</c> and <c>paradox</c>: the calendar year in which the winter starts.</summary>
    public int? Winter { get; init; }

    /// <summary>Of <c>wintering</c> and <c>paradox</c>: what the colonies of a row have in common. Of <c>line-comparison</c>: <c>line</c>, <c>mother</c> or <c>maker</c>.</summary>
    public string? By { get; init; }

    /// <summary>Of <c>line-comparison</c> and <c>line-pairs</c>: one trait, for instance <c>honey</c>.</summary>
    public string? Trait { get; init; }

    /// <summary>Of <c>line-comparison</c> by mother: predictions with mothers related as the pedigree has it.</summary>
    public bool Pedigree { get; init; }

    /// <summary>Of <c>relationship</c>: the other queen, by name or id; all that live where none is named.</summary>
    public string? With { get; init; }

    /// <summary>Of <c>planned-mating</c>: drone-producing queens by name or id, divided by <c>;</c>; none: in the open.</summary>
    public string? Drones { get; init; }

    /// <summary>Of <c>planned-mating</c>: effective number of drones, 1 to 60.</summary>
    public decimal? Effective { get; init; }

    /// <summary>Of <c>planned-mating</c>: effective number of sex alleles, 2 to 100.</summary>
    public decimal? Alleles { get; init; }

    /// <summary>Of <c>how-long</c>: days from the <c>beginning</c> of colonies of known age, or of all from the day on which they came into the <c>books</c>.</summary>
    public string? Counted { get; init; }

    /// <summary>How many rows there are of each combination of these columns, with commas between them, instead of the rows.</summary>
    public string? CountBy { get; init; }

    /// <summary>What is given, by the names that addresses and the command line use; without the clocks' own rows.</summary>
    public IEnumerable<(string Name, object Value)> Given()
    {
        (string, object?)[] all =
        [
            ("yard", Ask.Yard), ("spot", Ask.Spot), ("colony", Ask.Colony), ("queen", Ask.Queen), ("season", Ask.Season), ("as-of", Ask.AsOf), ("known-at", Ask.KnownAt),
            ("seasons-back", SeasonsBack), ("few", Few ? true : null), ("of", Of), ("sure", Sure), ("course", Course), ("state", State), ("conflict", Conflict), ("descendants-of", DescendantsOf), ("ancestors-of", AncestorsOf),
            ("contacts-of", ContactsOf), ("since", Since), ("how", How), ("living", Living ? true : null), ("kind", Kind), ("act", Act),
            ("pooled", Pooled ? true : null), ("rounds", Rounds ? true : null), ("groups", Groups ? true : null), ("on", On), ("round", Round), ("work", Work), ("period", Period), ("winter", Winter), ("by", By), ("trait", Trait), ("pedigree", Pedigree ? true : null), ("with", With), ("drones", Drones), ("effective", Effective), ("alleles", Alleles), ("counted", Counted), ("count-by", CountBy),
        ];
        return from given in all where given.Item2 is not null select (given.Item1, given.Item2);
    }
}
