namespace ColonyLineage.Support;

/// <summary>A PostgreSQL that lasts as long as a run of tests.</summary>
internal interface ITestServer : IAsyncDisposable
{
    string Where { get; }

    string ConnectionString(string database);
}
