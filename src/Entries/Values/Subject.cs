namespace ColonyLineage.Entries;

/// <summary>What kind of thing a stream is about.</summary>
[System.Text.Json.Serialization.JsonConverter(typeof(WordJson<SubjectKind>))]
public enum SubjectKind
{
    /// <summary>The outfit itself: its settings, courses and lines.</summary>
    Outfit,

    /// <summary>A yard with its spots.</summary>
    Yard,

    /// <summary>A colony.</summary>
    Colony,

    /// <summary>A queen.</summary>
    Queen,

    /// <summary>The outfit's store: what it has at hand, and the rounds that are planned with it.</summary>
    Store,
}

/// <summary>One thing that entries are about, and so one stream and one card.</summary>
public readonly record struct Subject(SubjectKind Kind, Guid Id) : IComparable<Subject>
{
    /// <summary>The one outfit that all of a set of books belongs to. A fixed id: an outfit has books of its own.</summary>
    public static readonly Subject Outfit = new(SubjectKind.Outfit, new Guid("0f717000-0000-8000-8000-000000000000"));

    /// <summary>The one store of the outfit. It is apart from the outfit itself, since what is counted there changes every week and no answer about a colony rests on it.</summary>
    public static readonly Subject Store = new(SubjectKind.Store, new Guid("570e0000-0000-8000-8000-000000000000"));

    /// <summary>A colony as a subject.</summary>
    public static implicit operator Subject(ColonyId id) => new(SubjectKind.Colony, id.Value);

    /// <summary>A queen as a subject.</summary>
    public static implicit operator Subject(QueenId id) => new(SubjectKind.Queen, id.Value);

    /// <summary>A yard as a subject.</summary>
    public static implicit operator Subject(YardId id) => new(SubjectKind.Yard, id.Value);

    /// <summary>By kind, then by id.</summary>
    public int CompareTo(Subject other)
    {
        var byKind = Kind.CompareTo(other.Kind);
        return byKind != 0 ? byKind : Id.CompareTo(other.Id);
    }
}
