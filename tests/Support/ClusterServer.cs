using ColonyLineage.Ledger.Postgres;

namespace ColonyLineage.Support;

/// <summary>A private, non-durable cluster in a folder of its own under the temp folder.</summary>
internal sealed class ClusterServer : ITestServer
{
    private const string Prefix = "lineage-tests-";
    private readonly string _home;
    private readonly FileStream _alive;
    private readonly PrivatePostgres _postgres;

    private ClusterServer(string home, FileStream alive, PrivatePostgres postgres) => (_home, _alive, _postgres) = (home, alive, postgres);

    public string Where => $"a private cluster in {_home}";

    public string ConnectionString(string database) => _postgres.ConnectionString(database);

    public static async Task<ClusterServer> StartAsync()
    {
        foreach (var home in Directory.GetDirectories(Path.GetTempPath(), Prefix + "*")) await SweepAsync(home);

        // A killed run leaves its cluster behind. The lock tells the next run: the system lets go of it when its holder dies.
        var own = Path.Combine(Path.GetTempPath(), Prefix + Environment.ProcessId);
        Directory.CreateDirectory(own);
        var alive = new FileStream(Path.Combine(own, "alive"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        return new ClusterServer(own, alive, await PrivatePostgres.FindOrStartAsync(new PostgresOptions { Home = own, Durable = false }));
    }

    public async ValueTask DisposeAsync()
    {
        await _postgres.StopAsync();
        await _alive.DisposeAsync();
        Directory.Delete(_home, recursive: true);
    }

    private static async Task SweepAsync(string home)
    {
        try
        {
            // Young and not yet locked: its owner is between making the folder and taking the lock.
            if (Directory.GetCreationTimeUtc(home) > DateTime.UtcNow.AddSeconds(-10)) return;
            await using var ours = new FileStream(Path.Combine(home, "alive"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            await PrivatePostgres.StopAsync(new PostgresOptions { Home = home });
            Directory.Delete(home, recursive: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or PostgresUnavailableException)
        {
            // In use, or somebody else's, or not to be stopped: leave it.
        }
    }
}
