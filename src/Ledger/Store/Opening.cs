using ColonyLineage.Entries;
using JasperFx;
using Npgsql;

namespace ColonyLineage.Ledger.Store;

/// <summary>Makes the outfit's schema and its tables where they are missing or of an older version.</summary>
internal static class Opening
{
    public static async Task EnsureAsync(NpgsqlDataSource source, OutfitName outfit, CancellationToken cancel)
    {
        if (await VersionAsync(source, outfit, cancel) == OwnTables.Version) return;
        await using var connection = await source.OpenConnectionAsync(cancel);
        await using var held = await SessionLock.TakeAsync(connection, outfit.Lock("open"), cancel);
        if (await VersionAsync(source, outfit, cancel) == OwnTables.Version) return;
        await RefuseReservedAsync(connection, outfit, cancel);
        await ExecuteAsync(connection, $"create schema if not exists {outfit}", cancel);
        using (var store = MartenStore.Make(source, outfit, AutoCreate.CreateOrUpdate))
            await store.Storage.ApplyAllConfiguredChangesToDatabaseAsync(AutoCreate.CreateOrUpdate);
        await ExecuteAsync(connection, OwnTables.Create(outfit), cancel);
        await ExecuteAsync(connection, $"comment on schema {outfit} is '{OwnTables.Version}'", cancel);
    }

    private static async Task<string?> VersionAsync(NpgsqlDataSource source, OutfitName outfit, CancellationToken cancel)
    {
        await using var command = source.CreateCommand("select obj_description(oid, 'pg_namespace') from pg_namespace where nspname = $1");
        command.Parameters.Add(new() { Value = outfit.Name });
        return await command.ExecuteScalarAsync(cancel) as string;
    }

    /// <summary>Marten writes the schema's name without quotes, so a word that SQL keeps for itself cannot be one.</summary>
    private static async Task RefuseReservedAsync(NpgsqlConnection connection, OutfitName outfit, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand("select count(*) from pg_get_keywords() where word = $1 and catcode in ('R', 'T')", connection) { Parameters = { new() { Value = outfit.Name } } };
        if ((long)(await command.ExecuteScalarAsync(cancel))! > 0)
            throw new RefusedException(new Refusal(Refusals.UnknownWord, "outfit", $"'{outfit}' is a word that SQL keeps for itself; take another short name for the outfit."));
    }

    private static async Task ExecuteAsync(NpgsqlConnection connection, string sql, CancellationToken cancel)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(cancel);
    }
}
