using System.Data;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// All rows of one question, kept in memory: of a version of the read tables that has moved on, only the rows are fetched that are different.
/// Safe for use by many callers at once.
/// </summary>
internal sealed class KeptRows<TRow>(NpgsqlDataSource source, Schema schema, Changes changes, Question<TRow> question) where TRow : class, IRow
{
    /// <summary>From this many changed subjects on, all rows are read again.</summary>
    private const int Many = 2000;

    private readonly SemaphoreSlim _one = new(1);
    private readonly int _number = Questions.All.ToList().IndexOf(question);
    private volatile Kept? _kept;

    /// <summary>The rows at a version, or at a later one.</summary>
    public async Task<IReadOnlyList<TRow>> AtAsync(long version, CancellationToken cancel)
    {
        if (_kept is { } kept && kept.Version >= version) return kept.Rows;
        await _one.WaitAsync(cancel);
        try
        {
            if (_kept is { } made && made.Version >= version) return made.Rows;
            return (_kept = await MoveOnAsync(_kept, cancel)).Rows;
        }
        finally
        {
            _one.Release();
        }
    }

    private async Task<Kept> MoveOnAsync(Kept? kept, CancellationToken cancel)
    {
        await using var connection = await source.OpenConnectionAsync(cancel);
        await using var transaction = await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel);
        long now;
        await using (var command = new NpgsqlCommand($"select version from {schema.State}", connection)) now = (long)(await command.ExecuteScalarAsync(cancel))!;
        var changed = kept is null ? null : changes.Between(kept.Version, now, _number);
        if (changed is null || changed.Count > Many) return new Kept(now, await ReadAsync(connection, null, cancel));
        if (changed.Count == 0) return kept! with { Version = now };
        return new Kept(now, Merge(kept!.Owned, changed, await ReadAsync(connection, changed, cancel)));
    }

    private async Task<List<(Subject Owner, TRow Row)>> ReadAsync(NpgsqlConnection connection, HashSet<Subject>? of, CancellationToken cancel)
    {
        var table = schema.Tables[_number];
        await using var command = new NpgsqlCommand(
            $"select {ReadTable.Owner}, {table.Columns} from {table.Full}{(of is null ? "" : " where (subject_kind, subject) in (select * from unnest($1, $2))")} order by {ReadTable.Owner}", connection);
        if (of is not null)
        {
            command.Parameters.Add(Owners.Kinds(of));
            command.Parameters.Add(Owners.Ids(of));
        }

        var rows = new List<(Subject, TRow)>();
        await using var reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel)) rows.Add((new Subject((SubjectKind)reader.GetInt16(0), reader.GetGuid(1)), RowMaker<TRow>.Make(reader, 3)));
        return rows;
    }

    private static List<(Subject Owner, TRow Row)> Merge(List<(Subject Owner, TRow Row)> old, HashSet<Subject> changed, List<(Subject Owner, TRow Row)> fresh)
    {
        var merged = new List<(Subject, TRow)>(old.Count + fresh.Count);
        var next = 0;
        foreach (var one in old)
        {
            if (changed.Contains(one.Owner)) continue;
            for (; next < fresh.Count && fresh[next].Owner.CompareTo(one.Owner) < 0; next++) merged.Add(fresh[next]);
            merged.Add(one);
        }

        merged.AddRange(fresh[next..]);
        return merged;
    }

    private sealed record Kept(long Version, List<(Subject Owner, TRow Row)> Owned)
    {
        public IReadOnlyList<TRow> Rows { get; } = [.. Owned.Select(one => one.Row)];
    }
}
