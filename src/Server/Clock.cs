using ColonyLineage.Rules;

namespace ColonyLineage.Server;

/// <summary>The present, where the outfit works: this machine's own time and day.</summary>
public sealed class Clock(TimeProvider time)
{
    /// <summary>Today.</summary>
    public DateOnly Today => DateOnly.FromDateTime(time.GetLocalNow().DateTime);

    /// <summary>The time of day.</summary>
    public TimeOnly TimeOfDay => TimeOnly.FromDateTime(time.GetLocalNow().DateTime);

    /// <summary>The instant and the day of it, for Rules.</summary>
    public Now Now => new(time.GetUtcNow(), Today);
}
