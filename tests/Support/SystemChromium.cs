using Xunit;

namespace ColonyLineage.Support;

/// <summary>The system's own Chromium, for the tests of pages: no browser is downloaded.</summary>
public static class SystemChromium
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

    /// <summary>The program in COLONY_LINEAGE_CHROMIUM, else the first on the PATH; null where there is none.</summary>
    public static string? Program { get; } = Environment.GetEnvironmentVariable("COLONY_LINEAGE_CHROMIUM") is { Length: > 0 } named
        ? named
        : (from folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
           from name in Names
           let program = Path.Combine(folder, name)
           where File.Exists(program)
           select program).FirstOrDefault();

    /// <summary>The program. Skips the running test where there is none.</summary>
    public static string Need()
    {
        Assert.SkipUnless(File.Exists(Program), "Needs Chromium: install it (on Debian the package 'chromium'), or name it in COLONY_LINEAGE_CHROMIUM.");
        return Program!;
    }
}
