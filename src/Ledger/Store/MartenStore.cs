using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using ColonyLineage.Entries;
using JasperFx;
using JasperFx.Events;
using Marten;
using Marten.Services.Json.Transformations;
using Npgsql;
using Weasel.Core;

namespace ColonyLineage.Ledger.Store;

/// <summary>
/// Marten's event store for one outfit: a stream for each colony, queen and yard and one for the outfit, in the outfit's schema.
/// The stored names of the kinds are ours and fixed; older versions are lifted when they are read.
/// </summary>
internal static class MartenStore
{
    public static DocumentStore Make(NpgsqlDataSource source, OutfitName outfit, AutoCreate create, Action<StoreOptions>? more = null) => DocumentStore.For(options =>
    {
        options.Connection(source);
        options.DatabaseSchemaName = outfit.Name;
        options.Events.DatabaseSchemaName = outfit.Name;
        options.AutoCreateSchemaObjects = create;
        options.Events.StreamIdentity = StreamIdentity.AsGuid;
        options.Events.AppendMode = EventAppendMode.QuickWithServerTimestamps;
        options.Events.UseListenNotifyForEventAppends = true;
        // The last line: our own table of entries has already sorted out what was sent before.
        options.Events.EnableUniqueIndexOnEventId = true;
        // 'As integer' adds no converter of Marten's, so that the entries' own words stay as they are written.
        options.UseSystemTextJsonForSerialization(EnumStorage.AsInteger, Casing.CamelCase, LikeStored);
        foreach (var (type, kind) in Kinds.All) options.Events.MapEventType(type, kind.Stored);
        foreach (var (stored, type) in Upcasts.All) options.Events.Upcast(type, stored, Lift(stored));
        more?.Invoke(options);
    });

    /// <summary>The same JSON as <see cref="EntryJson"/> writes; what is not an entry is Marten's own and takes reflection.</summary>
    private static void LikeStored(JsonSerializerOptions options)
    {
        options.TypeInfoResolver = JsonTypeInfoResolver.Combine(EntryJsonContext.Default, new DefaultJsonTypeInfoResolver());
        options.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
    }

    private static JsonTransformation Lift(string stored) =>
        new((_, reader, index) => Upcasts.Lift(stored, reader.GetFieldValue<byte[]>(index))
            ?? throw new InvalidOperationException($"'{stored}' is not an older version that can be lifted."));
}
