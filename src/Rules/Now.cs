namespace ColonyLineage.Rules;

/// <summary>The present, which comes in from outside.</summary>
/// <param name="Instant">The instant at which the request is decided (UTC).</param>
/// <param name="Today">The day it is where the outfit works.</param>
public readonly record struct Now(DateTimeOffset Instant, DateOnly Today)
{
    /// <summary>The last day that may be written. One day of grace: a device in another time zone may already be there.</summary>
    public DateOnly LastDay => Today.AddDays(1);
}
