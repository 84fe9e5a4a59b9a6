using ColonyLineage.Command;
using ColonyLineage.Entries;
using ColonyLineage.Support;

namespace ColonyLineage.Server.Tests;

/// <summary>Losses and forecasts on the terminal.</summary>
public sealed class LossViewsCommandTests(PostgresFixture postgres) : TerminalTests(postgres)
{
    [Fact]
    public async Task Each_is_a_table_of_100_columns_and_what_is_assumed_stands_below_it()
    {
        var told = new Told();
        var file = Path.Combine(Folder, "entries.json");
        await File.WriteAllTextAsync(
            file,
            RunningServer.Tagged(
                told.Opened("Kiln"), told.Colony("1", "1", out _), told.Colony("2", "2", out var dead), told.Wash(dead, 3) with { On = new DateOnly(2025, 12, 30) },
                new FoundDead { Id = Told.Id(), On = new DateOnly(2026, 1, 10), Act = told.Act, Colony = dead }).ToJsonString(),
            TestContext.Current.CancellationToken);
        Assert.Equal(0, (await Run("record", file)).Code);
        foreach (var view in new[] { "wintering", "paradox", "how-long", "queens-last", "efficacy", "mite-forecast" })
        {
            var (code, table) = await Run("ask", view);
            Assert.Equal(0, code);
            Assert.All(table.Split('\n'), line => Assert.True(line.Length <= 100, line));
        }

        // One of two: 0.5. R 4.2.2, prop.test(1, 2, correct = FALSE): 0.0945 to 0.9055.
        Assert.Matches(@"2025 +winter +all +all +2 +1 +0\.5 +0\.0945 +0\.9055", (await Run("ask", "wintering", "--period", "winter", "--winter", "2025", "--by", "all")).Output);
        Assert.Contains("\nAssumed: No dose is given meanwhile, and none given before still works.\n", (await Run("ask", "mite-forecast")).Output);
    }

    private static async Task<(int Code, string Output)> Run(params string[] words)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        return (await CommandLine.RunAsync(words, output, error, TestContext.Current.CancellationToken), output.ToString());
    }
}
