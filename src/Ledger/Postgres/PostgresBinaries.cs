using System.Globalization;

namespace ColonyLineage.Ledger.Postgres;

/// <summary>A folder with the programs of one PostgreSQL: initdb, pg_ctl, postgres.</summary>
/// <param name="Folder">The folder.</param>
/// <param name="Major">Its major version, for instance 17.</param>
public sealed record PostgresBinaries(string Folder, int Major)
{
    /// <summary>The oldest major version that the ledger is known to work on.</summary>
    public const int Oldest = 14;

    private static readonly string[] Programs = ["initdb", "pg_ctl", "postgres"];

    /// <summary>The full path of one of the programs.</summary>
    public string this[string program] => Path.Combine(Folder, program);

    /// <summary>
    /// The first that fits, from: the folder in COLONY_LINEAGE_PGBIN, the PATH, and where distributions put them, newest first.
    /// A cluster can only be served by the major version that made it, so an existing one names its <paramref name="major"/>.
    /// </summary>
    /// <exception cref="PostgresUnavailableException">None fits.</exception>
    public static PostgresBinaries Find(int? major = null)
    {
        var seen = Candidates().Where(folder => Programs.All(program => File.Exists(Path.Combine(folder, program))))
            .Select(folder => new PostgresBinaries(folder, VersionOf(folder))).ToList();
        if (seen.FirstOrDefault(found => major is null ? found.Major >= Oldest : found.Major == major) is { } fits) return fits;
        throw new PostgresUnavailableException(major is { } wanted && seen.Count > 0
            ? $"The private database was made by PostgreSQL {wanted}, and only {string.Join(", ", seen.Select(found => found.Major).Distinct())} is installed. {HowToInstall(wanted)}"
            : $"PostgreSQL {Oldest} or newer was not found on this machine. {HowToInstall(major)}");
    }

    private static IEnumerable<string> Candidates()
    {
        if (DataHome.Said("COLONY_LINEAGE_PGBIN") is { } named)
        {
            // A folder that somebody names is meant: a typing mistake in it must not silently give another PostgreSQL.
            yield return Path.GetFullPath(named);
            yield break;
        }

        foreach (var folder in (DataHome.Said("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)) yield return folder;
        foreach (var folder in Versioned("/usr/lib/postgresql", "bin")) yield return folder;
        foreach (var folder in Versioned("/usr", "bin", "pgsql-")) yield return folder;
        yield return "/usr/local/pgsql/bin";
        foreach (var cellar in new[] { "/opt/homebrew/opt", "/usr/local/opt", "/home/linuxbrew/.linuxbrew/opt" })
        {
            foreach (var folder in Versioned(cellar, "bin", "postgresql@")) yield return folder;
        }
    }

    private static IEnumerable<string> Versioned(string parent, string below, string prefix = "") =>
        !Directory.Exists(parent) ? [] : Directory.GetDirectories(parent, prefix + "*")
            .Select(folder => (folder, version: decimal.TryParse(Path.GetFileName(folder)[prefix.Length..], CultureInfo.InvariantCulture, out var v) ? v : -1))
            .Where(found => found.version >= 0)
            .OrderByDescending(found => found.version)
            .Select(found => Path.Combine(found.folder, below));

    /// <summary>'postgres (PostgreSQL) 15.18 (Debian …)', '17beta1', '18.1': the digits after the bracket.</summary>
    private static int VersionOf(string folder)
    {
        var said = Shell.Run(null, Path.Combine(folder, "postgres"), "--version").Output;
        var digits = said[(said.IndexOf(')') + 1)..].TrimStart().TakeWhile(char.IsAsciiDigit).ToArray();
        return int.TryParse(digits, CultureInfo.InvariantCulture, out var major) ? major : 0;
    }

    private static string HowToInstall(int? major)
    {
        var version = major?.ToString(CultureInfo.InvariantCulture);
        var how = OperatingSystem.IsMacOS() ? $"brew install postgresql@{version ?? "17"}"
            : File.Exists("/usr/bin/apt-get") ? $"apt-get install postgresql{(version is null ? "" : "-" + version)}"
            : File.Exists("/usr/bin/dnf") ? "dnf install postgresql-server"
            : "the server package of your system";
        return $"Install it ({how}), or name the folder of its programs in COLONY_LINEAGE_PGBIN, "
            + "or give the connection string of a PostgreSQL that you run yourself in COLONY_LINEAGE_DATABASE.";
    }
}
