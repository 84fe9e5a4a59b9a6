using ColonyLineage.Entries;
using Npgsql;

namespace ColonyLineage.Ledger.Reading;

/// <summary>Decodes entries from rows of Marten's table of events. Every query here selects type, data and timestamp, in this order, first.</summary>
internal static class EntryRows
{
    public const string Select = "m.type, m.data, m.timestamp";

    /// <summary>What is in the table of events and is no entry: Marten's own mark for a sequence number that was lost.</summary>
    public const string IsEntry = "m.type <> 'tombstone'";

    public static Recorded Read(NpgsqlDataReader reader, int first = 0) => new(EntryOf(reader, first), reader.GetFieldValue<DateTimeOffset>(first + 2));

    public static Entry EntryOf(NpgsqlDataReader reader, int first = 0)
    {
        var type = reader.GetString(first);
        return EntryJson.Read(type, reader.GetFieldValue<byte[]>(first + 1));
    }
}
