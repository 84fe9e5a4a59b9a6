using System.Net.Http.Json;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.QueensByAge;
using Npgsql;
using NpgsqlTypes;

namespace ColonyLineage.Bench;

/// <summary>
/// A visit of 40 entries to one yard, sent by HTTP and acknowledged when the read tables hold it, against one durable INSERT of the same 40
/// rows into a bare table.
/// </summary>
internal sealed class Visits(Against bench)
{
    private const int Entries = 40;
    private const int WarmUps = 8;
    private List<List<QueenRow>> _yards = [];
    private IReadOnlyList<Entry> _visit = [];
    private JsonArray _sent = [];

    public async Task MeasureAsync()
    {
        Runner.Say("Visits of 40 entries ...");
        await using (var make = bench.Source.CreateCommand("create table bare (id uuid primary key, kind text not null, data jsonb not null, at timestamptz not null default now())")) await make.ExecuteNonQueryAsync();
        var living = await bench.Books.RowsAsync(Questions.QueensByAge, Ask.Everything, default);
        _yards = [.. living.Where(row => row.YardId is not null).GroupBy(row => row.YardId).Select(yard => yard.Take(Entries / 2).ToList()).Where(yard => yard.Count == Entries / 2)];
        var count = Math.Max(bench.Pairs, 41);
        Runner.Report(
            "a visit of 40 entries by HTTP, read-your-write included / a bare durable INSERT of 40 rows",
            await Pairs.RunAsync(count, _ => SendAsync(), InsertAsync, PrepareAsync, WarmUps), 6);
        Runner.Report(
            "the same recorded in the process, without HTTP / a bare durable INSERT of 40 rows",
            await Pairs.RunAsync(count, _ => bench.Books.RecordAsync(_visit, default), InsertAsync, PrepareAsync, WarmUps), null);
        await CheckAsync();
    }

    /// <summary>Another yard each time: a look and a dose on each of 20 colonies.</summary>
    private async Task PrepareAsync(int number)
    {
        if (_visit.Count > 0) await CheckAsync();
        var yard = _yards[(number + WarmUps) % _yards.Count];
        var (act, visit) = (new ActId(Guid.CreateVersion7()), new VisitId(Guid.CreateVersion7()));
        var order = 0;
        _visit =
        [
            .. yard.SelectMany(row => (Entry[])
            [
                new Inspected { Id = new EntryId(Guid.CreateVersion7()), On = bench.Today, Act = act, Visit = visit, Order = ++order, By = "bench", Colony = row.ColonyId, FramesOfBees = 6.5m, FramesOfBrood = 4, EggsSeen = true, Queen = QueenFinding.Queenright },
                new Treated { Id = new EntryId(Guid.CreateVersion7()), On = bench.Today, Act = act, Visit = visit, Order = ++order, By = "bench", Colony = row.ColonyId, Course = "thymol summer", Doses = 1, Substance = "thymol gel", SupersOn = false },
            ]),
        ];
        _sent = [.. _visit.Select(EntryJson.WriteTagged)];
    }

    private async Task SendAsync()
    {
        using var answer = await bench.Http.PostAsJsonAsync("/entries", _sent);
        if (!answer.IsSuccessStatusCode) throw new InvalidOperationException($"The visit was not taken: {await answer.Content.ReadAsStringAsync()}");
    }

    private async Task InsertAsync(int number)
    {
        await using var command = bench.Source.CreateCommand("insert into bare (id, kind, data) select * from unnest($1, $2, $3)");
        command.Parameters.Add(new() { Value = _visit.Select(entry => entry.Id.Value).ToArray() });
        command.Parameters.Add(new() { Value = _visit.Select(entry => Kinds.Of(entry).Stored).ToArray() });
        command.Parameters.Add(new() { Value = _visit.Select(EntryJson.Write).ToArray(), NpgsqlDbType = NpgsqlDbType.Array | NpgsqlDbType.Jsonb });
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>What was acknowledged is in the answers, in all 20 colonies.</summary>
    private async Task CheckAsync()
    {
        await using var command = bench.Source.CreateCommand($"select count(*) from {bench.Outfit}.queens_by_age where entries @> array[$1]");
        command.Parameters.Add(new() { Value = Guid.Empty });
        foreach (var look in _visit.OfType<Inspected>())
        {
            command.Parameters[0].Value = look.Id.Value;
            if ((long)(await command.ExecuteScalarAsync())! == 0) throw new InvalidOperationException($"The look {look.Id} was acknowledged and is not in the answers.");
        }
    }
}
