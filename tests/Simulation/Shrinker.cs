using ColonyLineage.Entries;

namespace ColonyLineage.Simulation;

/// <summary>Makes a failing history smaller: drops entries, many at a time and then one by one, while it still fails in the same way.</summary>
public static class Shrinker
{
    public static IReadOnlyList<Recorded> Shrink(IReadOnlyList<Recorded> history, Func<IReadOnlyList<Recorded>, bool> fails)
    {
        var kept = history.ToList();
        for (var size = Math.Max(1, kept.Count / 2); ; size = size == 1 ? 1 : size / 2)
        {
            var smaller = false;
            for (var start = 0; start < kept.Count;)
            {
                var rest = kept.ToList();
                rest.RemoveRange(start, Math.Min(size, rest.Count - start));
                if (fails(rest))
                {
                    kept = rest;
                    smaller = true;
                }
                else start += size;
            }

            if (size == 1 && !smaller) return kept;
        }
    }
}
