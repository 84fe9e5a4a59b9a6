using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Rules;
using ColonyLineage.Server.Acts;
using ColonyLineage.Server.Answers;
using ColonyLineage.Server.Messages;
using Wolverine;

namespace ColonyLineage.Server.Api;

/// <summary>Acts of the crew, each as the request that Rules decide on.</summary>
public sealed class ActsApi(ServerOptions options)
{
    internal void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/acts/{name}", Run);
        routes.MapPost("/voids", Void);
    }

    private async Task Run(HttpContext context, string name)
    {
        if (!ActCatalogue.Names.Contains(name))
        {
            await Problem.Write(context, StatusCodes.Status404NotFound, ServerRefusals.NothingHere, "There is no such act.", $"Take one of {string.Join(", ", ActCatalogue.Names)}.");
            return;
        }

        if (await Body.JsonAsync(context, options.BodyLimitBytes) is { } body) await Decide(context, () => Read(name, body));
    }

    /// <summary>The request in a body.</summary>
    /// <exception cref="RefusedException">It is none.</exception>
    public static object Read(string name, JsonNode body)
    {
        if (ActCatalogue.RequestOf(name) is { } type) return StrictJson.Read(body, type);
        var (entries, refusals) = EntriesApi.ReadAll([body.DeepClone()]);
        if (refusals.Count == 0) return new RecordOne(entries[0]);
        throw new RefusedException([.. refusals.Select(refusal => refusal with { Field = refusal.Field["entries[0]".Length..].TrimStart('.') })]);
    }

    /// <summary>Voids entries, or a whole act: <c>{"entries": […], "why": "…"}</c> or <c>{"ofAct": "…", "why": "…"}</c>.</summary>
    private async Task Void(HttpContext context)
    {
        if (await Body.JsonAsync(context, options.BodyLimitBytes) is not { } body) return;
        var (ledger, clock) = (context.RequestServices.GetRequiredService<OutfitLedger>(), context.RequestServices.GetRequiredService<Clock>());
        IReadOnlyList<Entry>? ofAct = null;
        VoidRequest? request = null;
        try
        {
            request = (VoidRequest)StrictJson.Read(body, typeof(VoidRequest));
            if (request.OfAct is { } act) ofAct = await Voids.EntriesOfAsync(ledger, act, context.RequestAborted);
        }
        catch (RefusedException refused)
        {
            await Problem.Refused(context, refused.Refusals);
            return;
        }

        await Decide(context, () => new VoidEntries
        {
            Act = request.Act ?? new ActId(Guid.CreateVersion7(clock.Now.Instant)), On = request.On ?? clock.Today, By = request.By, Why = request.Why,
            Entries = [.. request.Entries ?? [], .. ofAct?.Select(entry => entry.Id) ?? []],
        });
    }

    private static async Task Decide(HttpContext context, Func<object> read)
    {
        Receipt receipt;
        try
        {
            var request = read();
            receipt = await context.RequestServices.GetRequiredService<IMessageBus>().InvokeAsync<Receipt>(new RunAct(request), context.RequestAborted);
        }
        catch (RefusedException refused)
        {
            receipt = new Receipt([], [], refused.Refusals);
        }

        if (receipt.Refusals.Count > 0) await Problem.Refused(context, receipt.Refusals);
        else await Receipts.Send(context, receipt);
    }

    private sealed record VoidRequest
    {
        public ActId? Act { get; init; }

        public Occurred? On { get; init; }

        public string? By { get; init; }

        public required string Why { get; init; }

        public IReadOnlyList<EntryId>? Entries { get; init; }

        public ActId? OfAct { get; init; }
    }
}
