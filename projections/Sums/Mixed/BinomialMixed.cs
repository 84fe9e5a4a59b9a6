using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>So many of so many, in a group, with the fixed part's values.</summary>
public sealed record Share(int Group, int Hits, int Of, double[] Fixed);

/// <summary>What is predicted for a group, on the logit scale.</summary>
/// <param name="StandardError">By the curvature at the mode, the fixed terms taken as known.</param>
public sealed record GroupMode(double Mode, double StandardError);

/// <summary>
/// A logistic model with one random effect, by maximum likelihood; the effect is integrated out by adaptive Gauss–Hermite quadrature (Pinheiro and
/// Bates 1995, Journal of Computational and Graphical Statistics 4:12). One point is Laplace's approximation.
/// </summary>
public sealed record BinomialMixed(double Deviation, IReadOnlyList<FixedTerm> Fixed, double LogLikelihood, IReadOnlyList<GroupMode> Groups, bool Converged)
{
    /// <summary>A deviation beyond this on the logit scale, or a term, means that the likelihood runs away.</summary>
    private const double RunsAway = 15;

    /// <param name="shares">The records.</param>
    /// <param name="names">Names of the fixed part's columns.</param>
    /// <param name="points">Points of the quadrature, 1 to 100.</param>
    /// <exception cref="SeparatedException">Some combination of the fixed part tells all hits from all misses: there is no finite estimate.</exception>
    public static BinomialMixed Fit(IReadOnlyList<Share> shares, IReadOnlyList<string> names, int points = 25)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(points, 100);
        var groups = shares.Count == 0 ? 0 : shares.Max(share => share.Group) + 1;
        var quadrature = Quadrature(points);
        var of = Enumerable.Range(0, groups).Select(group => shares.Where(share => share.Group == group).ToArray()).ToArray();
        double Minus(Vector<double> at) => -of.Sum(group => LogLikelihoodOf(group, at, quadrature).Log);

        var start = Vector<double>.Build.Dense(names.Count + 1);
        start[names.Count] = .5;
        var (found, converged) = Descent.From(Minus, start, at =>
        {
            for (var i = 0; i < names.Count; i++)
                if (Math.Abs(at[i]) > RunsAway) throw new SeparatedException(names[i]);
            if (Math.Abs(at[^1]) > RunsAway) throw new SeparatedException("the groups");
        });
        found[names.Count] = Math.Abs(found[names.Count]);
        var curvature = Descent.Curvature(Minus, found);
        var covariance = Math.Abs(curvature.Determinant()) > 1e-300 ? curvature.Inverse() : null;
        return new BinomialMixed(
            found[names.Count],
            [.. names.Select((name, i) => new FixedTerm(name, found[i], covariance is { } known && known[i, i] > 0 ? Math.Sqrt(known[i, i]) : double.NaN))],
            -Minus(found) + shares.Sum(share => SpecialFunctions.BinomialLn(share.Of, share.Hits)),
            [.. of.Select(group => LogLikelihoodOf(group, found, quadrature)).Select(group => new GroupMode(group.Mode, group.Spread))],
            converged);
    }

    /// <summary>The likelihood of a group with its effect integrated out, around its mode.</summary>
    private static (double Log, double Mode, double Spread) LogLikelihoodOf(Share[] shares, Vector<double> at, (double Point, double LogWeight)[] quadrature)
    {
        var deviation = at[^1];
        double Joint(double z) => shares.Sum(share => LogChance(share, Linear(share, at) + (deviation * z))) - (z * z / 2);
        // Newton on z, the effect in its own deviations: the joint density has one top.
        double mode = 0, curvature = 1;
        for (var step = 0; step < 100; step++)
        {
            double slope = -mode;
            curvature = 1;
            foreach (var share in shares)
            {
                var chance = SpecialFunctions.Logistic(Linear(share, at) + (deviation * mode));
                slope += deviation * (share.Hits - (share.Of * chance));
                curvature += deviation * deviation * share.Of * chance * (1 - chance);
            }

            var move = slope / curvature;
            for (var halved = 0; halved < 30 && Joint(mode + move) < Joint(mode) - 1e-12; halved++) move /= 2;
            mode += move;
            if (Math.Abs(move) < 1e-13) break;
        }

        var spread = 1 / Math.Sqrt(curvature);
        var logs = quadrature.Select(node => node.LogWeight + (node.Point * node.Point / 2) + Joint(mode + (spread * node.Point))).ToArray();
        var top = logs.Max();
        return (top + Math.Log(logs.Sum(log => Math.Exp(log - top))) + Math.Log(spread), deviation * mode, Math.Abs(deviation) * spread);
    }

    private static double Linear(Share share, Vector<double> at)
    {
        double sum = 0;
        for (var i = 0; i < share.Fixed.Length; i++) sum += share.Fixed[i] * at[i];
        return sum;
    }

    /// <summary>Without the binomial coefficient.</summary>
    private static double LogChance(Share share, double logit) =>
        (share.Hits * logit) - (share.Of * (logit > 0 ? logit + Math.Log(1 + Math.Exp(-logit)) : Math.Log(1 + Math.Exp(logit))));

    /// <summary>Points and weights for the standard normal density (Golub and Welsch 1969, Mathematics of Computation 23:221).</summary>
    private static (double Point, double LogWeight)[] Quadrature(int points)
    {
        var jacobi = Matrix<double>.Build.Dense(points, points, (r, c) => Math.Abs(r - c) == 1 ? Math.Sqrt(Math.Max(r, c)) : 0);
        Evd<double> eigen = jacobi.Evd(Symmetricity.Symmetric);
        return [.. Enumerable.Range(0, points).Select(i => (eigen.EigenValues[i].Real, 2 * Math.Log(Math.Abs(eigen.EigenVectors[0, i]))))];
    }
}

/// <summary>All hits can be told from all misses by the model: the estimate lies at infinity.</summary>
public sealed class SeparatedException(string by)
    : Exception($"There is no finite estimate: {by} tells all that happened from all that did not. Leave the term out, or pool its groups.");
