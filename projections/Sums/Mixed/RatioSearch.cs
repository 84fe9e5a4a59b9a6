using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>Finds the ratios of variances, none below zero, by Newton's steps with the best curvature that the model has; where that curves downwards, with the next.</summary>
internal static class RatioSearch
{
    private const int MostSteps = 200;

    /// <summary>A ratio this large has no error left to be compared with.</summary>
    private const double Largest = 1e10;

    /// <summary>A curvature of less than this part of the largest is none.</summary>
    private const double Flat = 1e-11;

    public static (double[] Ratios, bool Converged) From(ILikelihood model, double[] start)
    {
        var (at, value) = (start, model.Criterion(start));
        // The likelihood can have two tops, one of them at zero: begin at the better of a few places.
        foreach (var other in new[] { 0.0, .05, 10 })
            if (model.Criterion([.. start.Select(_ => other)]) is var there && there < value) (at, value) = ([.. start.Select(_ => other)], there);
        for (var step = 0; step < MostSteps; step++)
        {
            var state = model.At(at);
            // Nothing is left to explain.
            if (state.Residual <= 0) return (at, double.IsNegativeInfinity(value) && model.Criterion([.. at.Select(_ => 0.0)]) == value);
            var slope = state.Slope();
            var free = Enumerable.Range(0, at.Length).Where(k => at[k] > 0 || slope[k] < 0).ToArray();
            if (free.All(k => Math.Abs(slope[k]) * Math.Max(at[k], 1e-6) < 1e-11 * model.Freedom)) return (at, true);
            var move = Step(state, slope, free, at);
            if (Along(model, at, move, slope, value) is not var (next, lower) || at.Max() > Largest)
            {
                // No lower place can be told by what a double holds: this is it, unless it still slopes.
                return (at, free.All(k => Math.Abs(slope[k]) * Math.Max(at[k], 1e-6) < 1e-6 * model.Freedom));
            }

            (at, value) = (next, lower);
        }

        return (at, false);
    }

    private static Vector<double> Step(ISlopes state, Vector<double> slope, int[] free, double[] at)
    {
        // In units of the ratios themselves: beside a large one the bend along a small one would look flat.
        double[] unit = [.. free.Select(k => Math.Max(at[k], 1e-3))];
        var downhill = Vector<double>.Build.Dense(free.Length, i => -slope[free[i]] * unit[i]);
        foreach (var curvature in state.Curvatures())
        {
            var part = Matrix<double>.Build.Dense(free.Length, free.Length, (r, c) => curvature[free[r], free[c]] * unit[r] * unit[c]);
            var eigen = part.Evd(Symmetricity.Symmetric);
            var bends = eigen.EigenValues.Select(value => value.Real).ToArray();
            var least = Flat * bends.Max();
            // Where it is flat one way, as it is between two effects that are one and the same, no step is taken that way.
            if (bends.Max() is not > 0 || bends.Min() < -least) continue;
            var step = Vector<double>.Build.Dense(free.Length);
            for (var i = 0; i < bends.Length; i++)
                if (bends[i] > least) step += eigen.EigenVectors.Column(i) * (eigen.EigenVectors.Column(i) * downhill / bends[i]);
            var move = Vector<double>.Build.Dense(slope.Count);
            for (var i = 0; i < free.Length; i++) move[free[i]] = step[i] * unit[i];
            return move;
        }

        var plain = Vector<double>.Build.Dense(slope.Count);
        for (var i = 0; i < free.Length; i++) plain[free[i]] = downhill[i] / unit[i];
        return plain;
    }

    /// <summary>The longest of halved steps that leads lower, cut at zero.</summary>
    private static (double[] At, double Value)? Along(ILikelihood model, double[] at, Vector<double> move, Vector<double> slope, double value)
    {
        for (var (length, tries) = (1.0, 0); tries < 50; length /= 2, tries++)
        {
            double[] next = [.. at.Select((ratio, k) => Math.Max(0, ratio + (length * move[k])))];
            var expected = next.Select((ratio, k) => slope[k] * (ratio - at[k])).Sum();
            if (next.SequenceEqual(at) || expected >= 0) return null;
            var there = model.Criterion(next);
            if (there <= value + (1e-4 * expected)) return (next, there);
        }

        return null;
    }
}
