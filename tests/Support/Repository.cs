namespace ColonyLineage.Support;

/// <summary>Where the sources lie that the tests were built from.</summary>
public static class Repository
{
    /// <summary>The folder with the solution in it.</summary>
    public static string Root { get; } = Up(AppContext.BaseDirectory) ?? Up(Environment.CurrentDirectory)
        ?? throw new InvalidOperationException("The tests do not run inside a checkout: no ColonyLineage.sln above them.");

    private static string? Up(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ColonyLineage.sln"))) return folder.FullName;
        }

        return null;
    }
}
