using System.Text.Json.Nodes;
using ColonyLineage.Command;
using ColonyLineage.Entries;
using ColonyLineage.Support;

namespace ColonyLineage.Server.Tests;

/// <summary>The command line, run as its users do but in this process: what it prints and how it ends.</summary>
public sealed class CommandTests(PostgresFixture postgres) : TerminalTests(postgres)
{
    [Fact]
    public async Task Recorded_asked_voided_exported_and_restored()
    {
        var told = new Told();
        var file = Write("entries.json", RunningServer.Tagged(told.Opened("Kiln"), told.Colony("12", "7", out var colony), told.Dose(colony, 1)));
        Assert.Equal((0, "3 entries recorded; 0 were there before.", ""), await Run("record", file));
        Assert.Equal((0, "0 entries recorded; 3 were there before.", ""), await Run("record", file));

        var (code, table, _) = await Run("ask", "dose-completeness");
        Assert.Equal(0, code);
        Assert.Contains("Kiln", table);
        Assert.All(table.Split('\n'), line => Assert.True(line.Length <= 100, line));
        var json = JsonNode.Parse((await Run("ask", "dose-completeness", "--yard", "kiln", "--format", "json")).Output)!;
        Assert.Equal(1m, json["rows"]![0]!["had"]!.GetValue<decimal>());
        Assert.StartsWith("yard_id,yard,", (await Run("ask", "dose-completeness", "--format", "csv")).Output);

        Assert.Equal((0, "3 entries voided.", ""), await Run("void", "--act", told.Act.ToString(), "--why", "wrong page"));
        Assert.Empty(JsonNode.Parse((await Run("ask", "dose-completeness", "--format", "json")).Output)!["rows"]!.AsArray());
        Assert.Equal(0, (await Run("rebuild")).Code);
        Assert.Equal(0, (await Run("status", "--check")).Code);

        var export = Path.Combine(Folder, "books.jsonl");
        Assert.Equal(0, (await Run("export", export)).Code);
        var lines = await File.ReadAllLinesAsync(export, TestContext.Current.CancellationToken);
        Assert.Equal(6, lines.Length);
        Assert.Equal(0, (await Run("--outfit", "copy", "record", "--restore", export)).Code);
        Assert.Equal(string.Join('\n', lines), (await Run("--outfit", "copy", "export", "-")).Output);
        var (again, _, why) = await Run("--outfit", "copy", "record", "--restore", export);
        Assert.Equal(3, again);
        Assert.StartsWith("refused outfit-not-empty at outfit: ", why);
        // Into books that hold something an export goes as entries sent again.
        Assert.Equal((0, "0 entries recorded; 6 were there before.", ""), await Run("--outfit", "copy", "record", export));
    }

    [Fact]
    public async Task An_act_by_its_request()
    {
        var told = new Told();
        Assert.Equal(0, (await Run("record", Write("yard.json", RunningServer.Tagged(told.Opened("Kiln"), told.Colony("12", "7", out _))))).Code);
        var request = Write("treat.json", new JsonObject { ["act"] = Guid.NewGuid().ToString(), ["on"] = "2026-08-01", ["yard"] = told.Yard.ToString(), ["dose"] = new JsonObject { ["course"] = "T", ["doses"] = 1 } });
        Assert.Equal((0, "1 entries recorded; 0 were there before.", ""), await Run("record", "--do", "treat-yard", request));
        var (code, _, error) = await Run("record", "--do", "combine", request);
        Assert.Equal(3, code);
        Assert.StartsWith("refused not-readable", error);
    }

    [Fact]
    public async Task A_sheet_with_a_bad_cell()
    {
        var map = Path.Combine(Folder, "map.json");
        await File.WriteAllTextAsync(map, """
            { "name": "cli", "key": "{colony}", "dates": ["yyyy-MM-dd"], "create": ["colonies"],
              "entries": [ { "kind": "washed", "on": "{day}", "colony": "{colony}", "mites": "{mites}", "bees": "{bees}" } ] }
            """, TestContext.Current.CancellationToken);
        var sheet = Path.Combine(Folder, "sheet.csv");
        await File.WriteAllTextAsync(sheet, "colony,day,mites,bees\r\n1,2026-08-01,3,300\r\n2,2026-08-01,-4,300\r\n", TestContext.Current.CancellationToken);
        var (code, output, error) = await Run("import", sheet, "--map", map, "--dry-run");
        Assert.Equal(3, code);
        Assert.StartsWith("refused out-of-range at row 3, mites: ", error);
        Assert.Contains("1  washed", output);
        Assert.Equal(3, (await Run("import", sheet, "--map", map)).Code);
        Assert.Empty(JsonNode.Parse((await Run("ask", "mite-watch", "--format", "json")).Output)!["rows"]!.AsArray());
        var bad = Path.Combine(Folder, "bad.csv");
        (code, output, _) = await Run("import", sheet, "--map", map, "--skip-bad", bad);
        Assert.Equal(0, code);
        Assert.Contains("2 entries recorded from 1 rows", output);
        Assert.Equal("colony,day,mites,bees\r\n2,2026-08-01,-4,300\r\n", await File.ReadAllTextAsync(bad, TestContext.Current.CancellationToken));
        (_, output, _) = await Run("import", sheet, "--map", map, "--skip-bad", bad);
        Assert.Contains("0 entries recorded", output);
        Assert.DoesNotContain("voided", output);

        // An import that was taken back does not come again by itself; another name in the mapping makes it another import.
        var act = output.Split("--act ")[1].Split(' ')[0];
        Assert.Equal((0, "2 entries voided.", ""), await Run("void", "--act", act, "--why", "wrong sheet"));
        Assert.Contains("voided and stay so: to record them again, give the mapping another name.", (await Run("import", sheet, "--map", map, "--skip-bad", bad)).Output);
        await File.WriteAllTextAsync(map, (await File.ReadAllTextAsync(map, TestContext.Current.CancellationToken)).Replace("\"cli\"", "\"cli again\""), TestContext.Current.CancellationToken);
        Assert.Contains("2 entries recorded from 1 rows; 0 were there before.", (await Run("import", sheet, "--map", map, "--skip-bad", bad)).Output);
        Assert.Equal(3, (await Run("import", map, "--map", sheet)).Code);
    }

    [Theory]
    [InlineData(0, "--help")]
    [InlineData(0, "ask", "--help")]
    [InlineData(0, "--version")]
    [InlineData(2)]
    [InlineData(2, "dance")]
    [InlineData(2, "ask")]
    [InlineData(2, "ask", "dance")]
    [InlineData(2, "ask", "register", "--format", "xml")]
    [InlineData(2, "ask", "register", "--colour", "red")]
    [InlineData(2, "void", "--why", "x")]
    [InlineData(2, "void", "not-an-id", "--why", "x")]
    [InlineData(2, "void", "0197c5a2-7b1e-7c3a-9a55-0e6b7a2f4c10")]
    [InlineData(2, "import", "sheet.csv")]
    [InlineData(3, "ask", "register", "--as-of", "yesterday")]
    [InlineData(3, "ask", "register", "--seasons-back", "2")]
    [InlineData(3, "--outfit", "Not A Name", "serve", "--urls", "http://127.0.0.1:0")]
    [InlineData(3, "serve", "--urls", "http://0.0.0.0:5280")]
    [InlineData(1, "ask", "register")]
    [InlineData(1, "--outfit", "nobody", "status")]
    [InlineData(1, "record", "/no/such/file.json")]
    public async Task How_it_ends(int code, params string[] words)
    {
        var (ended, output, error) = await Run(words);
        Assert.True(code == ended, $"{ended}: {output}{error}");
        Assert.Equal(code != 0, error.Length > 0);
        Assert.DoesNotContain("   at ", error);
        if (code == 3) Assert.StartsWith("refused ", error);
    }

    [Theory]
    [InlineData("serve")]
    [InlineData("import")]
    [InlineData("ask")]
    [InlineData("record")]
    [InlineData("void")]
    [InlineData("rebuild")]
    [InlineData("export")]
    [InlineData("status")]
    public async Task Help_teaches_with_an_example(string command)
    {
        var (code, output, _) = await Run(command, "--help");
        Assert.Equal(0, code);
        Assert.Contains($"Example:\n  lineage ", output);
        Assert.Contains($" {command} ", output[output.IndexOf("Example:", StringComparison.Ordinal)..] + " ");
    }

    [Fact]
    public async Task A_database_that_is_not_there_is_one_plain_line()
    {
        Environment.SetEnvironmentVariable("COLONY_LINEAGE_DATABASE", "Host=127.0.0.1;Port=1;Username=nobody;Database=none;Timeout=2");
        var (code, output, error) = await Run("status");
        Assert.Equal((1, ""), (code, output));
        Assert.StartsWith("The database cannot be reached: ", error);
        Assert.DoesNotContain('\n', error);
    }

    private string Write(string name, JsonNode json)
    {
        var file = Path.Combine(Folder, name);
        File.WriteAllText(file, json.ToJsonString());
        return file;
    }

    private static async Task<(int Code, string Output, string Error)> Run(params string[] words)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = await CommandLine.RunAsync(words, output, error, TestContext.Current.CancellationToken);
        // How many rows a table has is said beside it, for people.
        return (code, output.ToString().TrimEnd('\n'), error.ToString().TrimEnd('\n'));
    }
}
