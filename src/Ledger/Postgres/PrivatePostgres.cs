using System.Globalization;
using System.Runtime.Versioning;
using Npgsql;

namespace ColonyLineage.Ledger.Postgres;

/// <summary>
/// A PostgreSQL of the program's own: made on first use in the data folder, reached by a socket that only its owner can
/// enter, never by the network. It outlives the process that started it, until <see cref="StopAsync"/>.
/// </summary>
public sealed class PrivatePostgres
{
    private const string Superuser = "lineage";
    private readonly PostgresBinaries _binaries;
    private readonly ServiceUser? _user;
    private readonly string _folder;
    private readonly string _socket;

    private PrivatePostgres(PostgresBinaries binaries, ServiceUser? user, string folder, string socket, bool startedHere)
    {
        (_binaries, _user, _folder, _socket, StartedHere) = (binaries, user, folder, socket, startedHere);
    }

    /// <summary>The folder with its data, its log and, where the path is short enough, its socket.</summary>
    public string Folder => _folder;

    /// <summary>Major version of the PostgreSQL that serves it.</summary>
    public int Major => _binaries.Major;

    /// <summary>It was not running before this call.</summary>
    public bool StartedHere { get; }

    /// <summary>Gives the private database of that home, running: made where it is missing, started where it is not running.</summary>
    /// <exception cref="PostgresUnavailableException">It cannot be had here; the message says what to do.</exception>
    public static async Task<PrivatePostgres> FindOrStartAsync(PostgresOptions options, CancellationToken cancel = default)
    {
        if (OperatingSystem.IsWindows())
        {
            throw new PostgresUnavailableException(
                "On Windows the program runs no PostgreSQL of its own. Give the connection string of one in COLONY_LINEAGE_DATABASE, or run this program under WSL.");
        }

        var folder = FolderIn(options);
        var data = DataIn(folder);
        var user = ServiceUser.For(data);
        MakeFolders(options.Home, folder, user);
        await using var held = await StartLock.TakeAsync(LockIn(folder), cancel);

        // Asked for only now, behind the lock: another process may just have made it.
        var binaries = PostgresBinaries.Find(MajorOf(user, data));
        if (MajorOf(user, data) is null) Make(binaries, user, folder);
        var started = !IsRunning(binaries, user, data);
        if (started) Start(binaries, user, folder, options.Durable);
        var postgres = new PrivatePostgres(binaries, user, folder, SocketOf(user, data), started);
        await postgres.AnswersAsync(cancel);
        return postgres;
    }

    /// <summary>How to reach one of its databases.</summary>
    public string ConnectionString(string database) =>
        new NpgsqlConnectionStringBuilder { Host = _socket, Username = Superuser, Database = database }.ConnectionString;

    /// <summary>Makes a database of that name where there is none.</summary>
    public async Task EnsureDatabaseAsync(string name, CancellationToken cancel = default)
    {
        await using var connection = new NpgsqlConnection(ConnectionString("postgres"));
        await connection.OpenAsync(cancel);
        await using var ask = new NpgsqlCommand("select 1 from pg_database where datname = $1", connection) { Parameters = { new() { Value = name } } };
        if (await ask.ExecuteScalarAsync(cancel) is not null) return;
        try
        {
            await using var make = new NpgsqlCommand($"create database \"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"", connection);
            await make.ExecuteNonQueryAsync(cancel);
        }
        catch (PostgresException problem) when (problem.SqlState is PostgresErrorCodes.DuplicateDatabase or PostgresErrorCodes.UniqueViolation)
        {
            // Another process made it between the question and now; that is what was wanted.
        }
    }

    /// <summary>Stops it, for everybody. Does nothing where it is not running.</summary>
    public async Task StopAsync(CancellationToken cancel = default)
    {
        await using var held = await StartLock.TakeAsync(LockIn(_folder), cancel);
        Stop(_binaries, _user, DataIn(_folder));
    }

    /// <summary>Stops the private database of a home, whoever started it. Does nothing where there is none or it is not running.</summary>
    public static async Task StopAsync(PostgresOptions options, CancellationToken cancel = default)
    {
        var folder = FolderIn(options);
        var user = ServiceUser.For(DataIn(folder));
        if (MajorOf(user, DataIn(folder)) is not { } major) return;
        await using var held = await StartLock.TakeAsync(LockIn(folder), cancel);
        Stop(PostgresBinaries.Find(major), user, DataIn(folder));
    }

    private static string FolderIn(PostgresOptions options) => Path.Combine(Path.GetFullPath(options.Home), "postgres");

    private static string DataIn(string folder) => Path.Combine(folder, "data");

    private static string LockIn(string folder) => Path.Combine(folder, "lock");

    [UnsupportedOSPlatform("windows")]
    private static void MakeFolders(string home, string folder, ServiceUser? user)
    {
        if (!Directory.Exists(home)) Directory.CreateDirectory(home);
        if (Directory.Exists(folder)) return;
        const UnixFileMode owner = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
        Directory.CreateDirectory(folder, owner);
        if (user is null) return;

        // The service user must get through to its own folder, and needs to see nothing on the way.
        File.SetUnixFileMode(home, File.GetUnixFileMode(home) | UnixFileMode.OtherExecute);
        user.Own(folder);
        if (Shell.Run(user, "test", "-w", folder).Good) return;
        Directory.Delete(folder);
        throw new PostgresUnavailableException(
            $"PostgreSQL does not run as root, and the user '{user.Name}' that it steps down to cannot enter {home}. "
            + "Set COLONY_LINEAGE_HOME to a folder that it can get to, for instance /var/lib/colony-lineage.");
    }

    /// <summary>Read as the service user, like all in this folder: root may be kept out of it on some file systems.</summary>
    private static int? MajorOf(ServiceUser? user, string data) =>
        Shell.Run(user, "cat", Path.Combine(data, "PG_VERSION")) is { Good: true, Output: var said } ? int.Parse(said, CultureInfo.InvariantCulture) : null;

    private static void Make(PostgresBinaries binaries, ServiceUser? user, string folder)
    {
        // Made beside its place and then moved there: an initdb that was killed half-way leaves nothing that looks like a cluster.
        var making = Path.Combine(folder, "making");
        Shell.Must(user, "rm", "-rf", making, DataIn(folder));

        // Trust, because nobody else gets as far as the socket; C, so that text has one order on every machine.
        Shell.Must(user, binaries["initdb"], "-D", making, "-U", Superuser, "--auth=trust", "--encoding=UTF8", "--locale=C", "--no-instructions");
        Shell.Must(user, "sh", "-c", "echo \"include 'colony-lineage.conf'\" >> \"$1/postgresql.conf\"", "sh", making);
        Shell.Must(user, "mv", making, DataIn(folder));
    }

    private static bool IsRunning(PostgresBinaries binaries, ServiceUser? user, string data)
    {
        if (!Shell.Run(user, binaries["pg_ctl"], "status", "-D", data).Good) return false;

        // After a restart of the machine the process id in a left-over postmaster.pid can belong to another program; PostgreSQL
        // would take that for itself and refuse to start.
        var program = $"/proc/{FirstLines(user, data)[0].Trim()}/comm";
        if (!File.Exists(program) || File.ReadAllText(program).StartsWith("postgres", StringComparison.Ordinal)) return true;
        Shell.Must(user, "rm", "-f", Path.Combine(data, "postmaster.pid"));
        return false;
    }

    private static void Stop(PostgresBinaries binaries, ServiceUser? user, string data)
    {
        if (!IsRunning(binaries, user, data)) return;
        var socket = SocketOf(user, data);
        Shell.Must(user, binaries["pg_ctl"], "stop", "-D", data, "-m", "fast", "-w", "-t", "60");

        // A socket folder in the temp folder is not left lying about.
        if (Path.GetDirectoryName(socket) != Path.GetDirectoryName(data)) Shell.Run(user, "rmdir", socket);
    }

    [UnsupportedOSPlatform("windows")]
    private static void Start(PostgresBinaries binaries, ServiceUser? user, string folder, bool durable)
    {
        var socket = SocketFolder.For(folder);
        SocketFolder.Make(socket, user);
        var settings = $"""
            # Written by the program at every start.
            listen_addresses = ''
            port = 5432
            unix_socket_directories = '{socket.Replace("'", "''", StringComparison.Ordinal)}'
            unix_socket_permissions = 0700
            max_connections = 200
            shared_buffers = 256MB
            max_wal_size = 2GB
            jit = off
            timezone = 'UTC'
            log_timezone = 'UTC'
            lc_messages = 'C'
            fsync = {(durable ? "on" : "off")}
            synchronous_commit = {(durable ? "on" : "off")}
            full_page_writes = {(durable ? "on" : "off")}

            """;
        Shell.Must(user, "sh", "-c", "printf '%s' \"$2\" > \"$1\"", "sh", Path.Combine(DataIn(folder), "colony-lineage.conf"), settings);
        var log = Path.Combine(folder, "log");
        var said = Shell.Run(user, binaries["pg_ctl"], "start", "-D", DataIn(folder), "-l", log, "-w", "-t", "120");
        if (said.Good) return;
        throw new PostgresUnavailableException(
            $"The private PostgreSQL in {folder} did not start: {(said.Errors + said.Output).Trim()} Its log ({log}) ends: {Shell.Run(user, "tail", "-n", "8", log).Output.Trim()}");
    }

    /// <summary>The running server itself says where its socket is: the fifth line of postmaster.pid.</summary>
    private static string SocketOf(ServiceUser? user, string data) => FirstLines(user, data)[4];

    private static string[] FirstLines(ServiceUser? user, string data) => Shell.Must(user, "head", "-n", "5", Path.Combine(data, "postmaster.pid")).Split('\n');

    /// <summary>A server that another process has just started, or that is mending itself after a crash, needs a moment.</summary>
    private async Task AnswersAsync(CancellationToken cancel)
    {
        for (var deadline = DateTime.UtcNow.AddMinutes(2); ; await Task.Delay(100, cancel))
        {
            try
            {
                await using var connection = new NpgsqlConnection(ConnectionString("postgres") + ";Pooling=false");
                await connection.OpenAsync(cancel);
                return;
            }
            catch (NpgsqlException problem) when (DateTime.UtcNow > deadline)
            {
                throw new PostgresUnavailableException($"The private PostgreSQL in {_folder} runs but does not answer: {problem.Message}");
            }
            catch (NpgsqlException)
            {
            }
        }
    }
}
