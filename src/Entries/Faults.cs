using System.Runtime.CompilerServices;

namespace ColonyLineage.Entries;

/// <summary>Collects what is wrong with an entry, field by field. All faults are found, not only the first.</summary>
public sealed class Faults
{
    private static readonly DateOnly Earliest = new(1900, 1, 1);
    private readonly List<Refusal> _found = [];

    /// <summary>What has been found so far.</summary>
    public IReadOnlyList<Refusal> Found => _found;

    /// <summary>Notes a fault.</summary>
    public void Add(string name, string field, string message) => _found.Add(new Refusal(name, Camel(field), message));

    /// <summary>A text that must be there, of at most <paramref name="longest"/> characters.</summary>
    public void Needs(string? text, int longest, [CallerArgumentExpression(nameof(text))] string field = "")
    {
        if (string.IsNullOrWhiteSpace(text)) Add(Refusals.Missing, field, $"{Words(field)} is missing: fill it in.");
        else Fits(text, longest, field);
    }

    /// <summary>A text that may be missing, of at most <paramref name="longest"/> characters, without control characters.</summary>
    public void Fits(string? text, int longest, [CallerArgumentExpression(nameof(text))] string field = "")
    {
        if (text is null) return;
        if (text.Length > longest) Add(Refusals.TooLong, field, $"{Words(field)}: at most {longest} characters; this has {text.Length}.");
        else if (text.Any(c => char.IsControl(c) && c is not ('\n' or '\t')))
            Add(Refusals.NotReadable, field, $"{Words(field)}: take out the control characters.");
    }

    /// <summary>A count or amount that may be missing, from <paramref name="least"/> to <paramref name="most"/>.</summary>
    public void Within(decimal? value, decimal least, decimal most, [CallerArgumentExpression(nameof(value))] string field = "")
    {
        if (value is { } v && (v < least || v > most))
            Add(Refusals.OutOfRange, field, $"{Words(field)}: from {least:0.##} to {most:0.##}; this is {v:0.####}.");
    }

    /// <summary>Two limits, the lower one first: they must not contradict each other.</summary>
    public void Agree(decimal? least, decimal? most, [CallerArgumentExpression(nameof(least))] string field = "", [CallerArgumentExpression(nameof(most))] string other = "")
    {
        if (least > most) Add(Refusals.LimitsContradict, field, $"{Words(field)} is {least:0.##} and {Words(other)} {most:0.##}: the lower limit comes first.");
    }

    /// <summary>A day of the year that may be missing: one that exists.</summary>
    public void Fits(MonthDay? day, [CallerArgumentExpression(nameof(day))] string field = "")
    {
        if (day is { Exists: false } given) Add(Refusals.DayImpossible, field, $"{Words(field)}: there is no {given}; write month and day as 10-01.");
    }

    /// <summary>An id that must be there.</summary>
    public void Needs<TId>(TId id, [CallerArgumentExpression(nameof(id))] string field = "") where TId : struct, IId<TId>
    {
        if (id.Value == Guid.Empty) Add(Refusals.NoId, field, $"{Words(field)}: say which one.");
    }

    /// <summary>An id that may be missing but, where it is given, is not all zeros.</summary>
    public void Fits<TId>(TId? id, [CallerArgumentExpression(nameof(id))] string field = "") where TId : struct, IId<TId>
    {
        if (id is { } given) Needs(given, field);
    }

    /// <summary>A spot that must be there.</summary>
    public void Needs(Spot spot, [CallerArgumentExpression(nameof(spot))] string field = "")
    {
        Needs(spot.Yard, field);
        Needs(spot.Number, 20, field);
    }

    /// <summary>A quantity that may be missing: a known unit, an amount from 0 to <paramref name="most"/> in that unit.</summary>
    public void Fits(Quantity? quantity, decimal most = 100_000m, [CallerArgumentExpression(nameof(quantity))] string field = "")
    {
        if (quantity is null) return;
        if (quantity.Unit is null || !Units.IsKnown(quantity.Unit))
            Add(Refusals.UnknownUnit, field, $"{Words(field)}: '{quantity.Unit}' is not a unit known here; take one of {string.Join(", ", Units.All)}.");
        Within(quantity.Amount, 0, most, field);
    }

    /// <summary>A mass that may be missing.</summary>
    public void FitsMass(Quantity? quantity, [CallerArgumentExpression(nameof(quantity))] string field = "")
    {
        Fits(quantity, 100_000m, field);
        if (quantity is { Unit: not null } && Units.IsKnown(quantity.Unit) && quantity.InKilograms() is null)
            Add(Refusals.UnknownUnit, field, $"{Words(field)}: a weight, so in kg, g, lb or oz; this is in {quantity.Unit}.");
    }

    /// <summary>A temperature that may be missing: in C or F, -60 to 60 degrees Celsius.</summary>
    public void Fits(Temperature? temperature, [CallerArgumentExpression(nameof(temperature))] string field = "")
    {
        if (temperature is null) return;
        if (temperature.Scale is not ("C" or "F")) Add(Refusals.UnknownUnit, field, $"{Words(field)}: '{temperature.Scale}' is not a scale known here; take C or F.");
        else Within(temperature.Celsius, -60, 60, field);
    }

    /// <summary>A mark that may be missing; its tag has at most 20 characters.</summary>
    public void Fits(QueenMark? mark, [CallerArgumentExpression(nameof(mark))] string field = "")
    {
        if (mark is null) return;
        Known<MarkColour>(mark.Colour, field);
        Fits(mark.Tag, 20, field);
    }

    /// <summary>A word of an enum: one of those that exist.</summary>
    public void Known<TEnum>(TEnum? word, [CallerArgumentExpression(nameof(word))] string field = "") where TEnum : struct, Enum
    {
        if (word is { } given && !Enum.IsDefined(given))
            Add(Refusals.UnknownWord, field, $"{Words(field)}: take one of {string.Join(", ", Enum.GetNames<TEnum>().Select(Camel))}.");
    }

    /// <summary>A day, or an interval that runs forward, from 1900 on. Whether it lies in the future is for Rules, which know today.</summary>
    public void Possible(Occurred? on, [CallerArgumentExpression(nameof(on))] string field = "")
    {
        if (on is not { } given) return;
        if (given.Earliest < Earliest) Add(Refusals.DayImpossible, field, $"{Words(field)}: a day from 1900 on; this is {given}.");
        else if (given.Earliest > given.Day) Add(Refusals.DayImpossible, field, $"{Words(field)}: the earlier day comes first; this is {given}.");
    }

    /// <summary>Two ids that must differ.</summary>
    public void Differ<TId>(TId one, TId? other, string message, [CallerArgumentExpression(nameof(other))] string field = "")
        where TId : struct, IId<TId>
    {
        if (other is { } given && given.Value == one.Value) Add(Refusals.OfItself, field, message);
    }

    private static string Camel(string field) => field.Length == 0 ? field : char.ToLowerInvariant(field[0]) + field[1..];

    private static string Words(string field) =>
        string.Concat(field.Select((c, i) => i == 0 ? char.ToUpperInvariant(c).ToString() : char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString()));
}
