using MathNet.Numerics.LinearAlgebra;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>Finds where a function of a few numbers is lowest, by Newton's steps with slopes and curvatures by differences, and a step that is halved until it leads lower.</summary>
internal static class Descent
{
    private const int MostSteps = 200;

    /// <param name="check">Called with every place it comes to: throws where it runs away.</param>
    public static (Vector<double> At, bool Converged) From(Func<Vector<double>, double> of, Vector<double> start, Action<Vector<double>> check)
    {
        var (at, value) = (start, of(start));
        for (var step = 0; step < MostSteps; step++)
        {
            var slope = Differences(of, at);
            var curvature = Curvature(of, at);
            var least = curvature.Evd(Symmetricity.Symmetric).EigenValues.Select(eigen => eigen.Real).Min();
            if (least < 1e-6) curvature += Matrix<double>.Build.DenseIdentity(at.Count) * (1e-3 - least);
            var move = -curvature.Solve(slope);
            var next = at + move;
            var there = of(next);
            for (var halved = 0; halved < 40 && !(there <= value); halved++)
            {
                move /= 2;
                next = at + move;
                there = of(next);
            }

            if (!(there <= value)) return (at, slope.AbsoluteMaximum() < 1e-4);
            (at, value) = (next, there);
            check(at);
            if (move.AbsoluteMaximum() < 1e-8) return (at, true);
        }

        return (at, false);
    }

    /// <summary>The second differences.</summary>
    public static Matrix<double> Curvature(Func<Vector<double>, double> of, Vector<double> at)
    {
        const double Step = 1e-4;
        var here = of(at);
        var all = Matrix<double>.Build.Dense(at.Count, at.Count);
        for (var i = 0; i < at.Count; i++)
            for (var j = i; j < at.Count; j++)
                all[i, j] = all[j, i] = i == j
                    ? (of(Moved(at, i, Step)) - (2 * here) + of(Moved(at, i, -Step))) / (Step * Step)
                    : (of(Moved(Moved(at, i, Step), j, Step)) - of(Moved(Moved(at, i, Step), j, -Step)) - of(Moved(Moved(at, i, -Step), j, Step)) + of(Moved(Moved(at, i, -Step), j, -Step))) / (4 * Step * Step);
        return all;
    }

    private static Vector<double> Differences(Func<Vector<double>, double> of, Vector<double> at) =>
        Vector<double>.Build.Dense(at.Count, i => (of(Moved(at, i, 1e-5)) - of(Moved(at, i, -1e-5))) / 2e-5);

    private static Vector<double> Moved(Vector<double> at, int along, double by)
    {
        var moved = at.Clone();
        moved[along] += by;
        return moved;
    }
}
