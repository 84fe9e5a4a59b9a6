using ColonyLineage.Projections.Sums;
using static ColonyLineage.Core.Tests.Projections.Sums.GoldenFile;

namespace ColonyLineage.Core.Tests.Projections.Sums;

/// <summary>Tukey's range against R 4.2.2 (ptukey, qtukey); to two digits these are also those of Pearson and Hartley's table 29 (from memory).</summary>
public class StudentizedRangeTests
{
    [Theory]
    [InlineData(3, 10, 3.87677674919, .922896689161)]
    [InlineData(6, 12, 4.75023144679, .793960160551)]
    [InlineData(2, 10, 3.15106417688, .967170246058)]
    [InlineData(3, 20, 3.57793458153, .944108150918)]
    [InlineData(6, 12.7, 4.70676297397, .797556023181)]
    [InlineData(10, 60, 4.64632396768, .697215821845)]
    [InlineData(4, 3, 6.82452645082, .759510076541)]
    [InlineData(5, 1e6, 3.85765552685, .903661536021)]
    public void Range(int means, double freedom, double quantile, double below)
    {
        Near(below, StudentizedRange.Below(3.5, means, freedom), 1e-8, "R ptukey");
        Near(quantile, StudentizedRange.Quantile(.95, means, freedom), 1e-4, "R qtukey");
        Near(.95, StudentizedRange.Below(quantile, means, freedom), 1e-5, "R qtukey");
    }

    [Fact]
    public void Of_two_means_it_is_students_t()
    {
        // t(.975; 10) = 2.228139 (any table), times the root of 2.
        Near(2.228139 * Math.Sqrt(2), StudentizedRange.Quantile(.95, 2, 10), 2e-6, "Student's t");
        Assert.Equal(0, StudentizedRange.Below(0, 3, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Below(1, 1, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Below(1, 3, 0));
    }
}
