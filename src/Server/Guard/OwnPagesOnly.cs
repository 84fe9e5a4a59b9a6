using Microsoft.Extensions.Primitives;

namespace ColonyLineage.Server.Guard;

/// <summary>
/// A browser on this machine also opens pages of elsewhere, and these must neither read the books nor write in them: only our own
/// host names are answered (a foreign name may have been pointed at this machine), and what changes something must come from
/// our own pages or from no page at all.
/// </summary>
internal static class OwnPagesOnly
{
    public static async Task Check(HttpContext context, RequestDelegate next)
    {
        if (!IsOurs(context.Request.Host.Host))
            await Problem.Write(context, StatusCodes.Status421MisdirectedRequest, ServerRefusals.ForeignHost, "This host name is not ours.", "Open the address that the server printed, by 127.0.0.1 or localhost.");
        else if (ChangesSomething(context.Request.Method) && IsForeign(context.Request))
            await Problem.Write(context, StatusCodes.Status403Forbidden, ServerRefusals.ForeignSite, "This was sent by a page of another site.", "Nothing was recorded. Use the pages of this server itself.");
        else
            await next(context);
    }

    private static bool IsOurs(string host) => host.ToLowerInvariant() is "localhost" or "127.0.0.1" or "[::1]";

    private static bool ChangesSomething(string method) => !(HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsOptions(method));

    // Browsers say where a request comes from by Sec-Fetch-Site, older ones by Origin. What says neither is no browser.
    private static bool IsForeign(HttpRequest request)
    {
        if (request.Headers.TryGetValue("Sec-Fetch-Site", out var site) && !StringValues.IsNullOrEmpty(site)) return site != "same-origin" && site != "none";
        if (!request.Headers.TryGetValue("Origin", out var origin) || StringValues.IsNullOrEmpty(origin)) return false;
        return !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase);
    }
}
