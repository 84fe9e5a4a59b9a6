namespace ColonyLineage.Command.Demo;

/// <summary>The invented places: names made up for this purpose.</summary>
internal static class Places
{
    public const string Outfit = "Mirrow Vale (an invented outfit)";

    /// <summary>The yards that the stories are told of come first: see <see cref="DemoOutfit"/>.</summary>
    private static readonly string[] First =
    [
        "Kiln Bank", "Otter Holt", "Withy Bottom", "Larch Nook", "Sallow End", "Tarn Foot", "Bramble Ley", "Quern Hill",
        "Heron Sluice", "Plum Garth", "Cinder Lane", "Thistle Rigg", "Fallow Gate", "Osier Bed", "Lark Barrow", "Juniper Shaw",
        "Teasel Brow", "Pebble Ford",
    ];

    private static readonly string[] Heads =
    [
        "Alder", "Badger", "Clover", "Dapple", "Elder", "Fern", "Gorse", "Hazel", "Ivy", "Jackdaw", "Kestrel", "Linden", "Marl", "Nettle", "Oat",
        "Pippin", "Rush", "Sorrel", "Tansy", "Vetch", "Wren", "Yarrow", "Adder", "Burdock", "Curlew", "Dock", "Flint", "Gale", "Hawthorn", "Madder",
    ];

    private static readonly string[] Tails =
    [
        "Garth", "Holt", "Bank", "Nook", "Ley", "Rigg", "Foot", "Shaw", "Sluice", "Barrow", "Croft", "Dell", "End", "Fold", "Gate", "Heath", "Pound",
        "Reach", "Slack", "Toft", "Wath", "Yoke", "Brake", "Copse", "Drift", "Edge", "Furrow", "Garden", "Hurst", "Knoll", "Lea", "Mead", "Orchard",
        "Paddock",
    ];

    /// <summary>The name of the yard with this number, from 0; all different up to a thousand.</summary>
    public static string Yard(int index) => index < First.Length ? First[index] : Further(index - First.Length);

    private static string Further(int index) => $"{Heads[index % Heads.Length]} {Tails[(index + (index / Heads.Length)) % Tails.Length]}";

    public static readonly string[] Access =
    [
        "Gate sticks: lift it. Soft ground after rain.", "Key under the trough. Shut both gates, sheep.", "Turn round at the top, there is no room below.",
        "Through the farmyard, mind the geese.", "Wet from November on: park on the lane.", "Two padlocks; ours is the brass one.",
    ];

    /// <summary>Lines, by the breeders they start at.</summary>
    public static readonly string[] Lines = ["Brindle", "Ember", "Sloe", "Quill", "Rowan"];
}
