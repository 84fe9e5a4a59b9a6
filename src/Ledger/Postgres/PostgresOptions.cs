namespace ColonyLineage.Ledger.Postgres;

/// <summary>How the private PostgreSQL is to be run.</summary>
public sealed record PostgresOptions
{
    /// <summary>The folder that everything of it lies in. Made where it is missing.</summary>
    public string Home { get; init; } = DataHome.Folder;

    /// <summary>False only for tests and throw-away data: nothing is flushed to disk, and a power cut loses the lot.</summary>
    public bool Durable { get; init; } = true;
}
