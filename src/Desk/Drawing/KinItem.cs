namespace ColonyLineage.Desk.Drawing;

/// <summary>One line of a genealogy as a nested list.</summary>
/// <param name="Hidden">How many further ones are not listed under it.</param>
public sealed record KinItem(string Name, string Path, string Said, IReadOnlyList<KinItem> Under, int Hidden);
