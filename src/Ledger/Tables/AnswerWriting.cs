using System.Text.Json;
using ColonyLineage.Entries;
using Npgsql;
using NpgsqlTypes;

namespace ColonyLineage.Ledger.Tables;

/// <summary>Puts answers in the place of those before, in one batch: old rows out, new rows in, what they were read from, and how far it goes.</summary>
internal sealed class AnswerWriting(Schema schema, NpgsqlConnection connection)
{
    private readonly NpgsqlBatch _batch = new(connection);

    public void Add(IReadOnlyList<Answers> answers, KnownReads known)
    {
        for (var i = 0; i < schema.Tables.Count; i++) AddRows(i, answers);
        AddReads(answers, known);
    }

    /// <summary>Sends it all. What can be worked out again need not wait for the disk.</summary>
    public async Task FinishAsync(string upTo, CancellationToken cancel)
    {
        Command($"update {schema.State} set snapshot = $1::pg_snapshot{(_batch.BatchCommands.Count == 0 ? "" : $", version = nextval('{schema.Outfit}.read_version')")}", new NpgsqlParameter { Value = upTo });
        Command("set local synchronous_commit = off");
        await using (_batch) await _batch.ExecuteNonQueryAsync(cancel);
    }

    private void AddRows(int question, IReadOnlyList<Answers> answers)
    {
        var table = schema.Tables[question];
        var owners = answers.Where(answer => answer.Rows[question] is not null).Select(answer => answer.Subject).ToList();
        if (owners.Count == 0) return;
        Command($"delete from {table.Full} t using unnest($1, $2) as o (kind, id) where t.subject_kind = o.kind and t.subject = o.id", Kinds(owners), Ids(owners));
        if (Json(question, answers) is { } rows)
            Command($"insert into {table.Full} ({ReadTable.Owner}, {table.Columns}) select * from json_to_recordset($1) as r ({table.Shape.Replace(" not null", "", StringComparison.Ordinal)})",
                new NpgsqlParameter { Value = rows, NpgsqlDbType = NpgsqlDbType.Json });
    }

    private byte[]? Json(int question, IReadOnlyList<Answers> answers)
    {
        var columns = schema.Tables[question].Question.Columns;
        using var buffer = new MemoryStream();
        var count = 0;
        using (var json = new Utf8JsonWriter(buffer, RowJson.Options))
        {
            json.WriteStartArray();
            foreach (var answer in answers)
                for (var number = 0; number < (answer.Rows[question]?.Count ?? 0); number++, count++)
                {
                    json.WriteStartObject();
                    json.WriteNumber("subject_kind", (short)answer.Subject.Kind);
                    json.WriteString("subject", answer.Subject.Id);
                    json.WriteNumber("row_number", number);
                    RowJson.WriteColumns(json, answer.Rows[question]![number], columns);
                    json.WriteEndObject();
                }

            json.WriteEndArray();
        }

        return count == 0 ? null : buffer.ToArray();
    }

    /// <summary>Most of what was read before is read again, so only the difference is written.</summary>
    private void AddReads(IReadOnlyList<Answers> answers, KnownReads known)
    {
        var now = new Dictionary<(Subject Owner, Subject Read), int>();
        foreach (var answer in answers)
            foreach (var (read, questions) in answer.Reads)
                now.Add((answer.Subject, read), questions);
        foreach (var (pair, questions) in known.Reads)
        {
            var untouched = questions & ~known.Owners[pair.Owner];
            if (untouched != 0) now[pair] = now.GetValueOrDefault(pair) | untouched;
        }

        var gone = known.Reads.Keys.Where(pair => !now.ContainsKey(pair)).ToList();
        var changed = now.Where(pair => known.Reads.GetValueOrDefault(pair.Key) != pair.Value).ToList();
        if (gone.Count > 0)
            Command($"""
                delete from {schema.Reads} t using unnest($1, $2, $3, $4) as o (kind, id, read_kind, read)
                where t.subject_kind = o.kind and t.subject = o.id and t.read_kind = o.read_kind and t.read = o.read
                """, Kinds(gone.Select(pair => pair.Owner)), Ids(gone.Select(pair => pair.Owner)), Kinds(gone.Select(pair => pair.Read)), Ids(gone.Select(pair => pair.Read)));
        if (changed.Count > 0)
            Command($"""
                insert into {schema.Reads} (subject_kind, subject, read_kind, read, questions) select * from unnest($1, $2, $3, $4, $5)
                on conflict (subject_kind, subject, read_kind, read) do update set questions = excluded.questions
                """, Kinds(changed.Select(pair => pair.Key.Owner)), Ids(changed.Select(pair => pair.Key.Owner)), Kinds(changed.Select(pair => pair.Key.Read)),
                Ids(changed.Select(pair => pair.Key.Read)), new NpgsqlParameter { Value = changed.Select(pair => pair.Value).ToArray() });
    }

    private void Command(string sql, params NpgsqlParameter[] parameters)
    {
        var command = new NpgsqlBatchCommand(sql);
        foreach (var parameter in parameters) command.Parameters.Add(parameter);
        _batch.BatchCommands.Add(command);
    }

    private static NpgsqlParameter Kinds(IEnumerable<Subject> subjects) => new() { Value = subjects.Select(subject => (short)subject.Kind).ToArray() };

    private static NpgsqlParameter Ids(IEnumerable<Subject> subjects) => new() { Value = subjects.Select(subject => subject.Id).ToArray() };
}
