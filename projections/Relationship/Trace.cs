using System.Numerics;
using System.Runtime.InteropServices;

namespace ColonyLineage.Projections.Relationship;

/// <summary>
/// The trace upwards. A place is where genes come together on their way down a pedigree: a queen that has offspring, the daughters of a mating, a set of
/// drone producers. Two places are followed from the youngest to the oldest, each with the part of its genes that came by there; what both have in a place,
/// of what is that place's own, they have in common.
/// </summary>
internal sealed class Trace
{
    private readonly List<Place> _places = [];
    private readonly List<int> _above = [];

    // What a trace leaves empty behind it: the parts that have come to each place, and a bit for each place that waits.
    private readonly List<Parts> _parts = [];
    private readonly List<ulong> _waits = [];

    /// <summary>Adds a place; its number.</summary>
    /// <param name="own">What two genes of it share beside what they have from above.</param>
    /// <param name="share">The share of its genes that comes from each place above; what is missing to 1 comes from bees that nobody knows.</param>
    /// <param name="above">The places that its genes come from. They are there already, so numbers rise downwards.</param>
    public int Add(double own, double share, params ReadOnlySpan<int> above)
    {
        _places.Add(new Place(own, share, _above.Count, above.Length));
        _above.AddRange(above);
        _parts.Add(default);
        if (_waits.Count * 64 < _places.Count) _waits.Add(0);
        return _places.Count - 1;
    }

    /// <summary>What two genes of a place share beside what they have from above.</summary>
    public double OwnOf(int place) => _places[place].Own;

    /// <summary>θ of two genes, one drawn from each place.</summary>
    public double Between(int one, int other)
    {
        var places = CollectionsMarshal.AsSpan(_places);
        var above = CollectionsMarshal.AsSpan(_above);
        var parts = CollectionsMarshal.AsSpan(_parts);
        var waits = CollectionsMarshal.AsSpan(_waits);
        parts[one].One = parts[other].Other = 1;
        waits[one / 64] |= 1UL << one;
        waits[other / 64] |= 1UL << other;
        double shared = 0;
        for (var word = Math.Max(one, other) / 64; word >= 0; word--)
            while (waits[word] != 0)
            {
                var number = (word * 64) + BitOperations.Log2(waits[word]);
                waits[word] ^= 1UL << number;
                var here = parts[number];
                parts[number] = default;
                var place = places[number];
                shared += here.One * here.Other * place.Own;
                foreach (var from in above.Slice(place.Above, place.Count))
                {
                    ref var there = ref parts[from];
                    there.One += here.One * place.Share;
                    there.Other += here.Other * place.Share;
                    waits[from / 64] |= 1UL << from;
                }
            }

        return shared;
    }

    private readonly record struct Place(double Own, double Share, int Above, int Count);

    private record struct Parts(double One, double Other);
}
