using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.Primitives;
using ColonyLineage.Projections;

namespace ColonyLineage.Desk;

/// <summary>
/// What the page's address asks for: the two clocks, the filters, the page. Every answer is a plain address that can be kept,
/// sent and printed; every link made here keeps the clocks, so that a look back stays a look back.
/// </summary>
public sealed class Address
{
    public const string AsOfName = "as-of";
    public const string KnownAtName = "known-at";
    private readonly Dictionary<string, StringValues> _query;
    private readonly List<string> _faults = [];

    public Address(NavigationManager navigation)
    {
        var uri = new Uri(navigation.Uri);
        Path = uri.AbsolutePath;
        _query = QueryHelpers.ParseQuery(uri.Query);
        // Said once, after a form was sent: no link of the page carries it on.
        Recorded = this["recorded"];
        _query.Remove("recorded");
        AsOf = Day(AsOfName);
        KnownAt = Instant(KnownAtName);
    }

    /// <summary>The path of this page, escaped as it came.</summary>
    public string Path { get; }

    /// <summary>The act that was recorded a moment ago, for the page to say so.</summary>
    public string? Recorded { get; }

    /// <summary>The state of things at the end of this day; null for today.</summary>
    public DateOnly? AsOf { get; }

    /// <summary>What the books held at this instant; null for now.</summary>
    public DateTimeOffset? KnownAt { get; }

    /// <summary>What in the address could not be read, in words for the person.</summary>
    public IReadOnlyList<string> Faults => _faults;

    /// <summary>An ask with the two clocks and nothing else.</summary>
    public Ask Ask => new() { AsOf = AsOf, KnownAt = KnownAt };

    /// <summary>A value of the query; null where it is missing or blank.</summary>
    public string? this[string name] => _query.TryGetValue(name, out var values) && !string.IsNullOrWhiteSpace(values[0]) ? values[0]!.Trim() : null;

    /// <summary>All values of a name in the query.</summary>
    public IEnumerable<string> All(string name) => _query.TryGetValue(name, out var values) ? values.OfType<string>() : [];

    /// <summary>A whole number of the query; null where it is missing; a fault where it is none.</summary>
    public int? Whole(string name)
    {
        if (this[name] is not { } text) return null;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)) return number;
        Fault($"'{text}' is not a whole number ({name}).");
        return null;
    }

    /// <summary>A day of the query; null where it is missing; a fault where it is none.</summary>
    public DateOnly? Day(string name)
    {
        if (this[name] is not { } text) return null;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return day;
        Fault($"'{text}' is not a day ({name}). Write it as 2026-09-01.");
        return null;
    }

    /// <summary>Which page of a long answer, from 1.</summary>
    public int Page => Math.Clamp(Whole("page") ?? 1, 1, 1_000_000);

    /// <summary>A link to a path of this desk, with the clocks kept.</summary>
    public string To(string path, params ReadOnlySpan<(string Name, object? Value)> query)
    {
        var parts = new List<(string, string)>();
        foreach (var (name, value) in query) Add(parts, name, value);
        AddClocks(parts);
        return Join(path, parts);
    }

    /// <summary>This address with something in the query changed; null takes it out. The page goes back to the first unless it is named.</summary>
    public string With(params ReadOnlySpan<(string Name, object? Value)> changes)
    {
        var changed = new HashSet<string>(StringComparer.Ordinal) { "page" };
        var parts = new List<(string, string)>();
        foreach (var (name, _) in changes) changed.Add(name);
        foreach (var (name, values) in _query)
            if (!changed.Contains(name) && name is not (AsOfName or KnownAtName))
                foreach (var value in values) Add(parts, name, value);
        foreach (var (name, value) in changes)
            if (name is not (AsOfName or KnownAtName)) Add(parts, name, value);
        if (!changed.Contains(AsOfName)) Add(parts, AsOfName, AsOf);
        if (!changed.Contains(KnownAtName)) Add(parts, KnownAtName, KnownAt);
        return Join(Path, parts);
    }

    /// <summary>The query as name and value, without some names: for the hidden fields of a form that keeps the rest.</summary>
    public IEnumerable<(string Name, string Value)> Rest(params string[] without) =>
        from pair in _query
        where !without.Contains(pair.Key)
        from value in pair.Value
        where !string.IsNullOrWhiteSpace(value)
        select (pair.Key, value);

    private void Fault(string message)
    {
        if (!_faults.Contains(message)) _faults.Add(message);
    }

    private DateTimeOffset? Instant(string name)
    {
        if (this[name] is not { } text) return null;
        // A day alone means all of it.
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return new DateTimeOffset(day, new TimeOnly(23, 59, 59), TimeSpan.Zero);
        if (DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var instant)) return instant;
        Fault($"'{text}' is not an instant ({name}). Write it as 2026-09-01T18:00Z.");
        return null;
    }

    private void AddClocks(List<(string, string)> parts)
    {
        Add(parts, AsOfName, AsOf);
        Add(parts, KnownAtName, KnownAt);
    }

    private static void Add(List<(string, string)> parts, string name, object? value)
    {
        var text = value switch
        {
            null => null,
            DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            DateTimeOffset at => at.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss'Z'", CultureInfo.InvariantCulture),
            bool flag => flag ? "yes" : null,
            IFormattable plain => plain.ToString(null, CultureInfo.InvariantCulture),
            _ => value.ToString(),
        };
        if (!string.IsNullOrEmpty(text)) parts.Add((name, text));
    }

    private static string Join(string path, List<(string Name, string Value)> parts) =>
        parts.Count == 0 ? path : $"{path}?{string.Join('&', parts.Select(part => $"{part.Name}={Uri.EscapeDataString(part.Value).Replace("%3A", ":", StringComparison.Ordinal)}"))}";
}
