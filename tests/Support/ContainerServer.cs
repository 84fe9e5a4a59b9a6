using DotNet.Testcontainers.Builders;
using Npgsql;
using Testcontainers.PostgreSql;
using Xunit;

namespace ColonyLineage.Support;

/// <summary>PostgreSQL in a container, where it is asked for and a Docker engine answers.</summary>
internal sealed class ContainerServer : ITestServer
{
    private const string Image = "postgres:17-alpine";
    private readonly PostgreSqlContainer _container;

    private ContainerServer(PostgreSqlContainer container) => _container = container;

    public string Where => $"a container of {Image}";

    public string ConnectionString(string database) =>
        new NpgsqlConnectionStringBuilder(_container.GetConnectionString()) { Database = database, IncludeErrorDetail = true }.ConnectionString;

    public static async Task<ITestServer?> TryStartAsync()
    {
        if (Environment.GetEnvironmentVariable("COLONY_LINEAGE_TESTCONTAINERS") != "1") return null;
        try
        {
            var container = new PostgreSqlBuilder(Image)
                .WithCommand("-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off", "-c", "max_connections=200").Build();
            await container.StartAsync();
            return new ContainerServer(container);
        }
        catch (DockerUnavailableException problem)
        {
            TestContext.Current.SendDiagnosticMessage("No Docker engine answers, so the tests run on a private cluster: {0}", problem.Message);
            return null;
        }
    }

    public ValueTask DisposeAsync() => _container.DisposeAsync();
}
