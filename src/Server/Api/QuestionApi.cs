using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Server.Answers;

namespace ColonyLineage.Server.Api;

/// <summary>
/// A question answers at one address: as a page, and with <c>format=json</c> or <c>format=csv</c> (or an Accept header that names one of the
/// two and no page) as data.
/// </summary>
internal static class QuestionApi
{
    /// <summary>Answers what asks for data; lets everything else go on to the pages.</summary>
    public static async Task Answer(HttpContext context, RequestDelegate next)
    {
        var question = context.Request.Path.Value!.Trim('/');
        if (!(HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method)) || !Answering.Names.Contains(question))
        {
            await next(context);
            return;
        }

        try
        {
            var format = FormatOf(context.Request);
            if (format is null)
            {
                await next(context);
                return;
            }

            var asked = Query.Read(question, context.Request.Query.SelectMany(pair => pair.Value, (pair, value) => KeyValuePair.Create(pair.Key, value)));
            if (format == "json") await Json(context, question, asked);
            else await Csv(context, question, asked);
        }
        catch (RefusedException refused) when (!context.Response.HasStarted)
        {
            await Problem.Malformed(context, refused.Refusals[0]);
        }
    }

    private static string? FormatOf(HttpRequest request)
    {
        if (request.Query.TryGetValue("format", out var formats) && formats.ToString() is { Length: > 0 } format)
        {
            return format switch
            {
                "json" or "csv" => format,
                "html" => null,
                _ => throw new RefusedException(new Refusal(Refusals.UnknownWord, "format", "Take one of html, json, csv.")),
            };
        }

        var accepts = request.GetTypedHeaders().Accept;
        if (accepts.Any(type => type.MediaType == "text/html")) return null;
        return accepts.Any(type => type.MediaType == "application/json") ? "json" : accepts.Any(type => type.MediaType == "text/csv") ? "csv" : null;
    }

    private static async Task Json(HttpContext context, string question, Asked asked)
    {
        var today = context.RequestServices.GetRequiredService<Clock>().Today;
        if (Answering.IsPlain(question, asked))
        {
            var ledger = context.RequestServices.GetRequiredService<OutfitLedger>();
            var rows = new MemoryStream();
            await ledger.WriteJsonAsync(Answering.Find(question), asked.Ask, rows, context.RequestAborted);
            await using var head = new MemoryStream();
            await using (var json = new Utf8JsonWriter(head, AnswerJson.Options)) AnswerJson.WriteHead(json, question, asked, today);
            context.Response.ContentType = "application/json; charset=utf-8";
            context.Response.ContentLength = head.Length + rows.Length + 1;
            await context.Response.Body.WriteAsync(head.GetBuffer().AsMemory(0, (int)head.Length), context.RequestAborted);
            await context.Response.Body.WriteAsync(rows.GetBuffer().AsMemory(0, (int)rows.Length), context.RequestAborted);
            await context.Response.Body.WriteAsync("}"u8.ToArray(), context.RequestAborted);
            return;
        }

        var answer = await context.RequestServices.GetRequiredService<Answering>().AnswerAsync(question, asked, context.RequestAborted);
        await Send(context, "application/json; charset=utf-8", to => AnswerJson.Write(to, question, asked, today, answer));
    }

    private static async Task Csv(HttpContext context, string question, Asked asked)
    {
        var answer = await context.RequestServices.GetRequiredService<Answering>().AnswerAsync(question, asked, context.RequestAborted);
        context.Response.Headers.ContentDisposition = $"attachment; filename=\"{question}.csv\"";
        await Send(context, "text/csv; charset=utf-8; header=present", to => AnswerCsv.Write(to, answer));
    }

    private static async Task Send(HttpContext context, string type, Action<Stream> write)
    {
        using var buffer = new MemoryStream();
        write(buffer);
        context.Response.ContentType = type;
        context.Response.ContentLength = buffer.Length;
        await context.Response.Body.WriteAsync(buffer.GetBuffer().AsMemory(0, (int)buffer.Length), context.RequestAborted);
    }
}
