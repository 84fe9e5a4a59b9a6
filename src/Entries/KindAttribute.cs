namespace ColonyLineage.Entries;

/// <summary>The fixed name and version under which a kind of entry is stored, for instance <c>washed.v1</c>.</summary>
[AttributeUsage(AttributeTargets.Class, Inherited = false)]
public sealed class KindAttribute(string name, int version) : Attribute
{
    /// <summary>The stored name; never changed once an entry was recorded under it.</summary>
    public string Name { get; } = name;

    /// <summary>The version of the stored form, 1 or more. Older ones are lifted by <see cref="Upcasts"/>.</summary>
    public int Version { get; } = version;

    /// <summary>Name and version as stored.</summary>
    public string Stored => $"{Name}.v{Version}";
}
