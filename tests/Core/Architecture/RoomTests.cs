using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;
using ColonyLineage.Entries;
using ColonyLineage.Support;

namespace ColonyLineage.Core.Tests;

/// <summary>Which room may lean on which, and what the pure rooms are kept from. The map stands in DEVELOPERS.md.</summary>
public class RoomTests
{
    /// <summary>A room with the rooms that it may lean on, directly or not.</summary>
    private static readonly Dictionary<string, string[]> MayLeanOn = new()
    {
        ["Entries"] = [],
        ["Rules"] = ["Entries"],
        ["Projections"] = ["Entries", "Rules"],
        ["Ledger"] = ["Entries", "Rules", "Projections"],
        ["Desk"] = ["Entries", "Rules", "Projections"],
        ["Server"] = ["Entries", "Rules", "Projections", "Ledger", "Desk"],
        ["Command"] = ["Entries", "Rules", "Projections", "Ledger", "Desk", "Server"],
    };

    private static readonly string[] Pure = ["Entries", "Rules", "Projections"];

    public static TheoryData<string> PureRooms => [.. Pure];

    private static Dictionary<string, string> Projects { get; } = new[] { "src", "projections" }
        .SelectMany(folder => Directory.GetFiles(Path.Combine(Repository.Root, folder), "*.csproj", SearchOption.AllDirectories))
        .ToDictionary(file => Path.GetFileNameWithoutExtension(file));

    [Fact]
    public void Rooms_lean_only_the_way_they_may()
    {
        Assert.Equal(MayLeanOn.Keys.Order(), Projects.Keys.Order());
        var wrong = from room in Projects.Keys
                    from other in Reached(room)
                    where !MayLeanOn[room].Contains(other)
                    select $"{room} leans on {other}";
        Assert.Empty(wrong.Distinct());
    }

    [Theory]
    [MemberData(nameof(PureRooms))]
    public void A_pure_room_knows_no_store_and_no_server(string room)
    {
        string[] kept = ["Marten", "JasperFx", "Weasel", "Npgsql", "Wolverine", "Microsoft.AspNetCore", "Microsoft.Extensions", "Microsoft.EntityFrameworkCore"];
        var references = Built(room).GetReferencedAssemblies().Select(name => name.Name!).Concat(Packages(room));
        Assert.DoesNotContain(references, name => kept.Any(word => name.StartsWith(word, StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(PureRooms))]
    public void A_pure_room_is_built_with_the_banned_symbols(string room)
    {
        // As the build evaluated it: the package was restored for this room, and the switch that brings the list with it was on.
        var restored = File.ReadAllText(Path.Combine(Path.GetDirectoryName(Projects[room])!, "obj", "project.assets.json"));
        Assert.Contains("\"Microsoft.CodeAnalysis.BannedApiAnalyzers/", restored);
        Assert.Contains(Built(room).GetCustomAttributes<AssemblyMetadataAttribute>(), mark => mark is { Key: "BannedSymbols", Value: "src/BannedSymbols.txt" });
        Assert.True(File.Exists(Path.Combine(Repository.Root, "src", "BannedSymbols.txt")));

        // And nobody has switched it off on the way.
        var sources = Directory.GetFiles(Path.GetDirectoryName(Projects[room])!, "*.cs*", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}"));
        Assert.DoesNotContain(sources, file => File.ReadAllText(file).Contains("RS0030"));
        Assert.DoesNotContain("RS0030", File.ReadAllText(Path.Combine(Repository.Root, ".editorconfig")));
    }

    [Fact]
    public void The_banned_symbols_name_the_clock_id_making_chance_and_input()
    {
        var banned = File.ReadLines(Path.Combine(Repository.Root, "src", "BannedSymbols.txt")).Select(line => line.Split(';')[0]).ToList();
        string[] wanted = ["P:System.DateTime.UtcNow", "P:System.DateTimeOffset.UtcNow", "T:System.TimeProvider", "M:System.Guid.NewGuid", "T:System.Random", "N:System.IO", "N:System.Net", "N:System.Threading.Tasks"];
        Assert.Empty(wanted.Except(banned));
    }

    [Fact]
    public void Every_kind_of_entry_is_sealed_named_and_never_changes()
    {
        var kinds = typeof(Entry).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(Entry)) && !type.IsAbstract).ToList();
        Assert.NotEmpty(kinds);
        Assert.Empty(kinds.Where(type => !type.IsSealed).Select(type => $"{type.Name} is not sealed"));
        Assert.Empty(kinds.Where(type => type.GetCustomAttribute<KindAttribute>() is null).Select(type => $"{type.Name} has no stored name"));
        Assert.Empty(from type in kinds
                     from property in type.GetProperties()
                     where property.SetMethod is { } set && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))
                     select $"{type.Name}.{property.Name} can be changed");
    }

    [Fact]
    public void Every_public_type_and_every_field_of_an_entry_is_documented()
    {
        var documented = XDocument.Load(Path.Combine(AppContext.BaseDirectory, "ColonyLineage.Entries.xml")).Descendants("member")
            .Where(member => member.Element("summary") is not null || member.Element("inheritdoc") is not null)
            .Select(member => member.Attribute("name")!.Value).ToHashSet();

        // What the compiler's generator writes out beside our one line of the JSON context is not ours.
        var types = typeof(Entry).Assembly.GetExportedTypes().Where(type => type.GetCustomAttribute<CompilerGeneratedAttribute>() is null);
        var wanted = types.Select(type => $"T:{type.FullName!.Replace('+', '.')}")
            .Concat(from type in types
                    where type.IsAssignableTo(typeof(Entry))
                    from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
                    select $"P:{type.FullName}.{property.Name}");
        Assert.Empty(wanted.Except(documented));
    }

    [Fact]
    public void The_top_level_is_exactly_as_designed()
    {
        string[] designed =
        [
            "README.md", "DEVELOPERS.md", "LICENSE", "ColonyLineage.sln", "docker-compose.yml", "global.json", "Directory.Build.props", "Directory.Packages.props",
            "src", "tests", "projections", "tools",
        ];
        string[] laterWritten = ["README.md", "DEVELOPERS.md"];
        var there = Directory.GetFileSystemEntries(Repository.Root).Select(entry => Path.GetFileName(entry))
            .Where(name => !name.StartsWith('.') && !Ignored().Contains(name)).ToList();
        Assert.Empty(there.Except(designed));
        Assert.Empty(designed.Except(there).Except(laterWritten));
    }

    private static IEnumerable<string> Ignored() =>
        File.ReadLines(Path.Combine(Repository.Root, ".gitignore")).Select(line => line.Trim('/'));

    private static IEnumerable<string> Reached(string room) =>
        XDocument.Load(Projects[room]).Descendants("ProjectReference").Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value))
            .SelectMany(other => Projects.ContainsKey(other) ? Reached(other).Prepend(other) : [other]);

    private static IEnumerable<string> Packages(string room) =>
        XDocument.Load(Projects[room]).Descendants().Where(item => item.Name == "PackageReference" || item.Name == "FrameworkReference")
            .Select(item => item.Attribute("Include")!.Value);

    private static Assembly Built(string room) => Assembly.Load($"ColonyLineage.{room}");
}
