using System.Text.Json;
using ColonyLineage.Ledger;
using ColonyLineage.Server.Answers;

namespace ColonyLineage.Server.Api;

/// <summary>Sends JSON whole, so that what fails while it is written is not sent as half of it.</summary>
internal static class Json
{
    public static async Task Send(HttpContext context, Action<Utf8JsonWriter> write, int status = StatusCodes.Status200OK)
    {
        using var buffer = new MemoryStream();
        await using (var json = new Utf8JsonWriter(buffer, AnswerJson.Options)) write(json);
        context.Response.StatusCode = status;
        context.Response.ContentType = "application/json; charset=utf-8";
        context.Response.ContentLength = buffer.Length;
        await context.Response.Body.WriteAsync(buffer.GetBuffer().AsMemory(0, (int)buffer.Length), context.RequestAborted);
    }
}

/// <summary>What was recorded, as the API says it.</summary>
internal static class Receipts
{
    /// <summary>The receipt of one act.</summary>
    public static Task Send(HttpContext context, Receipt receipt) => Json.Send(context, json =>
    {
        json.WriteStartObject();
        Write(json, receipt);
        json.WriteEndObject();
    });

    /// <summary>Its properties: <c>recorded</c> where something is new, <c>known</c> where all of it was there, <c>refused</c>.</summary>
    public static void Write(Utf8JsonWriter json, Receipt receipt)
    {
        json.WriteString("outcome", receipt.Refusals.Count > 0 ? "refused" : receipt.New.Count > 0 ? "recorded" : "known");
        json.WriteStartArray("recorded");
        foreach (var id in receipt.New) json.WriteStringValue(id.Value);
        json.WriteEndArray();
        json.WriteStartArray("known");
        foreach (var id in receipt.Known) json.WriteStringValue(id.Value);
        json.WriteEndArray();
    }
}
