using ColonyLineage.Support;

[assembly: AssemblyFixture(typeof(PostgresFixture))]
[assembly: System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
