using ColonyLineage.Projections.SpotStory;

namespace ColonyLineage.Projections.Lineage;

/// <summary>How a colony was in contact with another.</summary>
/// <param name="How"><c>frames</c>, <c>made from it</c>, <c>it was made from</c>, <c>combined</c>, <c>same maker</c> or <c>same yard</c>.</param>
/// <param name="From">First day of the contact.</param>
/// <param name="To">Last day of it; null while it goes on.</param>
public sealed record Contact(Guid ColonyId, string Colony, string How, string Where, DateOnly? From, DateOnly? To, IReadOnlyList<Entries.EntryId> Entries);

/// <summary>Every colony that shared frames, a yard or a parent with a given one since a day: what to look at when something notifiable is found.</summary>
public static class Contacts
{
    public static IReadOnlyList<Contact> Of(Guid colony, DateOnly since, IEnumerable<LinkRow> links, IEnumerable<BandRow> bands)
    {
        var contacts = new List<Contact>();
        var ofColonies = links.Where(link => link.Link is LinkKind.Split or LinkKind.Combined or LinkKind.Brood or LinkKind.Bees).ToList();
        foreach (var link in ofColonies.Where(link => link.OnTo >= since))
            if (link.FromId == colony) contacts.Add(Of(link, link.ToId, link.To, Given(link.Link)));
            else if (link.ToId == colony) contacts.Add(Of(link, link.FromId, link.From, Taken(link.Link)));
        var makers = ofColonies.Where(link => link.Link == LinkKind.Split && link.ToId == colony).Select(link => link.FromId).ToHashSet();
        foreach (var sister in ofColonies.Where(link => link.Link == LinkKind.Split && link.OnTo >= since && makers.Contains(link.FromId) && link.ToId != colony))
            contacts.Add(new Contact(sister.ToId, sister.To, "same maker", sister.From, sister.OnTo, sister.OnTo, sister.Entries));
        var all = bands.ToList();
        foreach (var own in all.Where(band => band.ColonyId.Value == colony && (band.GoneTo ?? DateOnly.MaxValue) >= since))
            foreach (var other in all.Where(band => band.YardId == own.YardId && band.ColonyId.Value != colony))
            {
                var from = Max(Max(own.From, other.From), since);
                var to = Min(own.GoneTo ?? DateOnly.MaxValue, other.GoneTo ?? DateOnly.MaxValue);
                if (from <= to)
                    contacts.Add(new Contact(other.ColonyId.Value, other.Colony, "same yard", other.Yard, from, to == DateOnly.MaxValue ? null : to, [.. own.Entries.Take(1), .. other.Entries.Take(1)]));
            }

        return [.. contacts.OrderBy(contact => contact.Colony, StringComparer.Ordinal).ThenBy(contact => contact.ColonyId).ThenBy(contact => contact.From).ThenBy(contact => contact.How, StringComparer.Ordinal)];
    }

    private static Contact Of(LinkRow link, Guid other, string name, string how) => new(other, name, how, "", link.OnFrom, link.OnTo, link.Entries);

    private static string Given(LinkKind link) => link switch { LinkKind.Split => "made from it", LinkKind.Combined => "combined", _ => "frames" };

    private static string Taken(LinkKind link) => link switch { LinkKind.Split => "it was made from", LinkKind.Combined => "combined", _ => "frames" };

    private static DateOnly Max(DateOnly left, DateOnly right) => left > right ? left : right;

    private static DateOnly Min(DateOnly left, DateOnly right) => left < right ? left : right;
}
