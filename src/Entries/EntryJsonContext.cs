using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace ColonyLineage.Entries;

/// <summary>Serialisers written ahead, so that entries are read without reflection: quick at a desk, possible in a browser.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(JsonObject))]
[JsonSerializable(typeof(BoxesChanged))]
[JsonSerializable(typeof(ColonyEstablished))]
[JsonSerializable(typeof(Combined))]
[JsonSerializable(typeof(ConflictSettled))]
[JsonSerializable(typeof(CourseDefined))]
[JsonSerializable(typeof(Ended))]
[JsonSerializable(typeof(Fed))]
[JsonSerializable(typeof(FeederPutOn))]
[JsonSerializable(typeof(FeederTakenOff))]
[JsonSerializable(typeof(FoundDead))]
[JsonSerializable(typeof(FoundQueenless))]
[JsonSerializable(typeof(FramesMoved))]
[JsonSerializable(typeof(Harvested))]
[JsonSerializable(typeof(Inspected))]
[JsonSerializable(typeof(LineStarted))]
[JsonSerializable(typeof(Moved))]
[JsonSerializable(typeof(Noted))]
[JsonSerializable(typeof(NucTransferred))]
[JsonSerializable(typeof(OutfitDescribed))]
[JsonSerializable(typeof(QueenAccepted))]
[JsonSerializable(typeof(QueenBanked))]
[JsonSerializable(typeof(QueenBought))]
[JsonSerializable(typeof(QueenCaged))]
[JsonSerializable(typeof(QueenCellGiven))]
[JsonSerializable(typeof(QueenEnded))]
[JsonSerializable(typeof(QueenIntroduced))]
[JsonSerializable(typeof(QueenKilled))]
[JsonSerializable(typeof(QueenMarked))]
[JsonSerializable(typeof(QueenMated))]
[JsonSerializable(typeof(QueenRaised))]
[JsonSerializable(typeof(QueenReleased))]
[JsonSerializable(typeof(Requeened))]
[JsonSerializable(typeof(Sold))]
[JsonSerializable(typeof(SplitFrom))]
[JsonSerializable(typeof(SpotMarked))]
[JsonSerializable(typeof(SpotRetired))]
[JsonSerializable(typeof(Supered))]
[JsonSerializable(typeof(SupersedureSeen))]
[JsonSerializable(typeof(SupplementGiven))]
[JsonSerializable(typeof(TakenOut))]
[JsonSerializable(typeof(Treated))]
[JsonSerializable(typeof(TreatmentTakenOut))]
[JsonSerializable(typeof(Voided))]
[JsonSerializable(typeof(Washed))]
[JsonSerializable(typeof(Weighed))]
[JsonSerializable(typeof(YardClosed))]
[JsonSerializable(typeof(YardDescribed))]
[JsonSerializable(typeof(YardOpened))]
public sealed partial class EntryJsonContext : JsonSerializerContext;
