using ColonyLineage.Projections.Sums.Mixed;

namespace ColonyLineage.Core.Tests.Projections.Sums.Mixed;

/// <summary>A model out of the columns of a sheet, and what is refused by name.</summary>
public class ModelSheetTests
{
    private static readonly string[] Columns = ["y", "yard", "season", "age", "line", "mother"];

    private static readonly string[][] Rows =
    [
        ["1", "A", "2025", "0", "L1", "m1"], ["2", "A", "2026", "1", "L1", "m2"], ["", "A", "2026", "1", "L2", "m1"], ["4", "B", "2025", "", "L2", "m1"], ["5", "B", "2025", "2", "L2", "m2"], ["7", "B", "2026", "0", "L1", ""],
        ["3", "A", "2025", "1", "L2", "m1"], ["6", "B", "2025", "0", "L1", "m1"], ["8", "B", "2026", "1", "L1", "m2"],
    ];

    [Fact]
    public void Terms_as_they_are_written()
    {
        var sheet = Of("y", ["yard:season", "age"], ["line"]).Sheet!;
        Assert.Equal(["A 2025", "A 2026", "B 2025", "B 2026"], sheet.Fixed.Groups);
        Assert.Equal(["age"], sheet.Fixed.Columns);
        Assert.Equal((7, 2), (sheet.Y.Count, sheet.LeftOut));
        Assert.Equal(["2025", "2026"], Of("y", ["factor(season)"], ["line"]).Sheet!.Fixed.Groups);
        Assert.Equal(["mean", "season"], Of("y", ["season"], ["line"]).Sheet!.Fixed is var of ? of.Groups.Concat(of.Columns) : []);
        Assert.Equal(["line L2"], Of("y", ["yard", "line"], ["mother"]).Sheet!.Fixed.Columns);
    }

    [Fact]
    public void Nested_names_are_read_together()
    {
        Assert.Equal(["m1", "m2"], Of("y", [], ["line", "mother"]).Sheet!.Random[1].Levels);
        var nested = Of("y", [], ["line", "mother"], nested: true).Sheet!.Random[1];
        Assert.Equal(("line:mother", "L1 m1|L1 m2|L2 m1|L2 m2"), (nested.Name, string.Join('|', nested.Levels)));
        // The fifth row with a trait has no mother.
        Assert.Equal(-1, nested.LevelOf[4]);
    }

    [Theory]
    [InlineData("x", "", "line", ModelSheet.NoColumn)]
    [InlineData("y", "yard:x", "line", ModelSheet.NoColumn)]
    [InlineData("y", "", "x", ModelSheet.NoColumn)]
    [InlineData("yard", "", "line", ModelSheet.NotANumber)]
    [InlineData("y", "yard:season,age", "line", ModelSheet.TooFewRecords)]
    public void Refused_by_name(string trait, string taken, string random, string name)
    {
        var (sheet, refusals) = Of(trait, taken.Split(',', StringSplitOptions.RemoveEmptyEntries), random.Split(','), rows: name == ModelSheet.TooFewRecords ? 2 : Rows.Length);
        Assert.Null(sheet);
        Assert.Equal(name, refusals[0].Name);
    }

    [Fact]
    public void Too_many_levels_are_refused() => Assert.Equal(
        ModelSheet.TooManyLevels,
        ModelSheet.Of(["y", "g"], [.. Enumerable.Range(0, ModelSheet.MostLevels + 1).Select(i => (i + 2, (IReadOnlyList<string>)[$"{i}", $"g{i}"]))], "y", [], ["g"]).Refusals[0].Name);

    [Theory]
    [InlineData("mother", "related", "'mother' is none of the random terms: line.")]
    [InlineData("line", "line", "'L2' is in no row of the pedigree. Add one, with her mother empty where she is not known.")]
    public void What_cannot_be_related_is_refused(string term, string field, string message)
    {
        var pedigree = new ColonyLineage.Projections.Relationship.QueenPedigree();
        pedigree.AddFounder();
        var refusal = Assert.Single(Of("y", [], ["line"]).Sheet!.Related(term, pedigree, ["L1"]).Refusals);
        Assert.Equal((Entries.Refusals.NotFound, field, message), (refusal.Name, refusal.Field, refusal.Message));
    }

    /// <summary>The two ways give one answer: 1,001 levels go by the sparse equations, 1,000 by whole matrices.</summary>
    [Fact]
    public void Many_levels_go_by_the_sparse_equations()
    {
        ModelSheet Levels(int count) => ModelSheet.Of(["y", "g"], [.. Enumerable.Range(0, 2 * count).Select(i => (i + 2, (IReadOnlyList<string>)[$"{(i % count * 7 % 11) + (i % 3)}", $"g{i % count}"]))], "y", [], ["g"]).Sheet!;
        Assert.IsType<MixedFit>(Levels(ModelSheet.Dense).Reml());
        Assert.IsType<SparseFit>(Levels(ModelSheet.Dense + 1).Reml());
    }

    private static (ModelSheet? Sheet, IReadOnlyList<Entries.Refusal> Refusals) Of(string trait, string[] taken, string[] random, bool nested = false, int? rows = null) =>
        ModelSheet.Of(Columns, [.. Rows.Take(rows ?? Rows.Length).Select((row, i) => (i + 2, (IReadOnlyList<string>)row))], trait, taken, random, nested);
}
