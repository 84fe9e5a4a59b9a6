using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using Npgsql;
using NpgsqlTypes;
using static ColonyLineage.Ledger.Tables.Owners;

namespace ColonyLineage.Ledger.Tables;

/// <summary>Writes what is different between answers before and after, and how far the tables are now, in one batch.</summary>
internal sealed class AnswerWriting(Schema schema, NpgsqlConnection connection)
{
    private readonly NpgsqlBatch _batch = new(connection);

    /// <summary>The subjects whose rows are different, with a bit for each question concerned.</summary>
    public Dictionary<Subject, int> Changed { get; } = [];

    /// <summary>Adds the differences.</summary>
    /// <param name="pairs">The answers of the same subjects to the same questions, before and after.</param>
    public void Add(IReadOnlyList<(Answers Before, Answers After)> pairs)
    {
        for (var i = 0; i < schema.Tables.Count; i++) AddRows(i, pairs);
        AddReads(pairs);
    }

    /// <summary>Sends it all, and gives the version that the tables are at. What can be worked out again need not wait for the disk.</summary>
    public async Task<long> FinishAsync(string upTo, CancellationToken cancel)
    {
        var version = _batch.BatchCommands.Count == 0 ? "" : $", version = nextval('{schema.Outfit}.read_version')";
        Command($"update {schema.State} set snapshot = $1::pg_snapshot{version} returning version", new NpgsqlParameter { Value = upTo });
        Command("set local synchronous_commit = off");
        await using (_batch)
        await using (var reader = await _batch.ExecuteReaderAsync(cancel))
        {
            await reader.ReadAsync(cancel);
            return reader.GetInt64(0);
        }
    }

    private void AddRows(int question, IReadOnlyList<(Answers Before, Answers After)> pairs)
    {
        var table = schema.Tables[question];
        var columns = table.Question.Columns;
        var same = RowEquality.Of(columns);
        var old = new List<(Subject Subject, int Number)>();
        var now = new List<(Subject Subject, int Number, IRow Row)>();
        foreach (var (before, after) in pairs)
            for (var number = 0; number < Math.Max(before.Rows[question].Count, after.Rows[question].Count); number++)
            {
                var was = number < before.Rows[question].Count ? before.Rows[question][number] : null;
                var row = number < after.Rows[question].Count ? after.Rows[question][number] : null;
                if (was is not null && row is not null && same(was, row)) continue;
                Changed[after.Subject] = Changed.GetValueOrDefault(after.Subject) | (1 << question);
                if (was is not null) old.Add((after.Subject, number));
                if (row is not null) now.Add((after.Subject, number, row));
            }

        if (old.Count > 0)
            Command($"""
                delete from {table.Full} t using unnest($1, $2, $3) as o (kind, id, number) where t.subject_kind = o.kind and t.subject = o.id and t.row_number = o.number
                """, Kinds(old.Select(row => row.Subject)), Ids(old.Select(row => row.Subject)), new NpgsqlParameter { Value = old.Select(row => row.Number).ToArray() });
        if (now.Count > 0)
            Command($"insert into {table.Full} ({ReadTable.Owner}, {table.Columns}) select * from json_to_recordset($1) as r ({table.Shape.Replace(" not null", "", StringComparison.Ordinal)})",
                new NpgsqlParameter { Value = Json(now, columns), NpgsqlDbType = NpgsqlDbType.Json });
    }

    private static byte[] Json(List<(Subject Subject, int Number, IRow Row)> rows, IReadOnlyList<Column> columns)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, RowJson.Options))
        {
            json.WriteStartArray();
            foreach (var (subject, number, row) in rows)
            {
                json.WriteStartObject();
                json.WriteNumber("subject_kind", (short)subject.Kind);
                json.WriteString("subject", subject.Id);
                json.WriteNumber("row_number", number);
                RowJson.WriteColumns(json, row, columns);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        return buffer.ToArray();
    }

    private void AddReads(IReadOnlyList<(Answers Before, Answers After)> pairs)
    {
        var gone = new List<(Subject Owner, Subject Read, int Questions)>();
        var come = new List<(Subject Owner, Subject Read, int Questions)>();
        foreach (var (before, after) in pairs)
        {
            foreach (var (read, was) in before.Reads)
                if ((was & ~after.Reads.GetValueOrDefault(read)) is var less and not 0)
                    gone.Add((after.Subject, read, less));
            foreach (var (read, now) in after.Reads)
                if ((now & ~before.Reads.GetValueOrDefault(read)) is var more and not 0)
                    come.Add((after.Subject, read, more));
        }

        if (gone.Count > 0)
        {
            const string these = "t.subject_kind = o.kind and t.subject = o.id and t.read_kind = o.read_kind and t.read = o.read";
            Command($"update {schema.Reads} t set questions = t.questions & ~o.questions from unnest($1, $2, $3, $4, $5) as o (kind, id, read_kind, read, questions) where {these}", Five(gone));
            Command($"delete from {schema.Reads} t using unnest($1, $2, $3, $4) as o (kind, id, read_kind, read) where {these} and t.questions = 0", Five(gone)[..4]);
        }

        if (come.Count > 0)
            Command($"""
                insert into {schema.Reads} as t (subject_kind, subject, read_kind, read, questions) select * from unnest($1, $2, $3, $4, $5)
                on conflict (subject_kind, subject, read_kind, read) do update set questions = t.questions | excluded.questions
                """, Five(come));
    }

    private static NpgsqlParameter[] Five(List<(Subject Owner, Subject Read, int Questions)> reads) =>
    [
        Kinds(reads.Select(read => read.Owner)), Ids(reads.Select(read => read.Owner)), Kinds(reads.Select(read => read.Read)), Ids(reads.Select(read => read.Read)),
        new NpgsqlParameter { Value = reads.Select(read => read.Questions).ToArray() },
    ];

    private void Command(string sql, params NpgsqlParameter[] parameters)
    {
        var command = new NpgsqlBatchCommand(sql);
        foreach (var parameter in parameters) command.Parameters.Add(parameter);
        _batch.BatchCommands.Add(command);
    }
}
