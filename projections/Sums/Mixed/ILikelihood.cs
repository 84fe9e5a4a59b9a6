using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>What the search for the ratios of variances needs of a model.</summary>
internal interface ILikelihood
{
    /// <summary>Records less terms of the fixed part.</summary>
    int Freedom { get; }

    /// <summary>-2 × the restricted log-likelihood, the error's variance taken out, without constants.</summary>
    double Criterion(IReadOnlyList<double> ratios);

    /// <summary>Its slopes there.</summary>
    ISlopes At(IReadOnlyList<double> ratios);
}

/// <summary>How the criterion moves with the ratios.</summary>
internal interface ISlopes
{
    /// <summary>The sum of squares that is left; 0 where all is explained.</summary>
    double Residual { get; }

    /// <summary>Along each ratio.</summary>
    Vector<double> Slope();

    /// <summary>Curvatures to be tried for a step, the best first.</summary>
    IEnumerable<Matrix<double>> Curvatures();
}
