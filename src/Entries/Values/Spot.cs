namespace ColonyLineage.Entries;

/// <summary>One numbered place in a yard. It outlives every colony that ever stood on it.</summary>
/// <param name="Yard">The yard.</param>
/// <param name="Number">The outfit's own number or name for the place, 1 to 20 characters.</param>
public readonly record struct Spot(YardId Yard, string Number);
