using CsCheck;

namespace ColonyLineage.Simulation;

/// <summary>Chance out of a seed: the same seed gives the same history on every machine.</summary>
public sealed class Chance(ulong seed, uint stream = 1)
{
    private readonly PCG _pcg = new(stream, seed);

    /// <summary>A whole number from <paramref name="least"/> to <paramref name="most"/>, both included.</summary>
    public int Between(int least, int most) => least + (int)_pcg.Next((uint)(most - least + 1));

    /// <summary>True in so many of a hundred cases.</summary>
    public bool Percent(int of100) => Between(0, 99) < of100;

    public T Of<T>(IReadOnlyList<T> choices) => choices[Between(0, choices.Count - 1)];

    public T Either<T>(params T[] choices) => choices[Between(0, choices.Length - 1)];

    public Guid Id()
    {
        Span<byte> bytes = stackalloc byte[16];
        BitConverter.TryWriteBytes(bytes, _pcg.Next64());
        BitConverter.TryWriteBytes(bytes[8..], _pcg.Next64());
        return new Guid(bytes);
    }

    public ulong Seed() => _pcg.Next64();

    /// <summary>
    /// A number that depends on a thing's id and the seed alone. What is drawn this way stays the same for what is left when
    /// other entries are dropped, so that a failing history can be made smaller.
    /// </summary>
    public static uint Fixed(Guid id, ulong seed)
    {
        Span<byte> bytes = stackalloc byte[16];
        id.TryWriteBytes(bytes);
        var mixed = BitConverter.ToUInt64(bytes) ^ seed;
        mixed = unchecked((mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9UL);
        mixed ^= BitConverter.ToUInt64(bytes[8..]);
        mixed = unchecked((mixed ^ (mixed >> 27)) * 0x94D049BB133111EBUL);
        return (uint)((mixed ^ (mixed >> 31)) & 0x7FFFFFFF);
    }
}
