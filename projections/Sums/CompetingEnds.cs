namespace ColonyLineage.Projections.Sums;

/// <summary>A life that may end in several ways.</summary>
/// <param name="Entry">The age from which it was watched.</param>
/// <param name="Exit">The age at its end, or at which it was last watched; above <paramref name="Entry"/>.</param>
/// <param name="How">How it ended; null where nobody knows what came after.</param>
public readonly record struct EndedLife(double Entry, double Exit, string? How);

/// <summary>From this age to the next step: the share that has ended in this way.</summary>
public sealed record EndStep(double At, string How, double Share);

/// <summary>
/// How much had ended in which way by which age: the cumulative incidence of Aalen and Johansen 1978, Scandinavian Journal of Statistics 5:141. To treat the
/// other ends as lives not watched to the end, and turn a survival curve over, would say too much: what ended in one way can no longer end in another.
/// </summary>
public static class CompetingEnds
{
    /// <summary>The steps by age, and of one age by the name of the end.</summary>
    public static IReadOnlyList<EndStep> AalenJohansen(IReadOnlyCollection<EndedLife> lives)
    {
        var ended = new SortedDictionary<string, double>(StringComparer.Ordinal);
        var steps = new List<EndStep>();
        var share = 1.0;
        foreach (var (at, atRisk, all) in Survival.Steps([.. lives.Select(life => new Life(life.Entry, life.Exit, life.How is not null))]))
        {
            foreach (var way in lives.Where(life => life.How is not null && life.Exit == at).GroupBy(life => life.How!).OrderBy(way => way.Key, StringComparer.Ordinal))
            {
                ended[way.Key] = ended.GetValueOrDefault(way.Key) + (share * way.Count() / atRisk);
                steps.Add(new EndStep(at, way.Key, ended[way.Key]));
            }

            share *= 1 - ((double)all / atRisk);
        }

        return steps;
    }

    /// <summary>The share that has ended in this way by an age.</summary>
    public static double ShareAt(IReadOnlyList<EndStep> steps, string how, double age) => steps.LastOrDefault(step => step.How == how && step.At <= age)?.Share ?? 0;
}
