using System.Collections.Concurrent;
using System.Reflection;
using ColonyLineage.Entries;

namespace ColonyLineage.Desk.Forms;

/// <summary>The words that a person wrote in an entry: notes, reasons, lots, batches, what was fed.</summary>
public static class EntryText
{
    // Names and numbers are found as the things that bear them, not as words in the entry that gave them.
    private static readonly string[] Given = ["Name", "Number", "Conflict"];

    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> Properties = new();

    /// <summary>Whether the words stand in one of its texts, in either case.</summary>
    public static bool Says(Entry entry, string words) => Of(entry).Any(text => text.Contains(words, StringComparison.OrdinalIgnoreCase));

    /// <summary>Its texts.</summary>
    public static IEnumerable<string> Of(Entry entry) =>
        Properties.GetOrAdd(entry.GetType(), type => [.. type.GetProperties().Where(property => !Given.Contains(property.Name) && (property.PropertyType == typeof(string) || property.PropertyType == typeof(IReadOnlyList<string>)))])
            .SelectMany(property => property.GetValue(entry) switch { string text => [text], IReadOnlyList<string> texts => texts, _ => Enumerable.Empty<string>() });
}
