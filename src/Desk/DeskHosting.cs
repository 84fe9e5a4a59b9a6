using System.Security.Cryptography;
using ColonyLineage.Desk.Layout;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace ColonyLineage.Desk;

/// <summary>Puts the desk into a host. The host gives an <see cref="IOffice"/> and calls <c>UseAntiforgery</c>.</summary>
public static class DeskHosting
{
    private static readonly byte[] Sheet = ReadSheet();

    /// <summary>The address of the style sheet; it changes with its content, so that a browser may keep it for ever.</summary>
    internal static string SheetAddress { get; } = $"/desk-{Convert.ToHexStringLower(SHA256.HashData(Sheet))[..12]}.css";

    /// <summary>The services of the pages.</summary>
    public static IServiceCollection AddDesk(this IServiceCollection services)
    {
        services.AddRazorComponents();
        services.AddScoped<Address>();
        services.AddScoped<Lookup>();
        services.AddSingleton<Forms.Uploads>();
        // A paper page of a large yard has more blanks than a form usually has.
        services.Configure<FormOptions>(options => options.ValueCountLimit = 20_000);
        return services;
    }

    /// <summary>The pages and their style sheet.</summary>
    public static RazorComponentsEndpointConventionBuilder MapDesk(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapGet(SheetAddress, (HttpContext context) =>
        {
            context.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
            return Results.Bytes(Sheet, "text/css; charset=utf-8");
        }).ExcludeFromDescription();
        return endpoints.MapRazorComponents<App>();
    }

    private static byte[] ReadSheet()
    {
        using var stream = typeof(DeskHosting).Assembly.GetManifestResourceStream("desk.css")!;
        var sheet = new byte[stream.Length];
        stream.ReadExactly(sheet);
        return sheet;
    }
}
