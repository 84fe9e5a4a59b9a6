using ColonyLineage.Command.Demo;
using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Core.Tests.Demo;

/// <summary>The demo outfit as it is made by default, on a fixed day; made once for all tests.</summary>
internal static class DemoBooks
{
    public static readonly DateOnly Today = new(2026, 11, 25);

    private static readonly Lazy<IReadOnlyList<Recorded>> Made = new(() => DemoOutfit.Make(new DemoOptions { Today = Today }));

    // Books are for one reader at a time, and tests run side by side.
    private static readonly ThreadLocal<WholeBooks> Opened = new(() => WholeBooks.Of(Made.Value));

    public static IReadOnlyList<Recorded> Recorded => Made.Value;

    public static IEnumerable<Entry> Entries => Made.Value.Select(recorded => recorded.Entry);

    public static WholeBooks Whole => Opened.Value!;
}
