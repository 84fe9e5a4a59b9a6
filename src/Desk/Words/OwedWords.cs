using ColonyLineage.Projections.OwedWork;

namespace ColonyLineage.Desk;

/// <summary>Puts owed work into words.</summary>
public static class OwedWords
{
    /// <summary>What is owed, without what opened it: 'nuc to transfer'. None of them says what to give.</summary>
    public static string Of(string work) => work switch
    {
        Works.Transfer => "nuc to transfer",
        Works.Laying => "laying to be checked",
        Works.Cell => "queen cell to be checked",
        Works.Queenless => "without a queen",
        Works.Combined => "combined, to be looked at",
        Works.FeederOff => "feeder to take off",
        Works.QueenAgain => "queen to be looked at again",
        Works.OldQueen => "old queen to be looked at",
        Works.Supplement => "supplement, every other round",
        Works.Course => "doses missing to a course",
        Works.StripsOut => "strips to take out",
        Works.TreatYard => "whole yard is due, by a wash",
        Works.WashAgain => "to be washed",
        Works.WinterTreatment => "treatment in the weeks without brood",
        Works.SpotEmpty => "empty spots",
        _ => Text.Word(work),
    };

    /// <summary>How it stands: 'late'.</summary>
    public static string Of(Due state) => state switch { Due.Late => "late", Due.Now => "now", Due.PutOff => "put off", _ => "coming" };

    /// <summary>How it is named in an address and in data.</summary>
    public static string Name(Due state) => state == Due.PutOff ? "putOff" : Of(state);

    /// <summary>From when and by when: 'from 3 Oct 2026 by 17 Oct 2026'.</summary>
    public static string When(OwedRow row) =>
        (row is { State: Due.PutOff, PutOffUntil: { } until } ? $"until {Text.Day(until)}; due " : "")
        + (row.By is not { } by ? $"from {Text.Day(row.From)} on" : by == row.From ? $"on {Text.Day(by)}" : $"from {Text.Day(row.From)} by {Text.Day(by)}");

    /// <summary>Where it is owed: 'spot 4, colony 12'; 'the whole yard'.</summary>
    public static string Where(OwedRow row) => (row.Spot, row.Colony) switch
    {
        (null, null) => "the whole yard",
        (null, { } colony) => $"colony {colony}, on no spot",
        ({ } spot, null) => $"spot {spot}",
        ({ } spot, { } colony) => $"spot {spot}, colony {colony}",
    };
}
