namespace ColonyLineage.Desk.Drawing.Whole;

/// <summary>Some of a column that can be drawn as one box; one alone is drawn as herself.</summary>
/// <param name="Code">What it is known by in an address.</param>
/// <param name="Label">What sets it apart within its column: 'Kiln Bank, born 2024'.</param>
/// <param name="Column">Its column, from 0.</param>
/// <param name="Members">All that it holds, in order.</param>
/// <param name="Under">What comes in its place when it is opened; empty for one alone, and for what is not opened.</param>
public sealed record FoldGroup(string Code, string Label, int Column, IReadOnlyList<Relative> Members, IReadOnlyList<FoldGroup> Under)
{
    /// <summary>It is one queen or colony.</summary>
    public bool IsSingle => Members.Count == 1;

    /// <summary>It can be opened.</summary>
    public bool Opens => Under.Count > 0;

    /// <summary>How many of them live.</summary>
    public int Living { get; } = Members.Count(one => one.Alive);
}
