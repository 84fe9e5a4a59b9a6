using System.Globalization;
using System.Text.Json.Nodes;
using ColonyLineage.Command;
using ColonyLineage.Support;

namespace ColonyLineage.Server.Tests;

/// <summary>A pedigree into the books, asked about, and out again: Golden/pedigree (see its SOURCE.md) by the command line.</summary>
public sealed class PedigreeCommandTests(PostgresFixture postgres) : TerminalTests(postgres)
{
    private static readonly string Golden = Path.Combine(Repository.Root, "tests/Core/Projections/Sums/Golden/pedigree");
    [Fact]
    public async Task In_asked_and_out_again()
    {
        var (queens, matings) = (Path.Combine(Golden, "pedE_queens.csv"), Path.Combine(Golden, "pedE_matings.csv"));
        Assert.StartsWith("14 entries recorded from 10 queens; 0 were there before.", (await Done("import-pedigree", queens, "--matings", matings)));
        Assert.StartsWith("0 entries recorded from 10 queens", await Done("import-pedigree", queens, "--matings", matings));

        var row = (await Rows("inbreeding", "--queen", "Q4")).Single()!;
        Assert.Equal((.145833m, "Q2"), (row["inbreeding"]!.GetValue<decimal>(), row["mother"]!.GetValue<string>()));
        Assert.Equal(.670833m, (await Rows("relationship", "--queen", "Q4", "--with", "Q5")).Single()!["additive"]!.GetValue<decimal>());
        var planned = (await Rows("planned-mating", "--queen", "Q1", "--drones", "S; Q2", "--alleles", "20")).Single()!;
        Assert.Equal((.145833m, 20m), (planned["brood_inbreeding"]!.GetValue<decimal>(), planned["alleles"]!.GetValue<decimal>()));
        Assert.Equal(0m, (await Rows("planned-mating", "--queen", "Q1")).Single()!["brood_inbreeding"]!.GetValue<decimal>());

        // What is written out gives the same coancestry as what was read in, whatever the order of its rows.
        var (outQueens, outMatings) = (Path.Combine(Folder, "queens.csv"), Path.Combine(Folder, "matings.csv"));
        Assert.StartsWith("10 queens and 4 matings written.", await Done("export-pedigree", outQueens, outMatings));
        var (before, after) = (JsonNode.Parse(await Done("relate", queens, "--matings", matings, "--format", "json"))!, JsonNode.Parse(await Done("relate", outQueens, "--matings", outMatings, "--format", "json"))!);
        var names = before["names"]!.AsArray().Select(name => name!.GetValue<string>()).ToList();
        var others = after["names"]!.AsArray().Select(name => name!.GetValue<string>()).ToList();
        Assert.Equal(names.Order(), others.Order());
        foreach (var one in names)
            foreach (var other in names)
                Assert.Equal(Value(before, names, one, other), Value(after, others, one, other), 1e-12);
    }

    [Theory]
    [InlineData("missing", "relationship")]
    [InlineData("not-found", "relationship", "--queen", "nobody")]
    [InlineData("not-found", "planned-mating", "--queen", "Q1", "--drones", "nobody")]
    [InlineData("out-of-range", "planned-mating", "--queen", "Q1", "--alleles", "1")]
    [InlineData("not-readable", "planned-mating", "--queen", "Q1", "--effective", "many")]
    [InlineData("unknown-word", "line-comparison", "--trait", "beauty")]
    [InlineData("unknown-word", "line-pairs", "--by", "colour")]
    [InlineData("unknown-word", "line-comparison", "--pedigree")]
    [InlineData("unknown-word", "line-comparison", "--living")]
    [InlineData("unknown-word", "line-pairs", "--by", "queen")]
    public async Task What_makes_no_sense_is_refused(string name, params string[] asked)
    {
        await Done("import-pedigree", Path.Combine(Golden, "pedE_queens.csv"));
        var (code, output, error) = await Run(["ask", .. asked]);
        Assert.Equal((3, ""), (code, output));
        Assert.StartsWith($"refused {name}", error);
    }

    /// <summary>With ids in place of names the sheets go together with other answers, and the pedigree is the same.</summary>
    [Fact]
    public async Task The_pedigree_by_ids()
    {
        await Done("import-pedigree", Path.Combine(Golden, "pedE_queens.csv"), "--matings", Path.Combine(Golden, "pedE_matings.csv"));
        var (queens, matings) = (Path.Combine(Folder, "ids.csv"), Path.Combine(Folder, "of.csv"));
        await Done("export-pedigree", queens, matings, "--ids");
        var lines = (await File.ReadAllLinesAsync(queens, TestContext.Current.CancellationToken)).Skip(1).Select(line => line.Split(',')[0]).ToList();
        Assert.All(lines, id => Assert.True(Guid.TryParse(id, out _), id));
        var register = (await Done("ask", "register", "--format", "csv")).Split("\r\n");
        Assert.All(lines, id => Assert.Contains(register, row => row.Contains(id, StringComparison.Ordinal)));
        Assert.Equal(11, (await Done("relate", queens, "--matings", matings)).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public async Task A_ring_is_refused_and_nothing_is_recorded()
    {
        var sheet = Path.Combine(Folder, "ring.csv");
        await File.WriteAllTextAsync(sheet, "id,mother,birth\na,b,2024\nb,a,2023\n", TestContext.Current.CancellationToken);
        var (code, _, error) = await Run("import-pedigree", sheet);
        Assert.Equal(3, code);
        Assert.StartsWith("refused pedigree-ring at row 2", error);
        Assert.Empty(await Rows("inbreeding"));
    }

    private static double Value(JsonNode json, List<string> names, string one, string other) => json["coancestry"]![names.IndexOf(one)]![names.IndexOf(other)]!.GetValue<double>();

    private static async Task<JsonArray> Rows(params string[] asked) => JsonNode.Parse(await Done(["ask", .. asked, "--format", "json"]))!["rows"]!.AsArray();

    private static async Task<string> Done(params string[] args)
    {
        var (code, output, error) = await Run(args);
        Assert.True(code == 0, $"{code.ToString(CultureInfo.InvariantCulture)}: {error}");
        return output;
    }

    private static async Task<(int Code, string Output, string Error)> Run(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        return (await CommandLine.RunAsync(args, output, error, TestContext.Current.CancellationToken), output.ToString(), error.ToString());
    }
}
