using System.Runtime.Versioning;
using System.Security.Cryptography;
using System.Text;

namespace ColonyLineage.Ledger.Postgres;

/// <summary>The folder of the socket: for its owner alone, and with a path short enough for a Unix socket.</summary>
[UnsupportedOSPlatform("windows")]
internal static class SocketFolder
{
    /// <summary>Name of the socket that PostgreSQL makes in it.</summary>
    public const string Socket = ".s.PGSQL.5432";

    /// <summary>A socket's path has at most 107 bytes on Linux and 103 on macOS (unix(7), unix(4)).</summary>
    private const int Longest = 103;

    /// <summary>'socket' in the private database's own folder; where that path is too long, a folder of the system's temp folder named after it.</summary>
    public static string For(string folder)
    {
        var own = Path.Combine(folder, "socket");
        if (Fits(own)) return own;
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(folder)))[..16];
        return new[] { Path.GetTempPath(), "/tmp" }.Select(temp => Path.Combine(temp, $"lineage-{hash}")).FirstOrDefault(Fits)
            ?? throw new PostgresUnavailableException($"No short folder was found for the database's socket. Set TMPDIR or COLONY_LINEAGE_HOME to a shorter path than {folder}.");
    }

    /// <summary>Makes it, or takes it over, so that nobody else can enter it.</summary>
    public static void Make(string folder, ServiceUser? user)
    {
        // In a temp folder somebody else may have put a link or a folder of that name: setting the mode fails then, unless we are root.
        if (new DirectoryInfo(folder).LinkTarget is not null)
            throw new PostgresUnavailableException($"{folder} is a link, which this program did not make. Take it away.");
        Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        user?.Own(folder);
        File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    private static bool Fits(string folder) => Encoding.UTF8.GetByteCount(Path.Combine(folder, Socket)) <= Longest;
}
