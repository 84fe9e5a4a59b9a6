using ColonyLineage.Entries;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>Whose rows have to be worked out again when some subjects are touched.</summary>
internal static class Owners
{
    /// <summary>The touched subjects and those whose rows were read from one of them, with a bit for each question concerned.</summary>
    public static async Task<Dictionary<Subject, int>> OfAsync(Schema schema, NpgsqlConnection connection, IReadOnlyCollection<Subject> touched, CancellationToken cancel)
    {
        var owners = touched.ToDictionary(subject => subject, subject => Answers.AllOf(subject.Kind));
        await using var command = new NpgsqlCommand($"""
            select r.subject_kind, r.subject, bit_or(r.questions) from {schema.Reads} r
            where r.read = any($2) and (r.read_kind, r.read) in (select * from unnest($1, $2))
            group by r.subject_kind, r.subject
            """, connection) { Parameters = { Kinds(touched), Ids(touched) } };
        await using var reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel))
        {
            var owner = new Subject((SubjectKind)reader.GetInt16(0), reader.GetGuid(1));
            owners[owner] = owners.GetValueOrDefault(owner) | reader.GetInt32(2);
        }

        return owners;
    }

    /// <summary>What some owners' rows were read from last time: very likely what they are read from now.</summary>
    public static async Task<List<Subject>> ReadByAsync(Schema schema, NpgsqlConnection connection, IReadOnlyCollection<Subject> owners, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand($"""
            select distinct r.read_kind, r.read from unnest($1, $2) as o (kind, id) join {schema.Reads} r on r.subject_kind = o.kind and r.subject = o.id
            """, connection) { Parameters = { Kinds(owners), Ids(owners) } };
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var read = new List<Subject>();
        while (await reader.ReadAsync(cancel)) read.Add(new Subject((SubjectKind)reader.GetInt16(0), reader.GetGuid(1)));
        return read;
    }

    public static NpgsqlParameter Kinds(IEnumerable<Subject> subjects) => new() { Value = subjects.Select(subject => (short)subject.Kind).ToArray() };

    public static NpgsqlParameter Ids(IEnumerable<Subject> subjects) => new() { Value = subjects.Select(subject => subject.Id).ToArray() };
}
