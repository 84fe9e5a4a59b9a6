namespace ColonyLineage.Server;

/// <summary>The names of refusals that only a server gives.</summary>
public static class ServerRefusals
{
    /// <summary>It would listen where other machines reach it, and there are no accounts yet.</summary>
    public const string NotLoopback = "not-loopback";

    /// <summary>The request names another host: a page of elsewhere may have been pointed at this machine.</summary>
    public const string ForeignHost = "foreign-host";

    /// <summary>A page of another site sent the request.</summary>
    public const string ForeignSite = "foreign-site";

    /// <summary>The request asks for nothing that is here.</summary>
    public const string NothingHere = "nothing-here";

    /// <summary>The method is not one that this address takes.</summary>
    public const string WrongMethod = "wrong-method";

    /// <summary>The body is larger than the server takes.</summary>
    public const string TooLarge = "too-large";

    /// <summary>The body is not of a type that the address takes.</summary>
    public const string WrongType = "wrong-type";

    /// <summary>The body, or a value in the address, cannot be read.</summary>
    public const string Malformed = "malformed";

    /// <summary>The address carries a parameter that the question does not take.</summary>
    public const string UnknownParameter = "unknown-parameter";

    /// <summary>The server itself failed.</summary>
    public const string Failed = "failed";
}
