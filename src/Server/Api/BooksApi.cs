using System.Text.Json;
using ColonyLineage.Ledger;
using ColonyLineage.Server.Answers;
using ColonyLineage.Server.Jobs;
using Wolverine;

namespace ColonyLineage.Server.Api;

/// <summary>The state of the books and of the server: counts, what was kept aside, long jobs.</summary>
internal static class BooksApi
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health", Health);
        routes.MapGet("/status", Status);
        routes.MapGet("/kept-aside", KeptAside);
        routes.MapGet("/jobs", Jobs);
        routes.MapGet("/jobs/{id:guid}", OneJob);
        routes.MapPost("/rebuild", StartRebuild);
    }

    private static async Task Health(HttpContext context, OutfitLedger ledger)
    {
        await ledger.VersionAsync(context.RequestAborted);
        await Json.Send(context, json =>
        {
            json.WriteStartObject();
            json.WriteString("health", "good");
            json.WriteString("outfit", ledger.Outfit);
            json.WriteEndObject();
        });
    }

    private static async Task Status(HttpContext context, OutfitLedger ledger)
    {
        var status = await ledger.StatusAsync(context.Request.Query["check"] == "yes", context.RequestAborted);
        await Json.Send(context, json => JsonSerializer.Serialize(json, status, JsonSerializerOptions.Web));
    }

    private static async Task KeptAside(HttpContext context, OutfitLedger ledger)
    {
        var kept = await ledger.KeptAsideAsync(context.RequestAborted);
        await Json.Send(context, json =>
        {
            json.WriteStartObject();
            json.WriteStartArray("kept_aside");
            foreach (var one in kept)
            {
                json.WriteStartObject();
                json.WriteString("received", AnswerJson.Text(one.Received));
                if (one.Entry is { } id) json.WriteString("entry", id.Value);
                else json.WriteNull("entry");
                json.WriteString("refusal", one.Refusal);
                json.WriteString("message", one.Message);
                json.WriteString("payload", one.Payload);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        });
    }

    private static Task Jobs(HttpContext context, JobBoard board) => Json.Send(context, json =>
    {
        json.WriteStartObject();
        json.WriteStartArray("jobs");
        foreach (var job in board.All) Write(json, job);
        json.WriteEndArray();
        json.WriteEndObject();
    });

    private static Task OneJob(HttpContext context, Guid id, JobBoard board) => board.Find(id) is { } job
        ? Json.Send(context, json => Write(json, job))
        : Problem.Write(context, StatusCodes.Status404NotFound, Entries.Refusals.NotFound, "There is no such job.", "This server remembers the last jobs since it started: see /jobs.");

    private static async Task StartRebuild(HttpContext context, JobBoard board, IMessageBus bus, Clock clock)
    {
        var job = Guid.CreateVersion7(clock.Now.Instant);
        board.Waits(job, Rebuild.What);
        await bus.PublishAsync(new Rebuild(job));
        await Accepted(context, board, job);
    }

    /// <summary>The job was taken on: where to look how far it is.</summary>
    internal static Task Accepted(HttpContext context, JobBoard board, Guid job)
    {
        context.Response.Headers.Location = $"/jobs/{job}";
        return Json.Send(context, json => Write(json, board.Find(job)!), StatusCodes.Status202Accepted);
    }

    private static void Write(Utf8JsonWriter json, Job job)
    {
        json.WriteStartObject();
        json.WriteString("id", job.Id);
        json.WriteString("what", job.What);
        json.WriteString("state", job.State);
        json.WriteString("step", job.Step);
        json.WriteNumber("done", Math.Round(job.Done, 3));
        json.WriteString("outcome", job.Outcome);
        json.WriteString("since", AnswerJson.Text(job.Since));
        json.WriteEndObject();
    }
}
