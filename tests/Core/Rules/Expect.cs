using ColonyLineage.Rules;
using Xunit;

namespace ColonyLineage.Core.Tests.Rules;

/// <summary>What came of a request, compared line by line.</summary>
internal static class Expect
{
    public static void Entries(Outcome outcome, params string[] told)
    {
        Assert.True(!outcome.IsRefused, string.Join('\n', outcome.Refusals));
        Assert.Equal(told, outcome.Entries.Select(Named.Tell));
    }

    /// <summary>Each refusal as <c>name field</c>; <paramref name="saying"/> is a piece of what the first one says to do.</summary>
    public static void Refused(Outcome outcome, string saying, params string[] refusals)
    {
        Assert.Empty(outcome.Entries);
        Assert.Equal(refusals, outcome.Refusals.Select(refusal => $"{refusal.Name} {refusal.Field}".TrimEnd()));
        Assert.Contains(saying, outcome.Refusals[0].Message, StringComparison.Ordinal);
    }
}
