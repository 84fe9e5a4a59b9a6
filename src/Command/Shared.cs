using System.CommandLine;
using System.Net.Sockets;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Ledger.Postgres;
using Npgsql;

namespace ColonyLineage.Command;

/// <summary>What all commands share: whose books, and what becomes of failures.</summary>
internal static class Shared
{
    /// <summary>Whose books.</summary>
    public static readonly Option<string?> Outfit = new("--outfit") { Description = "The outfit whose books are meant; 'home' where none is named.", Recursive = true, HelpName = "NAME" };

    /// <summary>More words about failures.</summary>
    public static readonly Option<bool> Verbose = new("--verbose") { Description = "Say where in the program a failure came from.", Recursive = true };

    /// <summary>Gives a command its work. What it throws becomes a line and a code.</summary>
    public static void Does(this System.CommandLine.Command command, Func<ParseResult, CancellationToken, Task<int>> work) =>
        command.SetAction(async (parsed, cancel) =>
        {
            var error = parsed.InvocationConfiguration.Error;
            try
            {
                return await work(parsed, cancel);
            }
            catch (RefusedException refused)
            {
                foreach (var refusal in refused.Refusals)
                    await error.WriteLineAsync($"refused {refusal.Name}{(refusal.Field.Length > 0 ? $" at {refusal.Field}" : "")}: {refusal.Message}");
                return Exit.Refused;
            }
            catch (CannotException cannot)
            {
                await error.WriteLineAsync(cannot.Message);
                return cannot.Code;
            }
            catch (OperationCanceledException) when (cancel.IsCancellationRequested)
            {
                await error.WriteLineAsync("Stopped.");
                return Exit.Failed;
            }
            catch (Exception problem)
            {
                await error.WriteLineAsync(parsed.GetValue(Verbose) ? problem.ToString() : Words(problem));
                return Exit.Failed;
            }
        });

    /// <summary>The name of the outfit that is meant.</summary>
    public static string OutfitOf(ParseResult parsed, string usual = "home") => parsed.GetValue(Outfit) ?? usual;

    /// <summary>Opens the books.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="make">Make them where there are none.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="usual">The outfit that is meant where none is named.</param>
    public static async Task<OutfitLedger> OpenAsync(ParseResult parsed, bool make, CancellationToken cancel, string usual = "home")
    {
        var database = await Database.ResolveAsync(cancel);
        var outfit = OutfitOf(parsed, usual);
        if (!make && !await IsThereAsync(database.ConnectionString, outfit, cancel))
            throw new CannotException($"There is no outfit '{outfit}' in these books. Record or import something first, or name another with --outfit.");
        return await OutfitLedger.OpenAsync(database.ConnectionString, outfit, new LedgerOptions(), cancel);
    }

    private static async Task<bool> IsThereAsync(string connectionString, string outfit, CancellationToken cancel)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var command = source.CreateCommand("select exists (select from pg_namespace where nspname = $1)");
        command.Parameters.Add(new NpgsqlParameter { Value = outfit });
        return (bool)(await command.ExecuteScalarAsync(cancel))!;
    }

    private static string Words(Exception problem) => problem switch
    {
        PostgresException { SqlState: "53300" } => "The database takes no more connections. Try again in a moment.",
        NpgsqlException { InnerException: SocketException or IOException } => $"The database cannot be reached: {OneLine(problem.InnerException.Message)} Look at COLONY_LINEAGE_DATABASE.",
        PostgresException database => $"The database refused: {OneLine(database.MessageText)} ({database.SqlState}).",
        FileNotFoundException file => $"There is no file {file.FileName}.",
        DirectoryNotFoundException or UnauthorizedAccessException or IOException => OneLine(problem.Message),
        PostgresUnavailableException => OneLine(problem.Message),
        _ => $"It failed: {OneLine(problem.Message)} (--verbose says where.)",
    };

    private static string OneLine(string text) => string.Join(' ', text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
}
