using System.Collections.Concurrent;

namespace ColonyLineage.Server.Jobs;

/// <summary>How far a long job is.</summary>
/// <param name="Id">Its id.</param>
/// <param name="What">What it does, in words.</param>
/// <param name="State"><c>waiting</c>, <c>running</c>, <c>done</c> or <c>failed</c>.</param>
/// <param name="Step">The step it is at.</param>
/// <param name="Done">The share of the step that is done, 0 to 1.</param>
/// <param name="Outcome">What came of it, in words.</param>
/// <param name="Since">When it was asked for.</param>
public sealed record Job(Guid Id, string What, string State, string? Step, double Done, string? Outcome, DateTimeOffset Since);

/// <summary>
/// The long jobs that this server does or did, latest first. The jobs themselves are durable messages: one that a stop cut short
/// starts again with the next start and appears here anew. What is done twice changes nothing.
/// </summary>
public sealed class JobBoard(TimeProvider time)
{
    private const int Remembered = 100;
    private readonly ConcurrentDictionary<Guid, Job> _jobs = [];

    /// <summary>All of them.</summary>
    public IReadOnlyList<Job> All => [.. _jobs.Values.OrderByDescending(job => job.Since)];

    /// <summary>One of them.</summary>
    public Job? Find(Guid id) => _jobs.GetValueOrDefault(id);

    /// <summary>A job was asked for.</summary>
    public void Waits(Guid id, string what)
    {
        _jobs.TryAdd(id, new Job(id, what, "waiting", null, 0, null, time.GetUtcNow()));
        foreach (var old in All.Skip(Remembered)) _jobs.TryRemove(old.Id, out _);
    }

    /// <summary>Does it, and notes how far it is and what came of it.</summary>
    public async Task RunAsync(Guid id, string what, Func<IProgress<(string Step, double Done)>, Task<string>> work)
    {
        Waits(id, what);
        Change(id, job => job with { State = "running" });
        try
        {
            var outcome = await work(new Steps(this, id));
            Change(id, job => job with { State = "done", Step = null, Done = 1, Outcome = outcome });
        }
        catch (Exception problem)
        {
            Change(id, job => job with { State = "failed", Outcome = problem is Entries.RefusedException ? problem.Message : "It failed; the server's log says why." });
            throw;
        }
    }

    private void Change(Guid id, Func<Job, Job> change)
    {
        while (_jobs.TryGetValue(id, out var job) && !_jobs.TryUpdate(id, change(job), job)) ;
    }

    private sealed class Steps(JobBoard board, Guid id) : IProgress<(string Step, double Done)>
    {
        public void Report((string Step, double Done) value) => board.Change(id, job => job with { Step = value.Step, Done = Math.Clamp(value.Done, 0, 1) });
    }
}
