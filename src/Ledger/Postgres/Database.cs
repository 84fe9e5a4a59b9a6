namespace ColonyLineage.Ledger.Postgres;

/// <summary>Which database the books lie in.</summary>
/// <param name="ConnectionString">How to reach it.</param>
/// <param name="Private">The program's own PostgreSQL, where it is that one.</param>
public sealed record Database(string ConnectionString, PrivatePostgres? Private)
{
    private const string Name = "lineage";

    /// <summary>The one that COLONY_LINEAGE_DATABASE names; else the private one, started where it is not running.</summary>
    /// <exception cref="PostgresUnavailableException">There is none to be had; the message says what to do.</exception>
    public static async Task<Database> ResolveAsync(CancellationToken cancel = default)
    {
        if (DataHome.Said("COLONY_LINEAGE_DATABASE") is { } given) return new Database(given, null);
        var postgres = await PrivatePostgres.FindOrStartAsync(new PostgresOptions(), cancel);
        await postgres.EnsureDatabaseAsync(Name, cancel);
        return new Database(postgres.ConnectionString(Name), postgres);
    }
}
