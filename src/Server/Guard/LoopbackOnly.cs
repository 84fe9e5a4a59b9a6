using System.Net;
using ColonyLineage.Entries;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace ColonyLineage.Server.Guard;

/// <summary>
/// Until there are accounts, the server listens where only this machine reaches it. Every end point goes through here, whether it
/// comes from the command line, the environment or a settings file.
/// </summary>
internal static class LoopbackOnly
{
    /// <summary>Refuses addresses before anything is opened.</summary>
    public static void Check(string urls)
    {
        foreach (var url in urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            // '*' and '+' stand for every address, and are no part of a URL elsewhere.
            if (!Uri.TryCreate(url, UriKind.Absolute, out var address) || address.Scheme is not ("http" or "https") || !IsLoopback(address.IdnHost))
                throw new RefusedException(Refuse(url));
        }
    }

    /// <summary>Refuses end points as the server is about to open them.</summary>
    public static void Check(ListenOptions listen)
    {
        if (listen.EndPoint is not IPEndPoint { Address: var address } || !IPAddress.IsLoopback(address))
            throw new RefusedException(Refuse(listen.EndPoint?.ToString() ?? "an end point"));
    }

    private static bool IsLoopback(string host) => host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));

    private static Refusal Refuse(string where) => new(
        ServerRefusals.NotLoopback, "urls",
        $"'{where}' can be reached by other machines, and there are no accounts yet. Listen on 127.0.0.1, [::1] or localhost, for instance {ServerOptions.UsualUrl}.");
}
