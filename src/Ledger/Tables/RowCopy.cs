using ColonyLineage.Entries;
using ColonyLineage.Projections;
using Npgsql;
using NpgsqlTypes;

namespace ColonyLineage.Ledger.Tables;

/// <summary>Copies answers into the fresh tables in bulk, over a connection of its own.</summary>
internal sealed class RowCopy(Schema schema, NpgsqlConnection connection)
{
    private const int Enough = 4000;
    private readonly List<(Subject Subject, int Number, IRow Row)>[] _rows = [.. schema.Tables.Select(_ => new List<(Subject, int, IRow)>())];
    private readonly List<(Subject Subject, Subject Read, int Questions)> _reads = [];

    public async Task AddAsync(Answers answers, CancellationToken cancel)
    {
        for (var i = 0; i < _rows.Length; i++)
        {
            var rows = answers.Rows[i];
            for (var number = 0; number < rows.Count; number++) _rows[i].Add((answers.Subject, number, rows[number]));
            if (_rows[i].Count >= Enough) await FlushAsync(i, cancel);
        }

        foreach (var (read, questions) in answers.Reads) _reads.Add((answers.Subject, read, questions));
        if (_reads.Count >= 5 * Enough) await FlushReadsAsync(cancel);
    }

    public async Task CompleteAsync(CancellationToken cancel)
    {
        for (var i = 0; i < _rows.Length; i++) await FlushAsync(i, cancel);
        await FlushReadsAsync(cancel);
    }

    private async Task FlushAsync(int table, CancellationToken cancel)
    {
        if (_rows[table].Count == 0) return;
        var columns = schema.Tables[table].Question.Columns;
        await using var copy = await connection.BeginBinaryImportAsync(
            $"copy {schema.Fresh(schema.Tables[table].Name)} ({ReadTable.Owner}, {schema.Tables[table].Columns}) from stdin (format binary)", cancel);
        foreach (var (subject, number, row) in _rows[table])
        {
            copy.StartRow();
            copy.Write((short)subject.Kind, NpgsqlDbType.Smallint);
            copy.Write(subject.Id, NpgsqlDbType.Uuid);
            copy.Write(number, NpgsqlDbType.Integer);
            foreach (var column in columns) Write(copy, column.Value(row));
        }

        await copy.CompleteAsync(cancel);
        _rows[table].Clear();
    }

    private async Task FlushReadsAsync(CancellationToken cancel)
    {
        if (_reads.Count == 0) return;
        await using var copy = await connection.BeginBinaryImportAsync(
            $"copy {schema.Fresh("reads")} (subject_kind, subject, read_kind, read, questions) from stdin (format binary)", cancel);
        foreach (var (subject, read, questions) in _reads)
        {
            copy.StartRow();
            copy.Write((short)subject.Kind, NpgsqlDbType.Smallint);
            copy.Write(subject.Id, NpgsqlDbType.Uuid);
            copy.Write((short)read.Kind, NpgsqlDbType.Smallint);
            copy.Write(read.Id, NpgsqlDbType.Uuid);
            copy.Write(questions, NpgsqlDbType.Integer);
        }

        await copy.CompleteAsync(cancel);
        _reads.Clear();
    }

    private static void Write(NpgsqlBinaryImporter copy, object? value)
    {
        switch (value)
        {
            case null: copy.WriteNull(); break;
            case string text: copy.Write(text, NpgsqlDbType.Text); break;
            case int whole: copy.Write(whole, NpgsqlDbType.Integer); break;
            case decimal number: copy.Write(number, NpgsqlDbType.Numeric); break;
            case DateOnly day: copy.Write(day, NpgsqlDbType.Date); break;
            case bool flag: copy.Write(flag, NpgsqlDbType.Boolean); break;
            case Guid id: copy.Write(id, NpgsqlDbType.Uuid); break;
            case Guid[] ids: copy.Write(ids, NpgsqlDbType.Array | NpgsqlDbType.Uuid); break;
            case string[] texts: copy.Write(texts, NpgsqlDbType.Array | NpgsqlDbType.Text); break;
            default: throw new NotSupportedException($"A row cannot hold a {value.GetType().Name}.");
        }
    }
}
