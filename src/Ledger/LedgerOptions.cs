using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace ColonyLineage.Ledger;

/// <summary>How an outfit's ledger is run.</summary>
public sealed record LedgerOptions
{
    /// <summary>Watch for entries that other processes record, so that the read tables follow within moments. A server says yes.</summary>
    public bool RunDaemon { get; init; }

    /// <summary>
    /// Write the read tables through PostgreSQL's log. Off, they are quicker; after a crash of PostgreSQL, or on a replica, they are
    /// empty and are worked out again from the entries, which are always durable.
    /// </summary>
    public bool DurableReadTables { get; init; }

    /// <summary>Where it says what went wrong without failing a caller.</summary>
    public ILogger Log { get; init; } = NullLogger.Instance;
}
