namespace ColonyLineage.Server.Guard;

/// <summary>Tells the browser what pages of ours never do: run scripts, load from elsewhere, stand in a frame.</summary>
internal static class SecurityHeaders
{
    // Styles may stand in the page: drawings place their bands and nodes by them.
    private const string Policy =
        "default-src 'none'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; font-src 'self'; script-src 'self'; connect-src 'self'; "
        + "form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    public static Task Set(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        // The books change under the same address, and stay on this machine.
        headers.CacheControl = "no-store";
        return next(context);
    }
}
