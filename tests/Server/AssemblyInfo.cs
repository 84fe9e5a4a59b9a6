using ColonyLineage.Support;

[assembly: AssemblyFixture(typeof(PostgresFixture))]
// Some of these tests set environment variables, which the whole process has in common.
[assembly: CollectionBehavior(DisableTestParallelization = true)]
[assembly: System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
