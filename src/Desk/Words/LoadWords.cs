using System.Globalization;
using ColonyLineage.Entries;
using ColonyLineage.Projections.OwedWork;

namespace ColonyLineage.Desk;

/// <summary>Puts what is loaded into words.</summary>
public static class LoadWords
{
    /// <summary>Beside doses on every list.</summary>
    public const string OfDoses = "doses missing to the course the owner chose; the label binds";

    /// <summary>How much: '12 full doses', '34.5 kg', '3'.</summary>
    public static string Amount(decimal amount, string unit) => unit switch
    {
        Units.Piece => Number(amount),
        "full dose" => $"{Number(amount)} {(amount == 1 ? "full dose" : "full doses")}",
        _ => $"{Number(amount)} {unit}",
    };

    /// <summary>Which thing: 'of thymol', 'large feeders', 'sugar'.</summary>
    public static string Thing(LoadRow row) => (row.Thing, row.Which) switch
    {
        (StockOf.Doses, { } course) => $"of {course}",
        (StockOf.Doses, null) => "of a course",
        (_, { } which) => $"{which} {Word(row)}",
        _ => Word(row),
    };

    private static string Word(LoadRow row) => (row.Thing, row.Amount) switch
    {
        (StockOf.Feeders, 1) => "feeder",
        (StockOf.Boxes, 1) => "box",
        (StockOf.Nucs, 1) => "nuc",
        (StockOf.MatedQueens, 1) => "mated queen",
        _ => Text.Word(row.Thing),
    };

    /// <summary>What it is for, in words.</summary>
    public static string For(LoadRow row) => string.Join(", ", row.For.Split(", ").Select(OwedWords.Of));

    private static string Number(decimal amount) => amount.ToString("#,0.##", CultureInfo.InvariantCulture);
}
