using ColonyLineage.Entries;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>Whose rows have to be worked out again when some subjects are touched, and what they were read from last time.</summary>
/// <param name="Owners">The subjects whose rows rest on a touched one, with a bit for each question concerned.</param>
/// <param name="Reads">What they were read from, with a bit for each question that read it.</param>
internal sealed record KnownReads(IReadOnlyDictionary<Subject, int> Owners, IReadOnlyDictionary<(Subject Owner, Subject Read), int> Reads)
{
    public static async Task<KnownReads> AboutAsync(Schema schema, NpgsqlConnection connection, HashSet<Subject> touched, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand($"""
            with owner as (
                select distinct subject_kind, subject from {schema.Reads} r where r.read = any($1)
                union
                select * from unnest($2, $1))
            select r.subject_kind, r.subject, r.read_kind, r.read, r.questions
            from owner join {schema.Reads} r using (subject_kind, subject)
            """, connection)
        {
            Parameters =
            {
                new() { Value = touched.Select(subject => subject.Id).ToArray() },
                new() { Value = touched.Select(subject => (short)subject.Kind).ToArray() },
            },
        };
        var owners = touched.ToDictionary(subject => subject, subject => Answers.AllOf(subject.Kind));
        var reads = new Dictionary<(Subject Owner, Subject Read), int>();
        await using var reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel))
        {
            var owner = new Subject((SubjectKind)reader.GetInt16(0), reader.GetGuid(1));
            var read = new Subject((SubjectKind)reader.GetInt16(2), reader.GetGuid(3));
            var questions = reader.GetInt32(4);
            reads.Add((owner, read), questions);
            if (touched.Contains(read)) owners[owner] = owners.GetValueOrDefault(owner) | questions;
        }

        return new KnownReads(owners, reads.Where(pair => owners.ContainsKey(pair.Key.Owner)).ToDictionary());
    }
}
