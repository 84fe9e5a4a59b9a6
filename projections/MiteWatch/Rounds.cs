using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Sums;

namespace ColonyLineage.Projections.MiteWatch;

/// <summary>Washes gathered by yard and round.</summary>
public static class Rounds
{
    private const double Error = 0.05;

    /// <summary>A wash belongs to the round before while no more than so many days lie between them.</summary>
    private const int DaysApart = 10;

    /// <summary>A treatment bears on the spread of mites for so many days.</summary>
    private const int Treated = 90;

    private const int MostWashes = 100;

    /// <summary>The rounds of all yards, by yard and day. Washes of colonies that stood in no yard are left out.</summary>
    public static IReadOnlyList<RoundRow> Of(IEnumerable<WashRow> washes, OutfitCard outfit) =>
    [
        .. washes.Where(wash => wash.YardId is not null && wash.Bees > 0).GroupBy(wash => (wash.YardId!.Value, wash.Yard!)).OrderBy(yard => yard.Key.Item2, StringComparer.Ordinal)
            .SelectMany(yard => Split([.. yard.OrderBy(wash => wash.On)])).Select(round => Row(round, outfit)),
    ];

    /// <summary>Washes in the order of days, parted where too many days lie between them.</summary>
    internal static IEnumerable<List<WashRow>> Split(List<WashRow> washes)
    {
        var round = new List<WashRow>();
        foreach (var wash in washes)
        {
            if (round.Count > 0 && wash.On.DayNumber - round[^1].On.DayNumber > DaysApart)
            {
                yield return round;
                round = [];
            }

            round.Add(wash);
        }

        yield return round;
    }

    private static RoundRow Row(List<WashRow> round, OutfitCard outfit)
    {
        var (mites, bees) = (round.Sum(wash => wash.Mites), round.Sum(wash => wash.Bees));
        var treated = 2 * round.Count(wash => wash.DaysSinceDose is >= 0 and <= Treated) > round.Count;
        var spread = treated ? outfit.MiteSpreadTreated : outfit.MiteSpread;
        // Washes of unlike size are taken as so many of their mean size.
        var ofWash = (double)bees / round.Count / 100;
        var (threshold, k) = ((double)outfit.MiteThreshold * ofWash, (double)spread);
        var error = NegativeBinomial.Below(mites, round.Count * threshold, round.Count * k);
        var claim = error <= Error ? Claim.Below
            : 1 - NegativeBinomial.Below(mites - 1, round.Count * threshold, round.Count * k) <= Error ? Claim.Above
            : Claim.CannotSay;
        var most = round.MaxBy(wash => wash.Mites)!;
        return new RoundRow
        {
            YardId = round[0].YardId!.Value,
            Yard = round[0].Yard!,
            From = round[0].On,
            To = round[^1].On,
            Washes = round.Count,
            Mites = mites,
            Bees = bees,
            Per100Bees = Math.Round(100m * mites / bees, 4),
            UpperPer100 = Math.Round((decimal)(NegativeBinomial.UpperMean(mites, round.Count, k, Error) / ofWash), 4),
            MostMites = most.Mites,
            MostIn = most.Colony,
            MostId = most.WashId,
            MostOn = most.On,
            MostOf = most.Bees,
            RuleOfThumb = most.Mites <= 1 ? Thumb.Wanted : most.Mites <= 3 ? Thumb.AtLimit : Thumb.YardDue,
            Threshold = outfit.MiteThreshold,
            Spread = spread,
            IsBelow = claim,
            ErrorOfBelow = Math.Round((decimal)error, 4),
            MostAllowed = NegativeBinomial.LargestTotal(round.Count, threshold, k, Error),
            MoreWashes = claim == Claim.CannotSay ? More(mites, round.Count, threshold, k) : null,
            Entries = [.. round.SelectMany(wash => wash.Entries).Distinct()],
        };
    }

    private static int? More(int mites, int washes, double threshold, double k)
    {
        var mean = (double)mites / washes;
        for (var more = 1; washes + more <= MostWashes; more++)
            if (NegativeBinomial.LargestTotal(washes + more, threshold, k, Error) >= Math.Ceiling(mites + (more * mean) - 1e-9))
                return more;
        return null;
    }
}
