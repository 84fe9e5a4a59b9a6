namespace ColonyLineage.Ledger.Postgres;

/// <summary>The user that PostgreSQL runs as when this program runs as root: PostgreSQL refuses to run as root.</summary>
internal sealed class ServiceUser(string name)
{
    private const string OwnName = "colony-lineage";
    private readonly string _group = Shell.Must(null, "id", "-g", name).Trim();

    /// <summary>The name that the system knows it by.</summary>
    public string Name => name;

    /// <summary>
    /// Null where this program is not root. Else whoever owns the existing data; else a system user <c>postgres</c>, which every
    /// distribution's package makes; else a system user of our own, made now.
    /// </summary>
    public static ServiceUser? For(string dataFolder)
    {
        if (!Environment.IsPrivilegedProcess) return null;
        if (Directory.Exists(dataFolder) && OwnerOf(dataFolder) is { } owner and not "root") return new ServiceUser(owner);
        foreach (var known in new[] { "postgres", OwnName })
        {
            if (Shell.Run(null, "id", "-u", known).Good) return new ServiceUser(known);
        }

        Shell.Must(null, "useradd", "--system", "--user-group", "--no-create-home", "--home-dir", "/nonexistent", "--shell", "/usr/sbin/nologin", OwnName);
        return new ServiceUser(OwnName);
    }

    /// <summary>The command line that runs another one as this user.</summary>
    public string[] StepDown(string[] line) => OnPath("setpriv")
        ? ["setpriv", $"--reuid={name}", $"--regid={_group}", "--init-groups", .. line]
        : OnPath("runuser")
            ? ["runuser", "-u", name, "--", .. line]
            : throw new PostgresUnavailableException(
                "PostgreSQL does not run as root, and neither setpriv nor runuser is there to step down with. Install util-linux, or start this program as another user.");

    /// <summary>Gives a folder to this user.</summary>
    public void Own(string folder) => Shell.Must(null, "chown", $"{name}:{_group}", folder);

    private static string? OwnerOf(string folder) => Shell.Run(null, "stat", "-c", "%U", folder) is { Good: true, Output: var owner } ? owner.Trim() : null;

    private static bool OnPath(string program) => (DataHome.Said("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program)));
}
