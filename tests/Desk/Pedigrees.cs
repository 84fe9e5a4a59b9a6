using ColonyLineage.Desk.Drawing;
using ColonyLineage.Desk.Drawing.Whole;
using ColonyLineage.Entries;
using ColonyLineage.Projections.Lineage;

namespace ColonyLineage.Desk.Tests;

/// <summary>Pedigrees and genealogies made from a seed, for the laws of the drawings: large, with rings, with pieces that do not hang together.</summary>
internal static class Pedigrees
{
    private static readonly string[] Yards = ["Ash Lane", "Birch End", "Cold Well", "Dunn Moor", "Elm Row"];

    public static Guid Id(int number) => new(number, 0, 0, new byte[8]);

    /// <summary>A pedigree of queens in a shape of its own for each seed: few mothers with many daughters, or many with few, or a long row of single daughters.</summary>
    /// <param name="count">How many queens descend from number 0.</param>
    /// <param name="rings">Links that were wrongly entered and lead back.</param>
    public static List<LinkRow> Queens(Random random, int count, int rings)
    {
        var links = new List<LinkRow>();
        var spread = random.Next(4);
        for (var i = 1; i <= count; i++)
        {
            var mother = spread switch { 0 => random.Next(i), 1 => random.Next(Math.Min(i, 12)), 2 => Math.Max(0, i - 1 - random.Next(3)), _ => random.Next(1 + (i / 3)) };
            links.Add(Link(LinkKind.Mother, mother, i, random.Next(6) == 0 ? Certainty.Supposed : Certainty.Known));
            if (random.Next(5) == 0) links.Add(Link(LinkKind.Drones, random.Next(i), i, null));
        }

        // Somebody's own great-granddaughter is entered as her mother.
        for (var i = 0; i < rings; i++) links.Add(Link(LinkKind.Mother, 1 + random.Next(count), random.Next(count), Certainty.Known));
        // A piece that does not hang together with the rest.
        for (var i = 1; i <= 20; i++) links.Add(Link(LinkKind.Mother, count + i, count + i + 1, Certainty.Known));
        return links;
    }

    /// <summary>Colonies that were made from one another, combined, and gave each other frames, to and fro.</summary>
    public static List<LinkRow> Colonies(Random random, int count)
    {
        var links = new List<LinkRow>();
        for (var i = 1; i <= count; i++)
        {
            for (var makers = random.Next(3); makers >= 0; makers--) links.Add(Link(LinkKind.Split, random.Next(i), i, null));
            if (random.Next(4) == 0) links.Add(Link(LinkKind.Combined, i, random.Next(count), null));
            if (random.Next(2) == 0) links.Add(Link(random.Next(2) == 0 ? LinkKind.Brood : LinkKind.Bees, random.Next(count), random.Next(count), null));
        }

        return links;
    }

    /// <summary>What is known of one, by its number.</summary>
    public static Func<Guid, Relative> About(Random random, IEnumerable<LinkRow> links)
    {
        var mother = links.Where(link => link.Link is LinkKind.Mother or LinkKind.Split).DistinctBy(link => link.ToId).ToDictionary(link => link.ToId);
        var known = new Dictionary<Guid, Relative>();
        return id =>
        {
            if (known.TryGetValue(id, out var one)) return one;
            var number = BitConverter.ToInt32(id.ToByteArray());
            var alive = random.Next(3) == 0;
            return known[id] = new Relative(id, $"q{number}")
            {
                Season = random.Next(9) == 0 ? null : 2000 + (number / 150),
                Born = $"{2000 + (number / 150)}",
                Alive = alive,
                Fate = alive ? "lives, somewhere" : "killed 1 Jun 2024",
                Yard = alive && random.Next(8) > 0 ? Yards[random.Next(Yards.Length)] : null,
                Line = random.Next(4) == 0 ? null : $"line {random.Next(3)}",
                Batch = random.Next(4) == 0 ? null : $"batch {number / 40}",
                Parent = mother.TryGetValue(id, out var link) ? (link.FromId, link.From) : null,
            };
        };
    }

    public static LinkRow Link(LinkKind kind, int from, int to, Certainty? sure) => new()
    {
        Link = kind, FromId = Id(from), From = $"q{from}", ToId = Id(to), To = $"q{to}", Sure = sure, Entries = [],
    };
}
