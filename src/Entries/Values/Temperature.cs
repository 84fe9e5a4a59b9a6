namespace ColonyLineage.Entries;

/// <summary>A temperature as it was read off. It is never converted in an entry.</summary>
/// <param name="Degrees">Degrees of <paramref name="Scale"/>.</param>
/// <param name="Scale"><c>C</c> or <c>F</c>.</param>
public sealed record Temperature(decimal Degrees, string Scale)
{
    /// <summary>In degrees Celsius: °C = (°F − 32) / 1.8, exact.</summary>
    [JsonIgnore]
    public decimal Celsius => Scale == "F" ? (Degrees - 32) / 1.8m : Degrees;
}
