using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Bench;

/// <summary>Every question for one yard against an empty statement, and owed work and the load list of the whole outfit against reading the cards that they rest on.</summary>
internal sealed class Work(Against bench, Loaded loaded)
{
    private int _looks;

    public async Task MeasureAsync()
    {
        var (yard, colonies) = await YardAsync();
        Runner.Say($"Every question for a yard of {colonies} colonies ...");
        foreach (var question in Names())
        {
            var address = question is "inbreeding" or "relationship" or "planned-mating" ? $"/{question}?format=json&queen={loaded.Breeder}" : $"/{question}?format=json&yard={Uri.EscapeDataString(yard)}";
            using var known = await bench.Http.GetAsync(address);
            // A few answers are about the outfit as a whole and take no yard.
            if (known.StatusCode == System.Net.HttpStatusCode.BadRequest) address = $"/{question}?format=json";
            Runner.Report($"{question} for one yard of {colonies} by HTTP, first after something was recorded / select 1", await Pairs.RunAsync(bench.Pairs, _ => GetAsync(address), _ => OneAsync(), _ => NoteAsync()), null);
        }

        Runner.Say("Owed work and the load list of the whole outfit ...");
        foreach (var view in (string[])["owed-work", "load-list"])
        {
            var address = $"/{view}?format=json";
            Runner.Report($"{view} of the whole outfit by HTTP / reading the same cards, asked again", await Pairs.RunAsync(bench.Pairs, _ => GetAsync(address), _ => CardsAsync()), 2);
            Runner.Report($"{view} of the whole outfit by HTTP / reading the same cards, first after something was recorded", await Pairs.RunAsync(bench.Pairs, _ => GetAsync(address), _ => CardsAsync(), _ => NoteAsync()), 2);
        }
    }

    private static IEnumerable<string> Names() => Server.Answers.Answering.Names.Where(name => name != Server.Answers.Answering.Entries);

    /// <summary>The yard whose living colonies are closest to forty.</summary>
    private async Task<(string Yard, int Colonies)> YardAsync()
    {
        await using var command = bench.Source.CreateCommand($"select yard, count(*)::int from {bench.Outfit}.queens_by_age where yard is not null group by yard order by abs(count(*) - 40), yard limit 1");
        await using var reader = await command.ExecuteReaderAsync();
        await reader.ReadAsync();
        return (reader.GetString(0), reader.GetInt32(1));
    }

    private async Task GetAsync(string address)
    {
        using var answer = await bench.Http.GetAsync(address);
        if (!answer.IsSuccessStatusCode) throw new InvalidOperationException($"{address}: {await answer.Content.ReadAsStringAsync()}");
        GC.KeepAlive(await answer.Content.ReadAsByteArrayAsync());
    }

    private async Task OneAsync()
    {
        await using var command = bench.Source.CreateCommand("select 1");
        await command.ExecuteScalarAsync();
    }

    /// <summary>The cards of all living colonies, their queens and yards: fetched and folded.</summary>
    private async Task CardsAsync()
    {
        var rows = await bench.Books.KeptRowsAsync(Questions.QueensByAge, default);
        var yards = rows.Select(row => row.YardId).OfType<YardId>().Distinct().ToList();
        var books = await bench.Books.OpenBooksAsync([Subject.Outfit, Subject.Store, .. yards.Select(yard => (Subject)yard), .. rows.Select(row => (Subject)row.ColonyId), .. rows.Select(row => row.QueenId).OfType<QueenId>().Select(queen => (Subject)queen)], default);
        var read = 0;
        foreach (var row in rows)
        {
            read += books.Colony(row.ColonyId).Counted.Count;
            if (row.QueenId is { } queen) read += books.Queen(queen).Entries.Count;
        }

        foreach (var yard in yards) read += books.Yard(yard).Spots.Count;
        GC.KeepAlive(read);
    }

    private async Task NoteAsync() =>
        await bench.Books.RecordAsync([new Inspected { Id = new EntryId(Guid.CreateVersion7()), On = bench.Today, Act = new ActId(Guid.CreateVersion7()), Colony = loaded.Colony, FramesOfBees = 1 + (_looks++ % 8) }], default);
}
