using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Bench;

/// <summary>
/// Questions by HTTP against the hand-written SQL for the same rows. The server keeps what it has worked out until something is recorded,
/// so both are measured: asked for the first time after something was recorded, and asked again.
/// </summary>
internal sealed class Asking(Against bench, Loaded loaded)
{
    private int _looks;

    public async Task MeasureAsync()
    {
        await QueensAsync();
        await DescendantsAsync();
    }

    /// <summary>Queens two seasons back or more, over the whole outfit, certain and possible, and those whose birth nobody knows.</summary>
    private async Task QueensAsync()
    {
        Runner.Say("Queens two seasons back ...");
        var season = Season.Of(bench.Today, 3) - 2;
        var sql = $"""
            select *, case when season_to is null then 'unknown' when season_to <= {season} then 'certain' else 'possible' end as answers
            from {bench.Outfit}.queens_by_age where season_from is null or season_from <= {season} order by subject_kind, subject, row_number
            """;
        await CompareAsync("/queens-by-age?format=json&seasons-back=2", sql, "colony_id");
        await PairAsync("'queens two seasons back' over the whole outfit by HTTP / the hand-written SQL", "/queens-by-age?format=json&seasons-back=2", sql, 3);
    }

    private async Task DescendantsAsync()
    {
        Runner.Say("Descendants of a queen ...");
        var breeder = loaded.Breeder.Value;
        var sql = $"""
            with recursive kin as (
                select l.to_id as id, 1 as steps from {bench.Outfit}.lineage l where l.from_id = '{breeder}'
                union
                select l.to_id, kin.steps + 1 from kin join {bench.Outfit}.lineage l on l.from_id = kin.id where kin.steps < 100),
            nearest as (select id, min(steps) as steps from kin group by id)
            select r.kind, n.id, r.name, n.steps, r.yard, r.spot, r.colony, r.began, r.ended, r.fate, r.ended is null and r.colony_id is not null as living, r.entries
            from nearest n join {bench.Outfit}.register r on r.id = n.id order by n.steps
            """;
        var address = $"/lineage?format=json&descendants-of={breeder}";
        await CompareAsync(address, sql, "id");
        await PairAsync("descendants of a queen by HTTP / the recursive SQL", address, sql, 1);
        await Genetics.DescendantsAsync(bench, loaded, sql, QueryAsync);
    }

    private async Task PairAsync(string name, string address, string sql, double target)
    {
        Runner.Report($"{name}, asked again", await Pairs.RunAsync(Math.Max(bench.Pairs, 15), _ => GetAsync(address), _ => QueryAsync(sql), warmUps: 3), target);
        Runner.Report($"{name}, first after something was recorded", await Pairs.RunAsync(Math.Max(bench.Pairs, 15), _ => GetAsync(address), _ => QueryAsync(sql), _ => NoteAsync(), warmUps: 3), target);
    }

    private async Task GetAsync(string address)
    {
        using var answer = await bench.Http.GetAsync(address);
        answer.EnsureSuccessStatusCode();
        var read = await answer.Content.ReadAsByteArrayAsync();
        GC.KeepAlive(read);
    }

    /// <summary>Every value of every row is read, as one would who wants to do something with them.</summary>
    private async Task QueryAsync(string sql)
    {
        await using var command = bench.Source.CreateCommand(sql);
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync())
        {
            var values = new object[reader.FieldCount];
            reader.GetValues(values);
            GC.KeepAlive(values);
        }
    }

    /// <summary>Something is recorded that changes a row: a look at one colony.</summary>
    private async Task NoteAsync()
    {
        await bench.Books.RecordAsync([new Inspected { Id = new EntryId(Guid.CreateVersion7()), On = bench.Today, Act = new ActId(Guid.CreateVersion7()), Colony = loaded.Colony, FramesOfBees = 1 + (_looks++ % 8) }], default);
    }

    /// <summary>A ratio says nothing unless both give the same rows.</summary>
    private async Task CompareAsync(string address, string sql, string id)
    {
        var json = JsonDocument.Parse(await bench.Http.GetStringAsync(address)).RootElement;
        var asked = json.GetProperty("rows").EnumerateArray().Select(row => row.GetProperty(id).GetGuid()).ToHashSet();
        var written = new HashSet<Guid>();
        await using var command = bench.Source.CreateCommand(sql);
        await using var reader = await command.ExecuteReaderAsync();
        var at = reader.GetOrdinal(id);
        while (await reader.ReadAsync()) written.Add(reader.GetGuid(at));
        if (asked.Count == 0 || !asked.SetEquals(written)) throw new InvalidOperationException($"{address} gives {asked.Count} rows, the SQL {written.Count}, and they are not the same.");
        Runner.Say($"  {asked.Count} rows");
    }
}
