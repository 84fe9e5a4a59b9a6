using Bogus;

namespace ColonyLineage.Command.Demo;

/// <summary>Everything that is left to chance, from one seed.</summary>
internal sealed class Chance
{
    private readonly Random _random;

    public Chance(int seed)
    {
        _random = new Random(seed);
        var names = new Faker("en") { Random = new Randomizer(seed) };
        // First names alone: a whole name might be somebody's.
        FirstNames = [.. Enumerable.Range(0, 600).Select(_ => names.Name.FirstName()).Where(name => name.Length < 7 && !Places.Lines.Contains(name)).Distinct().Take(120)];
    }

    /// <summary>First names, each once.</summary>
    public IReadOnlyList<string> FirstNames { get; }

    /// <summary>Whether something comes about that does so with this probability, 0 to 1.</summary>
    public bool Happens(double probability) => _random.NextDouble() < probability;

    /// <summary>A whole number between two, both included.</summary>
    public int Between(int least, int most) => _random.Next(least, most + 1);

    /// <summary>One of several.</summary>
    public T Of<T>(IReadOnlyList<T> several) => several[_random.Next(several.Count)];

    /// <summary>About a mean, by the normal distribution.</summary>
    public double About(double mean, double deviation) =>
        mean + (deviation * Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble()));

    /// <summary>About a mean, to the half, within bounds: how frames are counted.</summary>
    public decimal Halves(double mean, double deviation, double least, double most) =>
        (decimal)Math.Round(Math.Clamp(About(mean, deviation), least, most) * 2) / 2;

    /// <summary>
    /// A count of mites in a wash: negative binomial, for colonies of one yard differ more than chance in the cup alone would
    /// have it. Gamma-mixed Poisson with shape 2 (common practice, no source).
    /// </summary>
    public int Mites(double mean)
    {
        var rate = mean / 2 * -(Math.Log(1 - _random.NextDouble()) + Math.Log(1 - _random.NextDouble()));
        if (rate > 60) return (int)Math.Round(Math.Max(0, About(rate, Math.Sqrt(rate))));
        var (count, product, limit) = (0, _random.NextDouble(), Math.Exp(-rate));
        while (product > limit)
        {
            count++;
            product *= _random.NextDouble();
        }

        return count;
    }
}
