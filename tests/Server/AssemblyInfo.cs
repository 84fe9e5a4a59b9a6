using ColonyLineage.Support;

[assembly: AssemblyFixture(typeof(PostgresFixture))]
// Some of these tests set environment variables, which the whole process has in common.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]
[assembly: System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
