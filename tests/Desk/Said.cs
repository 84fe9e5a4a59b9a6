namespace ColonyLineage.Desk.Tests;

/// <summary>What a page says, and in which order.</summary>
internal static class Said
{
    /// <summary>All pieces are there.</summary>
    public static void Holds(string text, params string[] pieces) => Assert.All(pieces, piece => Assert.Contains(piece, text, StringComparison.Ordinal));

    /// <summary>All pieces are there, each after the one before it.</summary>
    public static void InOrder(string text, params string[] pieces)
    {
        var at = 0;
        foreach (var piece in pieces)
        {
            var next = text.IndexOf(piece, at, StringComparison.Ordinal);
            Assert.True(next >= 0, $"'{piece}' is missing, or stands before what it should follow.");
            at = next;
        }
    }
}
