using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>A dose as the person gave it to each colony. The label and the law of the place bind; nothing here proposes one.</summary>
public sealed record Dose
{
    /// <summary>The course that it belongs to, by the outfit's name for it; 1 to 60 characters.</summary>
    public string? Course { get; init; }

    /// <summary>The dose as a share of a full one: 1 full, 0.5 half; above 0, at most 4.</summary>
    public decimal? Doses { get; init; }

    /// <summary>The active substance, at most 200 characters.</summary>
    public string? Substance { get; init; }

    /// <summary>The product in the owner's words, at most 200 characters.</summary>
    public string? Product { get; init; }

    /// <summary>Lot number, at most 60 characters.</summary>
    public string? Lot { get; init; }

    /// <summary>How much was used for one colony.</summary>
    public Quantity? Amount { get; init; }

    /// <summary>Honey supers were on.</summary>
    public bool? SupersOn { get; init; }

    internal void AddTo(Draft draft, ActRequest request, ColonyId colony, string at)
    {
        if (Doses is not { } doses)
        {
            draft.Refuse(Refusals.Missing, $"{at}doses", "Say what share of a full dose it was: 1 for a full one, 0.5 for half.");
            return;
        }

        draft.Add(
            new Treated
            {
                Id = request.IdOf("treated", colony), On = request.On, Act = request.Act, Colony = colony, Course = Course!, Doses = doses,
                Substance = Substance, Product = Product, Lot = Lot, Amount = Amount, SupersOn = SupersOn,
            },
            at);
    }
}
