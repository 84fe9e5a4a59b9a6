using System.Globalization;
using System.Text.Json.Nodes;
using ColonyLineage.Command;
using ColonyLineage.Support;

namespace ColonyLineage.Server.Tests;

/// <summary>The commands that need no books: a pedigree's coancestry, a mixed model. The golden tables' sources stand beside them, in SOURCE.md.</summary>
public sealed class WithoutBooksTests : IDisposable
{
    private static readonly string Golden = Path.Combine(Repository.Root, "tests/Core/Projections/Sums/Golden");
    private readonly string _folder = Directory.CreateTempSubdirectory("lineage-tests-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("pedA_theta.csv", "pedA_pedigree.csv")]
    [InlineData("pedE_theta_expected.csv", "pedE_queens.csv", "--matings", "pedE_matings.csv")]
    [InlineData("pedE_theta_expected_random_drones.csv", "pedE_queens.csv", "--matings", "pedE_matings.csv", "--shares", "random")]
    public async Task Coancestry_as_csv_and_as_json(string expected, params string[] args)
    {
        string[] files = [.. args.Select(arg => arg.EndsWith(".csv", StringComparison.Ordinal) ? Path.Combine(Golden, "pedigree", arg) : arg)];
        var golden = (await File.ReadAllLinesAsync(Path.Combine(Golden, "pedigree", expected), TestContext.Current.CancellationToken)).Select(line => line.Replace("\"", "").Split(',')).ToList();
        var here = (await Done(["relate", .. files])).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(',')).ToList();
        Assert.Equal(golden[0], here[0]);
        Assert.Equal(golden.Count, here.Count);
        var json = JsonNode.Parse(await Done(["relate", .. files, "--format", "json"]))!;
        Assert.Equal(golden[0][1..], json["names"]!.AsArray().Select(name => name!.GetValue<string>()));
        for (var row = 1; row < golden.Count; row++)
        {
            Assert.Equal(golden[row][0], here[row][0]);
            for (var column = 1; column < golden.Count; column++)
            {
                var value = double.Parse(golden[row][column], CultureInfo.InvariantCulture);
                Assert.Equal(value, double.Parse(here[row][column], CultureInfo.InvariantCulture), 1e-12);
                Assert.Equal(value, json["coancestry"]![row - 1]![column - 1]!.GetValue<double>(), 1e-12);
            }
        }
    }

    [Theory]
    [InlineData("Penicillin.csv", "Penicillin_exact_varcomp.csv", "--trait", "diameter", "--random", "plate,sample")]
    [InlineData("Pastes.csv", "Pastes_exact_varcomp.csv", "--trait", "strength", "--random", "batch,cask", "--nested")]
    [InlineData("lines_yards.csv", "lines_yards_fixedYS_exact_varcomp.csv", "--trait", "honey", "--fixed", "yard:season,age", "--random", "line,mother")]
    public async Task A_model_as_json_csv_and_table(string data, string expected, params string[] args)
    {
        var golden = (await File.ReadAllLinesAsync(Path.Combine(Golden, "mixed-model", expected), TestContext.Current.CancellationToken)).Skip(1).Select(line => double.Parse(line.Split(',')[1], CultureInfo.InvariantCulture)).ToList();
        string[] command = ["fit", Path.Combine(Golden, "mixed-model", data), .. args];
        var json = JsonNode.Parse(await Done([.. command, "--format", "json"]))!;
        Assert.True(json["converged"]!.GetValue<bool>());
        Assert.Equal(golden.Count, json["variances"]!.AsArray().Count);
        for (var i = 0; i < golden.Count; i++) Assert.Equal(golden[i], json["variances"]![i]!["variance"]!.GetValue<double>(), 1e-6 * golden[i]);
        Assert.StartsWith("part,name,level,value,standard_error,reliability\r\n", await Done([.. command, "--format", "csv"]));
        Assert.Contains("reliability", await Done(command));
    }

    /// <summary>The pedigree with matings, and a trait by which the sheets of the golden tables are tried: variances are not golden there, so all is held against the dense model with A by hand elsewhere.</summary>
    [Fact]
    public async Task A_model_with_a_pedigree()
    {
        string[] pedigree = ["--pedigree", Path.Combine(Golden, "pedigree", "pedE_queens.csv"), "--matings", Path.Combine(Golden, "pedigree", "pedE_matings.csv")];
        var data = Write("queen,weight\nQ1,34\nQ2,41\nQ3,30\nQ4,43\nQ5,37\nQ6,38\nQ7,35\n");
        var json = JsonNode.Parse(await Done(["fit", data, "--trait", "weight", "--random", "queen", "--related", "queen", .. pedigree, "--format", "json"]))!;
        Assert.Equal(["B", "U", "Q1", "Q2", "S", "Q3", "Q4", "Q5", "Q6", "Q7"], json["predictions"]!.AsArray().Select(one => one!["level"]!.GetValue<string>()));
        Assert.True(json["converged"]!.GetValue<bool>());
        var (code, _, error) = await Run(["fit", data, "--trait", "weight", "--random", "queen", "--related", "queen"]);
        Assert.Equal(3, code);
        Assert.StartsWith("refused missing at pedigree: ", error);
    }

    [Theory]
    [InlineData("id,mother\na,b\nb,a\n", "refused pedigree-ring at row 2, mother: ")]
    [InlineData("id,mother\na,b\n", "refused not-found at row 2, mother: ")]
    [InlineData("id,sex,mother,father\nd,1,,\na,2,d,\n", "refused wrong-parent at row 3, mother: ")]
    [InlineData("id\na\n", "refused no-column at mother: ")]
    [InlineData("id,mother\n", "refused no-rows")]
    [InlineData("id,mother\na\n", "refused ragged-row at row 2")]
    public async Task A_bad_pedigree_is_refused(string csv, string words)
    {
        var (code, output, error) = await Run("relate", Write(csv));
        Assert.Equal((3, ""), (code, output));
        Assert.StartsWith(words, error);
    }

    [Theory]
    [InlineData("y,g\n1,a\nx,b\n3,a\n", "refused not-a-number at row 3, y: ")]
    [InlineData("y,h\n1,a\n", "refused no-column at g: ")]
    [InlineData("y,g\n1,a\n", "refused too-few-records at y: ")]
    public async Task A_model_that_makes_no_sense_is_refused(string csv, string words)
    {
        var (code, output, error) = await Run("fit", Write(csv), "--trait", "y", "--random", "g");
        Assert.Equal((3, ""), (code, output));
        Assert.StartsWith(words, error);
    }

    private string Write(string csv)
    {
        var file = Path.Combine(_folder, "sheet.csv");
        File.WriteAllText(file, csv);
        return file;
    }

    private static async Task<string> Done(string[] args)
    {
        var (code, output, error) = await Run(args);
        Assert.Equal((0, ""), (code, error));
        return output;
    }

    private static async Task<(int Code, string Output, string Error)> Run(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        return (await CommandLine.RunAsync(args, output, error, TestContext.Current.CancellationToken), output.ToString(), error.ToString());
    }
}
