using Spectre.Console;

namespace ColonyLineage.Command.Output;

/// <summary>A bar on standard error while long work goes on; nothing where nobody looks at one.</summary>
internal static class Progress
{
    /// <summary>Does the work under a bar.</summary>
    public static async Task<T> RunAsync<T>(TextWriter error, string what, Func<IProgress<(string Step, double Done)>, Task<T>> work)
    {
        if (!ReferenceEquals(error, Console.Error) || Console.IsErrorRedirected) return await work(new Nobody());
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(error) });
        return await console.Progress().AutoClear(true).Columns(new SpinnerColumn(), new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new ElapsedTimeColumn())
            .StartAsync(async context =>
            {
                var task = context.AddTask(Markup.Escape(what));
                var result = await work(new Bar(task));
                task.Value = task.MaxValue;
                return result;
            });
    }

    private sealed class Bar(ProgressTask task) : IProgress<(string Step, double Done)>
    {
        public void Report((string Step, double Done) value)
        {
            task.Description = Markup.Escape(value.Step);
            task.Value = Math.Clamp(value.Done, 0, 1) * task.MaxValue;
        }
    }

    private sealed class Nobody : IProgress<(string Step, double Done)>
    {
        public void Report((string Step, double Done) value)
        {
        }
    }
}
