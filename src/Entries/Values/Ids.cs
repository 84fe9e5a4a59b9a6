using System.Text.Json;
using System.Text.Json.Serialization;

namespace ColonyLineage.Entries;

/// <summary>An id made on the device that wrote the entry. Ids come in from outside; nothing here makes one.</summary>
public interface IId<TSelf> where TSelf : struct, IId<TSelf>
{
    /// <summary>The id itself; never all zeros in a valid entry.</summary>
    Guid Value { get; }

    /// <summary>Wraps a plain id.</summary>
    static abstract TSelf Of(Guid value);
}

/// <summary>Names one entry, for ever.</summary>
[JsonConverter(typeof(IdJson<EntryId>))]
public readonly record struct EntryId(Guid Value) : IId<EntryId>, IComparable<EntryId>
{
    /// <inheritdoc/>
    public static EntryId Of(Guid value) => new(value);

    /// <summary>Orders as the text of the id does, which is also how PostgreSQL orders <c>uuid</c>.</summary>
    public int CompareTo(EntryId other) => Value.CompareTo(other.Value);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>Ties the entries of one request together: recorded together or not at all, and voided together by default.</summary>
[JsonConverter(typeof(IdJson<ActId>))]
public readonly record struct ActId(Guid Value) : IId<ActId>
{
    /// <inheritdoc/>
    public static ActId Of(Guid value) => new(value);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>One yard on one day of a round.</summary>
[JsonConverter(typeof(IdJson<VisitId>))]
public readonly record struct VisitId(Guid Value) : IId<VisitId>
{
    /// <inheritdoc/>
    public static VisitId Of(Guid value) => new(value);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>Names one colony from the day it is made or bought until it dies, is combined away or sold.</summary>
[JsonConverter(typeof(IdJson<ColonyId>))]
public readonly record struct ColonyId(Guid Value) : IId<ColonyId>
{
    /// <inheritdoc/>
    public static ColonyId Of(Guid value) => new(value);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>Names one queen, an individual.</summary>
[JsonConverter(typeof(IdJson<QueenId>))]
public readonly record struct QueenId(Guid Value) : IId<QueenId>
{
    /// <inheritdoc/>
    public static QueenId Of(Guid value) => new(value);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>Names one yard.</summary>
[JsonConverter(typeof(IdJson<YardId>))]
public readonly record struct YardId(Guid Value) : IId<YardId>
{
    /// <inheritdoc/>
    public static YardId Of(Guid value) => new(value);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>Writes an id as its plain text.</summary>
public sealed class IdJson<TId> : JsonConverter<TId> where TId : struct, IId<TId>
{
    /// <inheritdoc/>
    public override TId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String && reader.TryGetGuid(out var value)
            ? TId.Of(value)
            : throw new JsonException("An id is a text of the form 00000000-0000-0000-0000-000000000000.");

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, TId value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value);
}
