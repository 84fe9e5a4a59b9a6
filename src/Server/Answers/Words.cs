using System.Text.Json;
using ColonyLineage.Entries;

namespace ColonyLineage.Server.Answers;

/// <summary>Words that stand for one of several, as addresses and the command line use them.</summary>
internal static class Words
{
    /// <summary>What was said; null where nothing was.</summary>
    /// <exception cref="RefusedException">It is none of the words.</exception>
    public static T? Read<T>(string field, string? said, params T[] without) where T : struct, Enum
    {
        if (said is null) return null;
        var words = Enum.GetValues<T>().Except(without).ToDictionary(word => JsonNamingPolicy.CamelCase.ConvertName(word.ToString()));
        return words.TryGetValue(said, out var found) ? found : throw Answering.Refuse(Refusals.UnknownWord, field, $"Take one of {string.Join(", ", words.Keys)}.");
    }
}
