using System.Buffers.Binary;

namespace ColonyLineage.Command.Demo;

/// <summary>
/// What queens hand on, in truth. Two lines differ: Sloe brings in more honey, Ember is hotter. Mothers of one line differ, too, so that others look
/// different and are not: their daughters would have to be compared by many mothers to tell.
/// </summary>
internal static class Genes
{
    /// <summary>Kilograms of honey a super, by line; in the order of <see cref="Places.Lines"/>.</summary>
    private static readonly double[] HoneyOfLine = [0, 0, 4, 0, 0];

    /// <summary>Points of temper, by line.</summary>
    private static readonly double[] TemperOfLine = [0, -1.1, 0, 0, 0];

    /// <summary>Kilograms of honey a super, above or below what a colony of this vigour brings in.</summary>
    public static double Honey(DemoQueen? queen) => Of(HoneyOfLine, queen) + (0.7 * OfMother(queen, 0));

    /// <summary>Points of temper, above or below.</summary>
    public static double Temper(DemoQueen? queen) => Of(TemperOfLine, queen) + (0.35 * OfMother(queen, 1));

    private static double Of(double[] lines, DemoQueen? queen) => queen is { Line: >= 0 } ? lines[queen.Line] : 0;

    /// <summary>About normal with deviation 1, made of the mother's id and not of chance: so nothing else in the demo changes by it.</summary>
    private static double OfMother(DemoQueen? queen, int trait)
    {
        if (queen?.Mother is not { } mother) return 0;
        var bytes = mother.Id.Value.ToByteArray();
        double sum = 0;
        for (var i = 0; i < 4; i++) sum += BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan((8 * trait) + (2 * i))) / 65535.0;
        return (sum - 2) * Math.Sqrt(3);
    }
}
