using ColonyLineage.Entries;

namespace ColonyLineage.Core.Tests;

/// <summary>Days and intervals, quantities and units, marks, ids derived from names.</summary>
public class ValueTests
{
    [Fact]
    public void An_interval_is_open_at_its_start_and_closed_at_its_end()
    {
        Assert.True(Occurred.TryParse("2026-05-10/2026-07-02", out var seen));
        Assert.Equal(new DateOnly(2026, 7, 2), seen.Day);
        Assert.Equal(new DateOnly(2026, 5, 11), seen.Earliest);
        Assert.False(seen.IsExact);
        Assert.Equal("2026-05-10/2026-07-02", seen.ToString());
    }

    [Fact]
    public void A_day_is_itself_and_so_is_an_interval_of_one_day()
    {
        Occurred day = new DateOnly(2026, 7, 2);
        Assert.True(day.IsExact);
        Assert.Equal("2026-07-02", day.ToString());
        Assert.True(Occurred.TryParse("2026-07-01/2026-07-02", out var next));
        Assert.True(next.IsExact);
    }

    [Theory]
    [InlineData("")]
    [InlineData("2026-7-2")]
    [InlineData("02.07.2026")]
    [InlineData("2026-02-30")]
    [InlineData("2026-07-02T08:00")]
    [InlineData("2026-07-02/2026-07-02")]
    [InlineData("2026-07-02/2026-05-10")]
    [InlineData("2026-05-10/2026-06-01/2026-07-02")]
    [InlineData("/2026-07-02")]
    public void What_is_neither_a_day_nor_an_interval_that_runs_forward_is_not_read(string text) => Assert.False(Occurred.TryParse(text, out _));

    // NIST Special Publication 811 (2008), appendix B.8: exact factors of pound, ounce (avoirdupois), US gallon, US liquid quart
    // and imperial gallon; B.8 prints the ounce and the quart rounded to seven digits, exact is 1/16 lb and 1/4 gal.
    [Theory]
    [InlineData("lb", 0.45359237)]
    [InlineData("oz", 0.028349523125)]
    [InlineData("kg", 1)]
    [InlineData("g", 0.001)]
    public void A_mass_in_kilograms_is_by_NIST_SP_811(string unit, double kilograms) =>
        Assert.Equal((decimal)kilograms, new Quantity(1, unit).InKilograms());

    [Theory]
    [InlineData("gal-us", 3.785411784)]
    [InlineData("qt-us", 0.946352946)]
    [InlineData("gal-imp", 4.54609)]
    [InlineData("L", 1)]
    [InlineData("mL", 0.001)]
    public void A_volume_in_litres_is_by_NIST_SP_811(string unit, double litres) =>
        Assert.Equal((decimal)litres, new Quantity(1, unit).InLitres());

    [Fact]
    public void A_mass_is_no_volume_and_a_piece_is_neither()
    {
        Assert.Null(new Quantity(1, "kg").InLitres());
        Assert.Null(new Quantity(1, "L").InKilograms());
        Assert.Null(new Quantity(1, Units.Piece).InKilograms());
        Assert.Null(new Quantity(1, Units.Piece).InLitres());
        Assert.All(Units.All, unit => Assert.True(Units.IsKnown(unit)));
        Assert.False(Units.IsKnown("KG"));
    }

    // International convention for the marking of queens, by the last digit of the year:
    // 1, 6 white; 2, 7 yellow; 3, 8 red; 4, 9 green; 5, 0 blue.
    [Theory]
    [InlineData(2021, MarkColour.White)]
    [InlineData(2022, MarkColour.Yellow)]
    [InlineData(2023, MarkColour.Red)]
    [InlineData(2024, MarkColour.Green)]
    [InlineData(2025, MarkColour.Blue)]
    [InlineData(2026, MarkColour.White)]
    [InlineData(2027, MarkColour.Yellow)]
    [InlineData(2028, MarkColour.Red)]
    [InlineData(2029, MarkColour.Green)]
    [InlineData(2030, MarkColour.Blue)]
    public void The_mark_that_is_due_goes_by_the_last_digit_of_the_year(int year, MarkColour due) => Assert.Equal(due, QueenMark.DueFor(year));

    // The input (name space and name) is that of RFC 9562, appendix B.2; the id printed there for version 8 is
    // 5c146b14-3c52-8afd-938a-375d0df1fbf6, and its name-based recipe is the one that NamedId says it follows.
    [Fact]
    public void A_named_id_is_the_one_of_RFC_9562_appendix_B_2() =>
        Assert.Equal(new Guid("5c146b14-3c52-8afd-938a-375d0df1fbf6"), NamedId.Of(new Guid("6ba7b810-9dad-11d1-80b4-00c04fd430c8"), "www.example.com"));

    [Fact]
    public void A_named_id_has_version_8_and_the_variant_of_RFC_9562_and_differs_by_name_and_by_space()
    {
        Guid[] spaces = [new("6ba7b810-9dad-11d1-80b4-00c04fd430c8"), new("01890000-0000-7000-8000-000000000001")];
        var ids = (from space in spaces from n in Enumerable.Range(0, 500) select NamedId.Of(space, $"colony {n}")).ToList();
        Assert.All(ids, id => Assert.Equal(8, id.Version));
        Assert.All(ids, id => Assert.Equal(0b10, id.Variant >> 2));
        Assert.Equal(1000, ids.Distinct().Count());
        Assert.Equal(ids[0], NamedId.Of(spaces[0], "colony 0"));
    }

    [Fact]
    public void Ids_are_ordered_as_their_text_is()
    {
        var ids = Enumerable.Range(0, 300).Select(n => new EntryId(NamedId.Of(Guid.Empty, $"{n}"))).ToList();
        Assert.Equal(ids.OrderBy(id => id.ToString(), StringComparer.Ordinal), ids.Order());
    }
}
