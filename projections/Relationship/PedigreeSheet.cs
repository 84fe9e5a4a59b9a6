using System.Globalization;
using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Relationship;

/// <summary>A bee in a pedigree sheet with recorded drones: <c>id, sex (1 male, 2 female), mother, father</c>.</summary>
public sealed record BeeLine(int Row, string Id, string Sex, string Mother, string Father);

/// <summary>A queen in a pedigree sheet with matings: <c>id, mother, mating</c>. The mating is her mother's; empty where nobody knows it.</summary>
public sealed record QueenLine(int Row, string Id, string Mother, string Mating);

/// <summary>A mating: <c>mating, queen, dpqs, n</c>: drone-producing queens divided by <c>;</c> (none: open), and an effective number of drones (empty: 12).</summary>
public sealed record MatingLine(int Row, string Mating, string Queen, string Drones, string Effective);

/// <summary>Reads a pedigree in either form. What is wrong is refused by name, at its row; nothing is guessed.</summary>
public static class PedigreeSheet
{
    /// <summary>A queen is her own ancestor.</summary>
    public const string Ring = "pedigree-ring";

    /// <summary>A mother that is a drone, a father that is none, a drone with a father, a mating of another queen than the mother.</summary>
    public const string WrongParent = "wrong-parent";

    /// <summary>A pedigree with recorded drones, parents before offspring.</summary>
    public static (IReadOnlyList<RecordedBee> Bees, IReadOnlyList<Refusal> Refusals) WithDrones(IReadOnlyList<BeeLine> lines)
    {
        var refusals = Twice([.. lines.Select(line => (line.Row, line.Id))]);
        var byId = lines.GroupBy(line => line.Id).ToDictionary(same => same.Key, same => same.First());
        foreach (var line in lines)
        {
            if (line.Sex is not ("1" or "2")) refusals.Add(At(Refusals.UnknownWord, line.Row, "sex", $"'{line.Sex}' is no sex: 1 is male, 2 is female."));
            if (line.Sex == "1" && line.Father.Length > 0) refusals.Add(At(WrongParent, line.Row, "father", $"{line.Id} is a drone, and a drone has no father."));
            Parent(line.Row, "mother", line.Mother, "2", "a drone, and so nobody's mother");
            Parent(line.Row, "father", line.Father, "1", "a queen, and so nobody's father");
        }

        if (refusals.Count > 0) return ([], refusals);
        if (Sorted(lines, line => line.Id, line => [line.Mother, line.Father]) is not { } sorted) return ([], [RingAmong(lines.Select(line => (line.Row, line.Id, (string[])[line.Mother, line.Father])))]);
        var at = sorted.Select((line, i) => (line.Id, i)).ToDictionary(pair => pair.Id, pair => pair.i);
        int? Of(string id) => id.Length == 0 ? null : at[id];
        return ([.. sorted.Select(line => new RecordedBee(line.Id, line.Sex == "1", Of(line.Mother), Of(line.Father)))], []);

        void Parent(int row, string field, string parent, string sex, string isWhat)
        {
            if (parent.Length == 0) return;
            if (!byId.TryGetValue(parent, out var found)) refusals.Add(At(Refusals.NotFound, row, field, $"'{parent}' is in no row of its own. Add one, with its parents empty where they are not known."));
            else if (found.Sex is "1" or "2" && found.Sex != sex) refusals.Add(At(WrongParent, row, field, $"{parent} is {isWhat}."));
        }
    }

    /// <summary>A pedigree with matings. The queens are numbered in the order of the names given back.</summary>
    public static (QueenPedigree? Pedigree, IReadOnlyList<string> Names, IReadOnlyList<Refusal> Refusals) WithMatings(
        IReadOnlyList<QueenLine> queens, IReadOnlyList<MatingLine> matings, DroneShares shares = DroneShares.Equal)
    {
        var refusals = Twice([.. queens.Select(line => (line.Row, line.Id))]);
        refusals.AddRange(Twice([.. matings.Select(line => (line.Row, line.Mating))]));
        var ids = queens.Select(line => line.Id).ToHashSet();
        var byMating = matings.GroupBy(line => line.Mating).ToDictionary(same => same.Key, same => same.First());
        var drones = matings.ToDictionary(line => line, line => line.Drones.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        var effective = matings.ToDictionary(line => line, line => QueenPedigree.UsualDrones);
        foreach (var line in matings)
        {
            foreach (var (field, queen) in drones[line].Select(drone => ("dpqs", drone)).Append(("queen", line.Queen)))
                if (!ids.Contains(queen)) refusals.Add(At(Refusals.NotFound, line.Row, field, $"'{queen}' is in no row of the queens. Add one, with her mother empty where she is not known."));
            if (line.Effective.Length == 0) continue;
            if (!double.TryParse(line.Effective, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || number is not (>= 1 and <= 100))
                refusals.Add(At(Refusals.OutOfRange, line.Row, "n", $"'{line.Effective}' is no effective number of drones: 1 to 100, or empty."));
            else effective[line] = number;
        }

        foreach (var line in queens)
        {
            if (line.Mother.Length > 0 && !ids.Contains(line.Mother))
                refusals.Add(At(Refusals.NotFound, line.Row, "mother", $"'{line.Mother}' is in no row of her own. Add one, with her mother empty where she is not known."));
            if (line.Mating.Length == 0) continue;
            if (!byMating.TryGetValue(line.Mating, out var mating)) refusals.Add(At(Refusals.NotFound, line.Row, "mating", $"There is no mating '{line.Mating}'."));
            else if (mating.Queen != line.Mother) refusals.Add(At(WrongParent, line.Row, "mating", $"The mating {line.Mating} is of {mating.Queen}, not of the mother {(line.Mother.Length == 0 ? "(empty)" : line.Mother)}."));
        }

        if (refusals.Count > 0) return (null, [], refusals);
        string[] Before(QueenLine line) => line.Mating.Length > 0 ? [line.Mother, .. drones[byMating[line.Mating]]] : [line.Mother];
        if (Sorted(queens, line => line.Id, Before) is not { } sorted) return (null, [], [RingAmong(queens.Select(line => (line.Row, line.Id, Before(line))))]);

        var pedigree = new QueenPedigree(shares);
        var numbers = new Dictionary<string, int>();
        var families = new Dictionary<string, int>();
        var sets = new Dictionary<string, int>();
        foreach (var line in sorted)
        {
            if (line.Mother.Length == 0)
            {
                numbers[line.Id] = pedigree.AddFounder();
                continue;
            }

            // Daughters of whom no mating is recorded are of one: the open mating of their mother.
            var key = line.Mating.Length > 0 ? $"mating {line.Mating}" : $"mother {line.Mother}";
            if (!families.TryGetValue(key, out var family))
            {
                var mating = line.Mating.Length > 0 ? byMating[line.Mating] : null;
                int[] producers = mating is null ? [] : [.. drones[mating].Select(drone => numbers[drone]).Order()];
                var set = string.Join(';', producers);
                if (!sets.TryGetValue(set, out var of)) sets[set] = of = pedigree.AddDrones(producers);
                families[key] = family = pedigree.AddMating(numbers[line.Mother], of, mating is null ? QueenPedigree.UsualDrones : effective[mating]);
            }

            numbers[line.Id] = pedigree.AddDaughter(family);
        }

        return (pedigree, [.. sorted.Select(line => line.Id)], []);
    }

    private static List<Refusal> Twice(IReadOnlyList<(int Row, string Id)> lines) =>
    [
        .. lines.Where(line => line.Id.Length == 0).Select(line => At(Refusals.Missing, line.Row, "id", "It has no name.")),
        .. lines.Where(line => line.Id.Length > 0).GroupBy(line => line.Id).Where(same => same.Count() > 1)
            .Select(same => At(Refusals.NamedTwice, same.ElementAt(1).Row, "id", $"'{same.Key}' stands in row {same.First().Row} already.")),
    ];

    /// <summary>Parents before offspring, otherwise as they stand; null where some stand in a ring.</summary>
    private static List<TLine>? Sorted<TLine>(IReadOnlyList<TLine> lines, Func<TLine, string> id, Func<TLine, string[]> parents) where TLine : notnull
    {
        var byId = lines.ToDictionary(id);
        var waits = lines.ToDictionary(line => line, line => parents(line).Where(parent => parent.Length > 0).Distinct().Count());
        var children = lines.SelectMany(line => parents(line).Where(parent => parent.Length > 0).Distinct().Select(parent => (Parent: byId[parent], line))).ToLookup(pair => pair.Parent, pair => pair.line);
        var place = lines.Select((line, i) => (line, i)).ToDictionary(pair => pair.line, pair => pair.i);
        var ready = new PriorityQueue<TLine, int>(lines.Where(line => waits[line] == 0).Select(line => (line, place[line])));
        var sorted = new List<TLine>();
        while (ready.TryDequeue(out var line, out _))
        {
            sorted.Add(line);
            foreach (var child in children[line])
                if (--waits[child] == 0) ready.Enqueue(child, place[child]);
        }

        return sorted.Count == lines.Count ? sorted : null;
    }

    /// <summary>Names a ring: follows a parent of somebody in it until somebody comes again.</summary>
    private static Refusal RingAmong(IEnumerable<(int Row, string Id, string[] Parents)> lines)
    {
        var open = lines.ToDictionary(line => line.Id);
        // Whoever has no parent left among those that remain is in no ring.
        for (var smaller = true; smaller;)
        {
            var free = open.Values.Where(line => !line.Parents.Any(open.ContainsKey)).Select(line => line.Id).ToList();
            smaller = free.Count > 0;
            foreach (var id in free) open.Remove(id);
        }

        var path = new List<string>();
        var at = open.Keys.First();
        while (!path.Contains(at))
        {
            path.Add(at);
            at = open[at].Parents.First(open.ContainsKey);
        }

        var ring = path[path.IndexOf(at)..];
        return At(Ring, open[ring[0]].Row, "mother", $"{string.Join(" comes of ", ring)} comes of {ring[0]}: nobody is her own ancestor. Mend one of these rows.");
    }

    private static Refusal At(string name, int row, string field, string message) => new(name, FormattableString.Invariant($"row {row}, {field}"), message);
}
