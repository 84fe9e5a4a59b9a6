using System.Collections;
using System.Globalization;
using System.Reflection;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Cards;

namespace ColonyLineage.Desk;

/// <summary>A piece of text that may lead somewhere.</summary>
/// <param name="Said">What is read.</param>
/// <param name="Path">The page it leads to; null where it is plain text.</param>
public sealed record Piece(string Said, string? Path = null);

/// <summary>One field of an entry, in words.</summary>
public sealed record Field(string Label, IReadOnlyList<Piece> Value);

/// <summary>Puts an entry into words: its kind, its fields with their units, and the names of what it concerns.</summary>
public static class EntryWords
{
    private static readonly HashSet<string> Common = [.. typeof(Entry).GetProperties().Select(property => property.Name)];

    /// <summary>The kind of entry: 'queen cell given'.</summary>
    public static string Kind(Entry entry)
    {
        var words = Kinds.Of(entry).Name.Replace('-', ' ');
        return char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>What it concerns, its own stream first; the outfit itself is left out.</summary>
    public static IReadOnlyList<Piece> Concerns(Entry entry, Books books) => [.. entry.Concerns.Where(subject => subject.Kind is not (SubjectKind.Outfit or SubjectKind.Store)).Select(subject => Subject(subject, books))];

    /// <summary>A subject by its name, with its page.</summary>
    public static Piece Subject(Subject subject, Books books) => subject.Kind switch
    {
        SubjectKind.Colony => new Piece($"colony {Bare(Names.Of(books.Colony(new ColonyId(subject.Id))), "colony ")}", $"/colonies/{subject.Id}"),
        SubjectKind.Queen => new Piece($"queen {Bare(Names.Of(books.Queen(new QueenId(subject.Id))), "queen ")}", $"/queens/{subject.Id}"),
        SubjectKind.Yard => new Piece(Names.Of(books.Yard(new YardId(subject.Id))), $"/yards/{subject.Id}"),
        _ => new Piece("the outfit"),
    };

    /// <summary>The fields that were given, in the order in which the kind lists them.</summary>
    public static IReadOnlyList<Field> Fields(Entry entry, Books books)
    {
        var fields = new List<Field>();
        foreach (var property in entry.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance))
        {
            if (Common.Contains(property.Name) || property.SetMethod is null) continue;
            // The colony or queen that the entry is about stands above its fields.
            if ((entry is ColonyEntry && property.Name == nameof(ColonyEntry.Colony)) || (entry is QueenEntry && property.Name == nameof(QueenEntry.Queen))) continue;
            if (entry is Voided && property.Name is (nameof(Voided.Of) or nameof(Voided.AlsoOf))) continue;
            // A flag that is not set says nothing; an answer 'no' does.
            if (property.PropertyType == typeof(bool) && property.GetValue(entry) is false) continue;
            if (property.GetValue(entry) is { } value && Value(property.Name, value, books) is { Count: > 0 } said)
                fields.Add(new Field(Text.Word(property.Name), said));
        }

        return fields;
    }

    private static IReadOnlyList<Piece> Value(string name, object value, Books books) => value switch
    {
        ColonyId colony => [Subject(colony, books)],
        QueenId queen => [Subject(queen, books)],
        YardId yard => [Subject(yard, books)],
        EntryId entry => [new Piece("the entry", $"/entries?id={entry.Value}")],
        Spot spot => [new Piece($"{Names.Of(books.Yard(spot.Yard))}, spot {spot.Number}", $"/yards/{spot.Yard.Value}/spots/{Uri.EscapeDataString(spot.Number)}")],
        Quantity quantity => [new Piece($"{Text.Number(quantity.Amount)} {quantity.Unit}")],
        QueenMark mark => [new Piece(mark.Tag is null ? Text.Word(mark.Colour) : $"{Text.Word(mark.Colour)}, tag {mark.Tag}")],
        Temperature read => [new Piece($"{Text.Number(read.Degrees)} °{read.Scale}")],
        MonthDay day => [new Piece(day.ToString())],
        RoundStop stop => [Subject(stop.Yard, books), new Piece(string.Join(", ", new[] { stop.On is { } on ? Text.Day(on) : null, stop.Truck, stop.Why }.OfType<string>()))],
        Occurred on => [new Piece(Text.When(on))],
        DateOnly day => [new Piece(Text.Day(day))],
        string text => [new Piece(text)],
        bool flag => [new Piece(flag ? "yes" : "no")],
        Enum word => [new Piece(Text.Word(word))],
        decimal number => [new Piece($"{Text.Number(number)}{Unit(name, number)}")],
        int number => [new Piece(Whole(name, number))],
        IEnumerable several => [.. several.Cast<object>().SelectMany(one => Value(name, one, books))],
        _ => [new Piece(value.ToString() ?? "")],
    };

    private static string Unit(string name, decimal number) => name switch
    {
        "FramesOfBees" or "FramesOfBrood" or "Frames" or "FewFramesOfBees" => number == 1 ? " frame" : " frames",
        "Doses" or "FullDoses" => number == 1 ? " full dose" : " full doses",
        _ => "",
    };

    private static string Whole(string name, int number) => name switch
    {
        "BroodPattern" => $"{number} (1 spotty to 5 solid)",
        "Temper" => $"{number} (1 hot to 5 gentle)",
        "Bees" => number == 1 ? "1 bee" : $"{number} bees",
        "Mites" => number == 1 ? "1 mite" : $"{number} mites",
        "SeasonStartMonth" when number is >= 1 and <= 12 => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(number),
        _ => number.ToString(CultureInfo.InvariantCulture),
    };

    private static string Bare(string name, string kind) => name.StartsWith(kind, StringComparison.Ordinal) ? name[kind.Length..] : name;
}
