namespace ColonyLineage.Ledger.Postgres;

/// <summary>Where this program keeps its data.</summary>
public static class DataHome
{
    /// <summary>
    /// The folder named by COLONY_LINEAGE_HOME; else, as root, /var/lib/colony-lineage (root's own home cannot be entered by
    /// the service user that PostgreSQL steps down to); else colony-lineage in the user's data folder (XDG).
    /// </summary>
    public static string Folder
    {
        get
        {
            if (Said("COLONY_LINEAGE_HOME") is { } home) return Path.GetFullPath(home);
            if (Environment.IsPrivilegedProcess && !OperatingSystem.IsWindows()) return "/var/lib/colony-lineage";
            var data = Said("XDG_DATA_HOME") ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".local", "share");
            return Path.Combine(Path.GetFullPath(data), "colony-lineage");
        }
    }

    /// <summary>An environment variable that is there and not blank.</summary>
    internal static string? Said(string variable) =>
        Environment.GetEnvironmentVariable(variable) is { } value && !string.IsNullOrWhiteSpace(value) ? value : null;
}
