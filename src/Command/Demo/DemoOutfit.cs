using ColonyLineage.Entries;

namespace ColonyLineage.Command.Demo;

/// <summary>
/// An invented outfit in an invented place, for looking at the program and for load. Nothing in it comes from a real person,
/// business or document, and its courses are examples of data, never advice.
/// </summary>
/// <remarks>
/// What to look at, in the outfit that <c>lineage demo</c> makes (the last season is the running one):
/// <list type="bullet">
/// <item>Queens from two seasons back with few bees: the whole outfit, and above all the yard <b>Kiln Bank</b>, where nobody replaces
/// old queens.</item>
/// <item>A course that is incomplete, and why: the yard <b>Withy Bottom</b>, every season's <c>thymol summer</c>. Two weak colonies missed
/// the first dose; one of them was combined into a colony that had both, so that one is a dose behind; and a nuc made between the
/// doses missed the second. Other yards stopped half way, one had its second dose written on paper until November.</item>
/// <item>A spot that was replaced by a nuc twice in one season: <b>Otter Holt</b>, spot <b>7</b>: a dead-out in March, a nuc made from a
/// colony of Kiln Bank in May, its queen a drone layer in August, its frames shared out, another nuc from Larch Nook on the spot.</item>
/// <item>A breeder queen with more than a hundred living descendants over three seasons: the one that the line <b>Brindle</b> starts
/// at. Queens are mated at <b>Larch Nook</b>.</item>
/// <item>One high wash after the treatment: <b>Bramble Ley</b>. Yards that moved: <b>Tarn Foot</b> to <b>Teasel Brow</b>, and a season later
/// <b>Thistle Rigg</b> to <b>Pebble Ford</b>.</item>
/// <item>Lines that differ in truth: <b>Sloe</b> brings in more honey than the others, <b>Ember</b> is hotter. The others look different here and there, by their mothers, and are not.</item>
/// </list>
/// </remarks>
public static class DemoOutfit
{
    private static readonly Guid Space = new("0f717000-0000-8000-8000-00000000de30");

    /// <summary>Everything ever recorded about the outfit, in the order in which the books took it in; the entries of an act together.</summary>
    public static IReadOnlyList<Recorded> Make(DemoOptions options)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(options.Seasons, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(options.Colonies, 40);
        var chance = new Chance(options.Seed);
        var pen = new Pen(NamedId.Of(Space, $"{options.Seed}"), options.Today.AddDays(-1));
        var world = new World(options, chance, pen);
        var hand = new Hand(world);
        var looks = new Looks(world, hand);
        var rearing = new Rearing(world, hand, looks);
        var spring = new Spring(world, hand, looks);
        var summer = new Summer(world, hand, looks, spring);
        var autumn = new Autumn(world, hand, looks, rearing, spring);
        var treatments = new Treatments(world, hand, summer);
        var stories = new Stories(world, hand, looks, rearing, autumn);
        var storeroom = new Storeroom(world);
        new Opening(world, hand).Plan();
        world.On(new DateOnly(world.FirstSeason, 3, 2), storeroom.Open);
        for (var season = world.FirstSeason; season <= world.Running; season++)
        {
            var named = season;
            world.On(new DateOnly(season, 3, 1), () =>
            {
                world.Season = named;
                spring.Plan();
                rearing.Plan();
                summer.Plan();
                treatments.Plan();
                autumn.Plan();
                stories.Plan();
                storeroom.Plan();
            });
        }

        world.Run();
        return pen.All();
    }
}
