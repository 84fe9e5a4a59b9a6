using Xunit;

namespace ColonyLineage.Support;

/// <summary>
/// Published data sets that are not part of the project: the folder in COLONY_LINEAGE_SHARED, else a folder 'shared' beside
/// the checkout. A test that needs one is skipped where it is absent, and says so.
/// </summary>
public static class SharedData
{
    /// <summary>The folder, or null where there is none.</summary>
    public static string? Folder { get; } = new[] { Environment.GetEnvironmentVariable("COLONY_LINEAGE_SHARED"), Path.Combine(Repository.Root, "..", "shared") }
        .Where(folder => !string.IsNullOrWhiteSpace(folder)).Select(folder => Path.GetFullPath(folder!)).FirstOrDefault(Directory.Exists);

    /// <summary>The full path of something in it, for instance <c>Need("data", "split-study-2022")</c>. Skips the running test where it is absent.</summary>
    public static string Need(params string[] path)
    {
        var wanted = Path.Combine(path);
        Assert.SkipWhen(Folder is null, $"Needs shared/{wanted}: put the folder 'shared' beside the checkout, or name it in COLONY_LINEAGE_SHARED.");
        var full = Path.Combine(Folder!, wanted);
        Assert.SkipUnless(Path.Exists(full), $"Needs {wanted}, which is not in {Folder}.");
        return full;
    }
}
