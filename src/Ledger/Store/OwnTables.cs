namespace ColonyLineage.Ledger.Store;

/// <summary>Our own tables beside Marten's, written in the same transaction as the events.</summary>
internal static class OwnTables
{
    /// <summary>Changes whenever the statements below, or Marten, change: what it is compared with stands as the schema's comment.</summary>
    public static readonly string Version = $"Books of one outfit. Tables of version 1, Marten {typeof(Marten.DocumentStore).Assembly.GetName().Version}";

    /// <summary>
    /// <c>entry</c>: every entry recorded, with the hash of its content, the act, the entry that it voids, and the transaction that
    /// recorded it (by which the read tables tell what they have not seen). <c>entry_concerns</c>: the subjects that an entry
    /// concerns beyond the one whose stream it lies in. <c>kept_aside</c>: what was sent and refused, which need not be JSON.
    /// <c>read_version</c>: numbers the states of the read tables, and outlives them.
    /// </summary>
    public static string Create(OutfitName s) => $"""
        create table if not exists {s}.entry (
            id uuid primary key,
            hash bytea not null,
            act uuid not null,
            voids uuid,
            recorded_in xid8 not null default pg_current_xact_id());
        create index if not exists entry_act on {s}.entry (act);
        create index if not exists entry_voids on {s}.entry (voids) where voids is not null;
        create index if not exists entry_recorded_in on {s}.entry (recorded_in);
        create table if not exists {s}.entry_concerns (subject uuid not null, entry uuid not null, primary key (subject, entry));
        create table if not exists {s}.kept_aside (
            number bigint generated always as identity primary key,
            entry uuid,
            hash bytea not null unique,
            received timestamptz not null,
            refusal text not null,
            message text not null,
            payload text not null);
        create sequence if not exists {s}.read_version;
        """;
}
