namespace ColonyLineage.Command;

/// <summary>What the process says when it ends.</summary>
internal static class Exit
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>It could not be done, for a reason that lies outside of what was given.</summary>
    public const int Failed = 1;

    /// <summary>The command line makes no sense.</summary>
    public const int Usage = 2;

    /// <summary>What was given was refused, by name.</summary>
    public const int Refused = 3;
}

/// <summary>It cannot be done; the message says why and what to do, in one line.</summary>
internal sealed class CannotException(string message, int code = Exit.Failed) : Exception(message)
{
    /// <summary>How the process ends.</summary>
    public int Code { get; } = code;
}
