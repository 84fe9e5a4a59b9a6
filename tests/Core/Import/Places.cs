using Xunit;

namespace ColonyLineage.Core.Tests.Import;

/// <summary>Where the tests find their files: in the source tree, and in the shared folder that stands next to it.</summary>
internal static class Places
{
    /// <summary>The repository's root.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The tests' own files about the import.</summary>
    public static string Import => Path.Combine(Root, "tests", "Core", "Import");

    /// <summary>A file of the shared folder. The test is skipped where the folder is absent.</summary>
    public static string Shared(params string[] path)
    {
        var named = Environment.GetEnvironmentVariable("COLONY_LINEAGE_SHARED");
        var folder = string.IsNullOrEmpty(named) ? Path.Combine(Path.GetDirectoryName(Root)!, "shared") : named;
        var file = Path.Combine([folder, .. path]);
        if (!File.Exists(file))
            Assert.Skip($"The real sheet is not here: {file} is missing. Set COLONY_LINEAGE_SHARED to the shared folder, or put it next to the repository.");
        return file;
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ColonyLineage.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The tests run inside the repository; ColonyLineage.sln was not found above them.");
    }
}
