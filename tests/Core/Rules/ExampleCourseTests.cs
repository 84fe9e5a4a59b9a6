using ColonyLineage.Entries;
using ColonyLineage.Rules;

namespace ColonyLineage.Core.Tests.Rules;

/// <summary>
/// The examples are data with a source. The days 42 to 56 (UK SPC AN 00561/2015), 15 to 40 °C (UK SPC AN 01316/2014) and 10 to 29.5 °C, 7 days, withdrawal
/// 0 (leaflet Vm 40476/4000) are those of the sources named in them.
/// </summary>
public class ExampleCourseTests
{
    [Fact]
    public void Each_can_be_recorded_and_says_that_the_label_binds_and_where_it_is_from() => Assert.All(ExampleCourses.All, course =>
    {
        Assert.Empty((course with { Id = new(Guid.NewGuid()), Act = new(Guid.NewGuid()) }).Check());
        Assert.StartsWith("example, your label binds; ", course.Source);
        Assert.NotNull(course.Country);
        Assert.Same(course, ExampleCourses.Named(course.Course));
    });

    [Fact]
    public void Limits_are_those_of_the_sources()
    {
        var thymol = ExampleCourses.All.Single(course => course.Substance == "thymol");
        Assert.Equal((15m, 40m, true, true, 2m), (thymol.CoolestMaximum, thymol.WarmestMaximum, thymol.SupersOff, thymol.WholeYard, thymol.FullDoses));
        var amitraz = ExampleCourses.All.Single(course => course.Substance == "amitraz");
        Assert.Equal((42, 56, true, 14, DosedBy.FramesOfBees), (amitraz.DaysInAtLeast, amitraz.DaysInAtMost, amitraz.TakenOut, amitraz.WithholdingDays, amitraz.DoseBy));
        var formic = ExampleCourses.All.Single(course => course.Substance == "formic acid");
        Assert.Equal((10m, 29.5m, 7, 7, 0), (formic.CoolestMaximum, formic.WarmestMaximum, formic.DaysInAtLeast, formic.DaysInAtMost, formic.WithholdingDays));
    }

    /// <summary>How much is given stands on the label: no field and no word of an example is an amount to give.</summary>
    [Fact]
    public void No_example_names_an_amount() => Assert.All(ExampleCourses.All, course => Assert.DoesNotMatch(@"\d\s?(g|mL|ml|L)\b(?! (anhydrous|dihydrate))", $"{course.Source} {course.Note}"));
}
