using ColonyLineage.Projections.Sums.Sparse;

namespace ColonyLineage.Projections.Sums.Mixed;

/// <summary>
/// The same model as <see cref="MixedModel"/>, worked out from Henderson's mixed-model equations as a sparse system: for tens of thousands of levels, and for
/// queens of a pedigree, whose kinship is dense while its inverse is not. Slopes and steps by average information, Gilmour, Thompson and Cullis 1995, Biometrics
/// 51:1440 (from memory).
/// </summary>
/// <remarks>
/// The effects are taken as u = √λ v, so that the equations stay whole where a ratio λ is 0: [X'WX X'WZ√λ; √λZ'WX √λZ'WZ√λ + A⁻¹], W the weights of the records.
/// </remarks>
public sealed class SparseModel : ILikelihood
{
    private readonly double[] _cross;
    private readonly double[] _groupMeans;

    /// <param name="y">The records. At least one more than the fixed part has terms.</param>
    /// <exception cref="TooFewRecordsException">The fixed part takes all there is.</exception>
    public SparseModel(IReadOnlyList<double> y, FixedPart part, IReadOnlyList<RandomEffect> effects) : this(new SparseDesign(y.Count, part, effects), y, null)
    {
    }

    /// <param name="weights">How many times the error's variance goes into each record's; null for once.</param>
    /// <param name="kept">The columns that are known to be no combination of others; null where that is to be found out.</param>
    internal SparseModel(SparseDesign design, IReadOnlyList<double> y, double[]? weights, IReadOnlyList<int>? kept = null)
    {
        (Design, Y, Weights, _cross) = (design, y, weights, design.Cross(weights));
        var part = design.Part;
        var sizes = new int[part.Groups.Count];
        _groupMeans = new double[sizes.Length];
        for (var i = 0; i < y.Count; i++)
        {
            sizes[part.GroupOf[i]]++;
            _groupMeans[part.GroupOf[i]] += y[i];
        }

        for (var group = 0; group < sizes.Length; group++) _groupMeans[group] /= sizes[group];
        Centred = [.. y.Select((value, i) => value - _groupMeans[part.GroupOf[i]])];
        // Which columns fall out does not depend on the ratios: they are a combination of other fixed ones.
        Kept = kept ?? (part.Columns.Count == 0 ? [] : Independent());
        Freedom = y.Count - part.Groups.Count - Kept.Count;
        if (Freedom < 1) throw new TooFewRecordsException(y.Count, part.Groups.Count + Kept.Count);
    }

    /// <summary>Records less terms of the fixed part.</summary>
    public int Freedom { get; }

    internal SparseDesign Design { get; }

    internal IReadOnlyList<double> Y { get; }

    internal double[]? Weights { get; }

    /// <summary>Records less their group's mean: fewer digits are lost.</summary>
    internal IReadOnlyList<double> Centred { get; }

    /// <summary>Columns that are no combination of the groups and of columns before them.</summary>
    internal IReadOnlyList<int> Kept { get; }

    internal double GroupMean(int group) => _groupMeans[group];

    /// <summary>The variances that make the records likeliest, none below zero, and all that follows from them.</summary>
    public SparseFit Reml()
    {
        var (ratios, converged) = RatioSearch.From(this, [.. Design.Effects.Select(_ => 1.0)]);
        var state = new SparseState(this, ratios);
        return new SparseFit(this, state, ratios, state.Residual / Freedom, converged);
    }

    /// <summary>The same with variances that are given.</summary>
    /// <param name="variances">One for each effect, 0 or more.</param>
    public SparseFit At(IReadOnlyList<double> variances, double error)
    {
        double[] ratios = [.. variances.Select(variance => variance / error)];
        return new SparseFit(this, new SparseState(this, ratios), ratios, error, true);
    }

    double ILikelihood.Criterion(IReadOnlyList<double> ratios)
    {
        SparseRoot root;
        try
        {
            root = Root(ratios);
        }
        catch (ArithmeticException)
        {
            // So large that a double holds nothing of the error beside them.
            return double.PositiveInfinity;
        }

        var residual = SparseState.Left(this, root, ratios, Centred, out _);
        return residual <= 0 ? double.NegativeInfinity : (Freedom * Math.Log(residual)) + root.LogDeterminant;
    }

    ISlopes ILikelihood.At(IReadOnlyList<double> ratios) => new SparseState(this, ratios);

    internal SparseRoot Root(IReadOnlyList<double> ratios) => Design.Root(_cross, ratios);

    private List<int> Independent()
    {
        var root = Root([.. Design.Effects.Select(_ => 0.0)]);
        return [.. Enumerable.Range(0, Design.Part.Columns.Count).Where(column => !root.IsLeftOut(Design.Start(Design.Effects.Count) + column))];
    }

    /// <summary>The same without some of its effects.</summary>
    internal SparseModel Only(IReadOnlyList<int> effects) => new(new SparseDesign(Y.Count, Design.Part, [.. effects.Select(k => Design.Effects[k])]), Y, Weights);
}
