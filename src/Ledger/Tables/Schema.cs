using System.Security.Cryptography;
using System.Text;
using ColonyLineage.Ledger.Store;
using ColonyLineage.Projections;

namespace ColonyLineage.Ledger.Tables;

/// <summary>The read tables of an outfit, and the two that keep them up: <c>reads</c> and <c>read_state</c>.</summary>
/// <remarks>
/// <c>reads</c> says which other subjects a subject's rows were read from, and by which questions (a bit each, in the order of
/// <see cref="Questions.All"/>); the outfit is left out, since it is read by nearly everything. <c>read_state</c> holds the snapshot
/// of PostgreSQL's that the tables are up to: whatever transaction it does not see has still to be taken in. All of it can be worked
/// out from the entries again.
/// </remarks>
internal sealed class Schema
{
    private readonly string _unlogged;

    public Schema(OutfitName outfit, bool durable)
    {
        Outfit = outfit;
        _unlogged = durable ? "" : "unlogged ";
        Tables = [.. Questions.All.Select(question => new ReadTable(outfit, question))];
        // Rows depend on the code that folds them as well: another build of it works them out anew.
        var shape = string.Join("\n", Tables.Select(table => table.Name + table.Shape)) + durable + typeof(Questions).Assembly.ManifestModule.ModuleVersionId;
        Shape = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(shape))[..16]);
    }

    public OutfitName Outfit { get; }

    public IReadOnlyList<ReadTable> Tables { get; }

    /// <summary>Which tables these are and which code filled them.</summary>
    public string Shape { get; }

    public string State => $"{Outfit}.read_state";

    public string Reads => $"{Outfit}.reads";

    public string CreateState => $"create {_unlogged}table if not exists {State} (one boolean primary key default true check (one), snapshot pg_snapshot not null, shape text not null, version bigint not null)";

    /// <summary>The tables that <see cref="Swap"/> puts in place, empty and without indexes.</summary>
    public string CreateFresh => string.Join(";\n", Everything.Select(table => $"drop table if exists {Fresh(table)}")
        .Append($"create {_unlogged}table {Fresh("reads")} (subject_kind smallint not null, subject uuid not null, read_kind smallint not null, read uuid not null, questions integer not null)")
        .Concat(Tables.Select(table => $"create {_unlogged}table {Fresh(table.Name)} ({table.Shape})")));

    /// <summary>The indexes of the fresh tables, made when they are full.</summary>
    public IReadOnlyList<string> IndexFresh =>
    [
        $"alter table {Fresh("reads")} add primary key (subject_kind, subject, read_kind, read)",
        $"create index on {Fresh("reads")} (read)",
        .. Tables.Select(table => $"alter table {Fresh(table.Name)} add primary key ({ReadTable.Owner})"),
    ];

    public string Swap => string.Join(";\n", Everything.SelectMany(table => new[] { $"drop table if exists {Outfit}.{table}", $"alter table {Fresh(table)} rename to {table}" }));

    public string Fresh(string table) => $"{Outfit}.{table}_fresh";

    private IEnumerable<string> Everything => Tables.Select(table => table.Name).Append("reads");
}
