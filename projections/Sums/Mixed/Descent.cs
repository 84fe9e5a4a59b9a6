using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// Finds where a function of a few numbers is lowest, by Newton's steps with slopes and curvatures by differences, and a step that is halved until it leads lower. A curvature is kept as
/// long as steps with it grow shorter fast: it costs the square of what a slope does.
/// </summary>
internal static class Descent
{
    private const int MostSteps = 200;

    /// <param name="check">Called with every place it comes to: throws where it runs away.</param>
    /// <param name="within">So short a step is the last.</param>
    /// <param name="gain">So is one that leads no lower than by this: where it is all but flat, short steps never come.</param>
    /// <param name="apart">How far apart the places are whose differences are taken; for slopes a tenth of it.</param>
    public static (Vector<double> At, bool Converged) From(
        Func<Vector<double>, double> of, Vector<double> start, Action<Vector<double>> check, double within = 1e-8, double gain = 0, double apart = 1e-4)
    {
        var (at, value) = (start, of(start));
        Matrix<double>? curvature = null;
        var last = double.PositiveInfinity;
        for (var step = 0; step < MostSteps; step++)
        {
            var slope = Slope(of, at, apart / 10);
            var kept = curvature is not null;
            curvature ??= Upwards(Curvature(of, at, apart));
            var move = -curvature.Solve(slope);
            var next = at + move;
            var there = of(next);
            if (kept && !(there <= value))
            {
                curvature = null;
                continue;
            }

            for (var halved = 0; halved < 40 && !(there <= value); halved++)
            {
                move /= 2;
                next = at + move;
                there = of(next);
            }

            if (!(there <= value)) return (at, slope.AbsoluteMaximum() < 1e-4);
            var (lower, length) = (value - there, move.AbsoluteMaximum());
            (at, value) = (next, there);
            check(at);
            if (length < within || lower < gain) return (at, true);
            if (length > last / 4) curvature = null;
            last = length;
        }

        return (at, false);
    }

    /// <summary>The second differences.</summary>
    public static Matrix<double> Curvature(Func<Vector<double>, double> of, Vector<double> at, double apart = 1e-4)
    {
        var here = of(at);
        var all = Matrix<double>.Build.Dense(at.Count, at.Count);
        double Beside(int i, double one, int j, double other) => of(Moved(Moved(at, i, one), j, other));
        for (var i = 0; i < at.Count; i++)
            for (var j = i; j < at.Count; j++)
                all[i, j] = all[j, i] = i == j
                    ? (of(Moved(at, i, apart)) - (2 * here) + of(Moved(at, i, -apart))) / (apart * apart)
                    : (Beside(i, apart, j, apart) - Beside(i, apart, j, -apart) - Beside(i, -apart, j, apart) + Beside(i, -apart, j, -apart)) / (4 * apart * apart);
        return all;
    }

    private static Matrix<double> Upwards(Matrix<double> curvature)
    {
        var least = curvature.Evd(Symmetricity.Symmetric).EigenValues.Select(eigen => eigen.Real).Min();
        return least < 1e-6 ? curvature + (Matrix<double>.Build.DenseIdentity(curvature.RowCount) * (1e-3 - least)) : curvature;
    }

    private static Vector<double> Slope(Func<Vector<double>, double> of, Vector<double> at, double apart) =>
        Vector<double>.Build.Dense(at.Count, i => (of(Moved(at, i, apart)) - of(Moved(at, i, -apart))) / (2 * apart));

    private static Vector<double> Moved(Vector<double> at, int along, double by)
    {
        var moved = at.Clone();
        moved[along] += by;
        return moved;
    }
}
