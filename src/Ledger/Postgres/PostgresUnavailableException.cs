namespace ColonyLineage.Ledger.Postgres;

/// <summary>There is no PostgreSQL to be had here; the message says what to do about it.</summary>
public sealed class PostgresUnavailableException(string message) : Exception(message);
