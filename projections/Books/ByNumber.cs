namespace ColonyLineage.Projections;

/// <summary>The order in which people read numbers that are names: 2 before 10, 7 before 7a, N3 before N12.</summary>
public sealed class ByNumber : IComparer<string?>
{
    public static readonly ByNumber Order = new();

    public int Compare(string? left, string? right)
    {
        if (left is null || right is null) return (left is null ? 0 : 1) - (right is null ? 0 : 1);
        int i = 0, j = 0;
        while (i < left.Length && j < right.Length)
        {
            if (char.IsAsciiDigit(left[i]) && char.IsAsciiDigit(right[j]))
            {
                var one = Run(left, ref i);
                var other = Run(right, ref j);
                var byLength = one.Length.CompareTo(other.Length);
                if (byLength != 0) return byLength;
                var byDigits = one.SequenceCompareTo(other);
                if (byDigits != 0) return byDigits;
                continue;
            }

            var byLetter = char.ToLowerInvariant(left[i]).CompareTo(char.ToLowerInvariant(right[j]));
            if (byLetter != 0) return byLetter;
            i++;
            j++;
        }

        var byRest = (left.Length - i).CompareTo(right.Length - j);
        return byRest != 0 ? byRest : string.CompareOrdinal(left, right);
    }

    private static ReadOnlySpan<char> Run(string text, ref int at)
    {
        var start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
        return text.AsSpan(start, at - start).TrimStart('0');
    }
}
