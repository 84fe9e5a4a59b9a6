using System.Diagnostics;

namespace ColonyLineage.Ledger.Postgres;

/// <summary>Runs a program to its end and keeps what it said.</summary>
internal static class Shell
{
    internal readonly record struct Said(int Code, string Output, string Errors)
    {
        public bool Good => Code == 0;
    }

    /// <summary>Runs it, as another user where one is named.</summary>
    public static Said Run(ServiceUser? user, string program, params IEnumerable<string> arguments)
    {
        var line = user is null ? [program, .. arguments] : user.StepDown([program, .. arguments]);
        var start = new ProcessStartInfo(line[0])
        {
            // A folder that every user can enter: PostgreSQL complains where it cannot enter the one that it is started in.
            WorkingDirectory = "/",
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var argument in line.Skip(1)) start.ArgumentList.Add(argument);

        // The caller's own PostgreSQL settings are meant for other servers, and messages are wanted in one language.
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("PG", StringComparison.Ordinal)).ToList()) start.Environment.Remove(name);
        start.Environment["LC_ALL"] = "C";

        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{line[0]} did not start.");
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new Said(process.ExitCode, output, errors.GetAwaiter().GetResult());
    }

    /// <summary>Runs it and throws what it said where it failed.</summary>
    public static string Must(ServiceUser? user, string program, params IEnumerable<string> arguments)
    {
        var said = Run(user, program, arguments);
        return said.Good ? said.Output : throw new PostgresUnavailableException($"{program} failed: {(said.Errors + said.Output).Trim()}");
    }
}
