namespace ColonyLineage.Desk.Drawing;

/// <summary>Takes rings out of what should lead forward in time: a mother entered as her own granddaughter must not make a walk endless.</summary>
public static class Rings
{
    /// <summary>An order in which every line leads forward, and the lines that had to be left out for it. Walked from the first one on, so a ring is cut where it comes back to her.</summary>
    /// <param name="count">How many there are, numbered from 0.</param>
    /// <param name="lines">Their lines.</param>
    /// <param name="from">The number of the one that a line starts at.</param>
    /// <param name="to">The number of the one that it leads to.</param>
    public static (int[] Order, List<TLine> LeftOut) Cut<TLine>(int count, IReadOnlyList<TLine> lines, Func<TLine, int> from, Func<TLine, int> to)
    {
        var outgoing = lines.ToLookup(from);
        var leftOut = new List<TLine>();
        var state = new byte[count];
        var done = new List<int>(count);
        for (var start = 0; start < count; start++)
        {
            if (state[start] != 0) continue;
            var stack = new Stack<(int Node, IEnumerator<TLine> Lines)>();
            state[start] = 1;
            stack.Push((start, outgoing[start].GetEnumerator()));
            while (stack.TryPeek(out var here))
            {
                if (!here.Lines.MoveNext())
                {
                    state[here.Node] = 2;
                    done.Add(here.Node);
                    stack.Pop();
                    continue;
                }

                var next = to(here.Lines.Current);
                if (state[next] == 1) leftOut.Add(here.Lines.Current);
                else if (state[next] == 0)
                {
                    state[next] = 1;
                    stack.Push((next, outgoing[next].GetEnumerator()));
                }
            }
        }

        done.Reverse();
        return ([.. done], leftOut);
    }
}
