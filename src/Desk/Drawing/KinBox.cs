namespace ColonyLineage.Desk.Drawing;

/// <summary>What is written in the box of a queen or a colony in a drawing of kinship.</summary>
/// <param name="Name">Her name.</param>
/// <param name="Season">The season she belongs to; null where nobody knows.</param>
/// <param name="Mark">The colour due, for a queen; null for none.</param>
/// <param name="Lines">Further lines: when, where, what became of her.</param>
/// <param name="Path">The page about her.</param>
/// <param name="Alive">She lives.</param>
public sealed record KinBox(string Name, int? Season, string? Mark, IReadOnlyList<string> Lines, string Path, bool Alive);
