namespace ColonyLineage.Server;

/// <summary>What a server needs to know before it starts.</summary>
public sealed record ServerOptions
{
    /// <summary>Where it listens where nobody says otherwise.</summary>
    public const string UsualUrl = "http://127.0.0.1:5280";

    /// <summary>The PostgreSQL that the books lie in.</summary>
    public required string ConnectionString { get; init; }

    /// <summary>The outfit whose books are opened; made where there is none of the name.</summary>
    public required string Outfit { get; init; }

    /// <summary>Addresses to listen on, with ';' between them; null for what the environment says, else <see cref="UsualUrl"/>.</summary>
    public string? Urls { get; init; }

    /// <summary>Follow what other processes record in the same books.</summary>
    public bool RunDaemon { get; init; } = true;

    /// <summary>Where the present comes from.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>Where the keys lie that forms are signed with; null to forget them with the process, and with them the forms that are open.</summary>
    public string? KeyFolder { get; init; }

    /// <summary>The most bytes of a request, but for a sheet: 16 MB, which a full act fits into.</summary>
    public long BodyLimitBytes { get; init; } = 16_000_000;

    /// <summary>The most bytes of an uploaded sheet: 20 MB. Longer ones go in by the command line.</summary>
    public long SheetLimitBytes { get; init; } = 20_000_000;
}
