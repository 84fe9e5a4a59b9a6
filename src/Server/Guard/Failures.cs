using System.Net.Mime;

namespace ColonyLineage.Server.Guard;

/// <summary>The last net: what nobody foresaw is told without its insides, and programs are told as programs.</summary>
internal static partial class Failures
{
    public static async Task Catch(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Whoever asked has gone.
            return;
        }
        catch (BadHttpRequestException bad) when (!context.Response.HasStarted)
        {
            var large = bad.StatusCode == StatusCodes.Status413PayloadTooLarge;
            await Problem.Write(context, bad.StatusCode, large ? ServerRefusals.TooLarge : ServerRefusals.Malformed, large ? "The body is too large." : "The request cannot be read.", large ? "Send it in parts." : "Mend the request and send it again.");
        }
        catch (Exception problem) when (!context.Response.HasStarted)
        {
            var log = context.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("ColonyLineage.Server");
            Failed(log, problem, context.Request.Method, context.Request.Path);
            await Problem.Write(context, StatusCodes.Status500InternalServerError, ServerRefusals.Failed, "The server failed.", "Nothing of this request is sure to be recorded; sending it again does no harm. The server's log says why.");
        }

        if (context.Response is not { HasStarted: false, StatusCode: >= 400, ContentType: null }) return;
        if (WantsPage(context.Request)) await ExplainToPerson(context);
        else await Explain(context);
    }

    // Statuses that routing gives without a word.
    private static Task Explain(HttpContext context) => context.Response.StatusCode switch
    {
        StatusCodes.Status404NotFound => Problem.Write(context, 404, ServerRefusals.NothingHere, "There is nothing here.", "Mend the address."),
        StatusCodes.Status405MethodNotAllowed => Problem.Write(context, 405, ServerRefusals.WrongMethod, "This address does not take the method.", $"It takes {context.Response.Headers.Allow}."),
        StatusCodes.Status415UnsupportedMediaType => Problem.Write(context, 415, ServerRefusals.WrongType, "The body is of another type.", "Send what the address takes."),
        var other => Problem.Write(context, other, ServerRefusals.Malformed, "The request cannot be answered.", "Mend the request and send it again."),
    };

    private static async Task ExplainToPerson(HttpContext context)
    {
        var (title, what) = context.Response.StatusCode == StatusCodes.Status404NotFound
            ? ("There is nothing here", "The address may be mistyped, or what it named is not in the books.")
            : ("This cannot be answered", "Go back, load the page anew and try again.");
        context.Response.ContentType = "text/html; charset=utf-8";
        await context.Response.WriteAsync(
            $"<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>{title}</title><body><main><h1>{title}</h1><p>{what}</p><p><a href=\"/\">To the yards</a></p></main></body></html>",
            context.RequestAborted);
    }

    private static bool WantsPage(HttpRequest request) => request.GetTypedHeaders().Accept.Any(type => type.MediaType == MediaTypeNames.Text.Html);

    [LoggerMessage(LogLevel.Error, "{Method} {Path} failed.")]
    private static partial void Failed(ILogger log, Exception problem, string method, PathString path);
}
