using ColonyLineage.Entries;
using ColonyLineage.Projections.Relationship;

namespace ColonyLineage.Core.Tests.Projections.Relationship;

/// <summary>Pedigrees from sheets: both forms, in any order of the rows, and what is refused by name.</summary>
public class PedigreeSheetTests
{
    [Fact]
    public void Rows_may_stand_in_any_order()
    {
        BeeLine[] lines = [new(2, "daughter", "2", "queen", "drone"), new(3, "drone", "1", "other", ""), new(4, "other", "2", "", ""), new(5, "queen", "2", "", "")];
        var (bees, refusals) = PedigreeSheet.WithDrones(lines);
        Assert.Empty(refusals);
        Assert.Equal(["other", "drone", "queen", "daughter"], bees.Select(bee => bee.Id));
        Assert.Equal((2, 1), (bees[3].Mother!.Value, bees[3].Father!.Value));

        var (pedigree, names, none) = PedigreeSheet.WithMatings([new(2, "d", "q", "m"), new(3, "q", "", ""), new(4, "p", "", "")], [new(2, "m", "q", "p;q", "")]);
        Assert.Empty(none);
        Assert.Equal(["q", "p", "d"], names);
        // Half the drones are her own: θ(q,q) = .5, half of it.
        Assert.Equal(.25, pedigree!.Inbreeding(2));
    }

    // Two daughters of a mother whose mating nobody recorded: of one open mating, .25 + .5/12 of each other's genes by half.
    [Fact]
    public void Daughters_without_a_mating_are_sisters_of_an_open_one()
    {
        var (pedigree, _, _) = PedigreeSheet.WithMatings([new(2, "m", "", ""), new(3, "a", "m", ""), new(4, "b", "m", "")], []);
        Assert.Equal(.25 + (.5 / 12), 2 * pedigree!.Coancestry(1, 2), 12);
    }

    [Theory]
    [InlineData("a,2,a,", PedigreeSheet.Ring)]
    [InlineData("a,2,b,|b,2,a,", PedigreeSheet.Ring)]
    [InlineData("a,2,b,|b,2,c,|c,2,a,|d,2,c,", PedigreeSheet.Ring)]
    [InlineData("a,3,,", Refusals.UnknownWord)]
    [InlineData("a,2,b,", Refusals.NotFound)]
    [InlineData("a,2,,b", Refusals.NotFound)]
    [InlineData("a,2,,|a,2,,", Refusals.NamedTwice)]
    [InlineData(",2,,", Refusals.Missing)]
    [InlineData("d,1,,|a,2,d,", PedigreeSheet.WrongParent)]
    [InlineData("q,2,,|a,2,,q", PedigreeSheet.WrongParent)]
    [InlineData("d,1,,|e,1,,d", PedigreeSheet.WrongParent)]
    public void With_drones_it_is_refused_by_name(string rows, string name)
    {
        var (bees, refusals) = PedigreeSheet.WithDrones([.. rows.Split('|').Select((row, i) => row.Split(',') is var cell ? new BeeLine(i + 2, cell[0], cell[1], cell[2], cell[3]) : null!)]);
        Assert.Empty(bees);
        Assert.Equal(name, Assert.Single(refusals).Name);
        Assert.StartsWith("row ", refusals[0].Field);
    }

    [Theory]
    [InlineData("a,a,", "", PedigreeSheet.Ring)]
    [InlineData("a,b,|b,a,", "", PedigreeSheet.Ring)]
    [InlineData("q,,|a,q,m", "m,q,a,", PedigreeSheet.Ring)] // Her own daughter's drones, before she had the daughter.
    [InlineData("a,b,", "", Refusals.NotFound)]
    [InlineData("q,,|a,q,m", "", Refusals.NotFound)]
    [InlineData("q,,", "m,q,x,", Refusals.NotFound)]
    [InlineData("q,,", "m,x,,", Refusals.NotFound)]
    [InlineData("q,,|p,,|a,p,m", "m,q,,", PedigreeSheet.WrongParent)]
    [InlineData("q,,|a,,m", "m,q,,", PedigreeSheet.WrongParent)]
    [InlineData("q,,", "m,q,,0", Refusals.OutOfRange)]
    [InlineData("q,,", "m,q,,many", Refusals.OutOfRange)]
    [InlineData("q,,", "m,q,,|m,q,,", Refusals.NamedTwice)]
    public void With_matings_it_is_refused_by_name(string queens, string matings, string name)
    {
        var (pedigree, _, refusals) = PedigreeSheet.WithMatings(
            [.. queens.Split('|').Select((row, i) => row.Split(',') is var cell ? new QueenLine(i + 2, cell[0], cell[1], cell[2]) : null!)],
            [.. matings.Split('|', StringSplitOptions.RemoveEmptyEntries).Select((row, i) => row.Split(',') is var cell ? new MatingLine(i + 2, cell[0], cell[1], cell[2], cell[3]) : null!)]);
        Assert.Null(pedigree);
        Assert.Equal(name, Assert.Single(refusals).Name);
    }

    [Fact]
    public void The_ring_is_named()
    {
        var (_, refusals) = PedigreeSheet.WithDrones([new(2, "d", "2", "c", ""), new(3, "a", "2", "b", ""), new(4, "b", "2", "c", ""), new(5, "c", "2", "a", "")]);
        Assert.Contains("comes of", refusals[0].Message);
        Assert.DoesNotContain("d comes", refusals[0].Message);
    }
}
