namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>A mixed model at its estimates, by whichever way they were found.</summary>
public interface IFitted
{
    /// <summary>The error's variance.</summary>
    double Error { get; }

    /// <summary>Whether the search ended where the likelihood is level.</summary>
    bool Converged { get; }

    /// <summary>The columns of the fixed part, those that cannot be told apart among them.</summary>
    IReadOnlyList<string> Columns { get; }

    /// <summary>Columns of the fixed part that cannot be told from its groups and the columns before them.</summary>
    IReadOnlyList<string> Confounded { get; }

    /// <summary>-2 × the restricted log-likelihood, constants included.</summary>
    double RemlCriterion { get; }

    /// <summary>The variance of an effect.</summary>
    double Variance(int effect);

    /// <summary>A combination of the further columns, by Kenward and Roger where the error was estimated; null where a column with a weight cannot be told apart from the rest.</summary>
    Contrast? Combine(IReadOnlyList<double> weights);

    /// <summary>The variances, the error's last.</summary>
    IReadOnlyList<Component> Components();

    /// <summary>The fixed terms: the groups' means at zero of every further column, then those columns that can be told apart.</summary>
    IReadOnlyList<FixedTerm> Fixed();

    /// <summary>What is predicted for the levels of an effect.</summary>
    IReadOnlyList<Predicted> Predictions(int effect);
}
