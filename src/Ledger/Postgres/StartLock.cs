namespace ColonyLineage.Ledger.Postgres;

/// <summary>Held while the private database is made, started or stopped, so that two processes do not do it at once.</summary>
/// <remarks>The operating system lets go of it when its holder dies, however it dies.</remarks>
internal static class StartLock
{
    /// <summary>Waits until it is ours.</summary>
    public static async Task<FileStream> TakeAsync(string file, CancellationToken cancel)
    {
        for (var deadline = DateTime.UtcNow.AddMinutes(3); ; await Task.Delay(50, cancel))
        {
            if (TryTake(file) is { } held) return held;
            if (DateTime.UtcNow > deadline)
                throw new PostgresUnavailableException($"Another process has held {file} for three minutes. End it, or try again.");
        }
    }

    /// <summary>The lock, or null where another process has it.</summary>
    public static FileStream? TryTake(string file)
    {
        try
        {
            return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException problem) when (problem is not (DirectoryNotFoundException or FileNotFoundException))
        {
            return null;
        }
    }
}
