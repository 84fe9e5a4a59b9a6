using System.CommandLine;
using System.Net.Sockets;
using ColonyLineage.Ledger.Postgres;
using ColonyLineage.Server;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;

namespace ColonyLineage.Command.Commands;

/// <summary>The desk and the API on this machine.</summary>
internal static class Serve
{
    public static System.CommandLine.Command Command()
    {
        var urls = new Option<string?>("--urls") { Description = $"Where to listen: loopback only, until there are accounts. Else ASPNETCORE_URLS, else {ServerOptions.UsualUrl}.", HelpName = "URL" };
        var command = new System.CommandLine.Command("serve", "Open the desk in a browser of this machine.") { urls };
        command.Does(async (parsed, cancel) =>
        {
            var database = await Database.ResolveAsync(cancel);
            var output = parsed.InvocationConfiguration.Output;
            await using var app = await LineageServer.BuildAsync(
                new ServerOptions { ConnectionString = database.ConnectionString, Outfit = Shared.OutfitOf(parsed), Urls = parsed.GetValue(urls), KeyFolder = Path.Combine(DataHome.Folder, "keys") }, cancel);
            try
            {
                await app.StartAsync(cancel);
            }
            catch (IOException taken) when (taken.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
            {
                throw new CannotException("Another program listens on that address already. Stop it, or give another with --urls, for instance --urls http://127.0.0.1:5281.");
            }
            catch (Exception address) when (address is FormatException or SocketException or InvalidOperationException { Source: "Microsoft.AspNetCore.Server.Kestrel.Core" })
            {
                throw new CannotException($"It cannot listen there: {address.Message}");
            }

            foreach (var address in app.Urls) await output.WriteLineAsync($"The desk of '{Shared.OutfitOf(parsed)}' is open at {address}");
            await output.WriteLineAsync("Ctrl+C closes it.");
            await output.FlushAsync(cancel);
            await app.WaitForShutdownAsync(cancel);
            return Exit.Done;
        });
        return Help.WithExample(command, "lineage --outfit demo serve --urls http://127.0.0.1:5280");
    }
}
