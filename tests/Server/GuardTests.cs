using System.Net;
using ColonyLineage.Entries;

namespace ColonyLineage.Server.Tests;

/// <summary>Until there are accounts: this machine alone, our own pages alone.</summary>
public class GuardTests(RunningServer server, Support.PostgresFixture postgres) : IClassFixture<RunningServer>
{
    [Theory]
    [InlineData("http://0.0.0.0:5280")]
    [InlineData("http://[::]:5280")]
    [InlineData("http://*:5280")]
    [InlineData("http://+:5280")]
    [InlineData("http://192.0.2.7:5280")]
    [InlineData("http://bees.example:5280")]
    [InlineData("http://127.0.0.1:5280;http://0.0.0.0:5281")]
    [InlineData("http://localhost.bees.example")]
    [InlineData("http://unix:/tmp/x.sock")]
    [InlineData("anywhere")]
    public async Task It_refuses_to_listen_elsewhere(string urls)
    {
        var refused = await Assert.ThrowsAsync<RefusedException>(() => LineageServer.BuildAsync(Options(urls), TestContext.Current.CancellationToken));
        Assert.Equal(ServerRefusals.NotLoopback, refused.Refusals.Single().Name);
    }

    [Theory]
    [InlineData("ASPNETCORE_URLS")]
    [InlineData("ASPNETCORE_HTTP_PORTS")]
    [InlineData("Kestrel__Endpoints__Open__Url")]
    public async Task It_refuses_wherever_the_address_comes_from(string variable)
    {
        await using var database = await postgres.NewDatabaseAsync();
        Environment.SetEnvironmentVariable(variable, variable.EndsWith("PORTS") ? "5999" : "http://0.0.0.0:0");
        try
        {
            // Ports alone stand for every address, but our own usual address goes before them.
            var options = Options(variable.EndsWith("PORTS") ? "http://127.0.0.1:0" : null) with { ConnectionString = database.ConnectionString };
            var refused = await Record.ExceptionAsync(async () =>
            {
                await using var app = await LineageServer.BuildAsync(options, TestContext.Current.CancellationToken);
                await app.StartAsync(TestContext.Current.CancellationToken);
                Assert.All(app.Urls, url => Assert.StartsWith("http://127.0.0.1:", url));
            });
            if (variable.EndsWith("PORTS")) Assert.Null(refused);
            else Assert.Equal(ServerRefusals.NotLoopback, Assert.IsType<RefusedException>(refused).Refusals.Single().Name);
        }
        finally
        {
            Environment.SetEnvironmentVariable(variable, null);
        }
    }

    [Theory]
    [InlineData("bees.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("127.0.0.1.bees.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("192.0.2.7", HttpStatusCode.MisdirectedRequest)]
    [InlineData("localhost", HttpStatusCode.OK)]
    [InlineData("LOCALHOST:80", HttpStatusCode.OK)]
    [InlineData("[::1]:5280", HttpStatusCode.OK)]
    public async Task Only_names_of_this_machine_are_answered(string host, HttpStatusCode status)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/health");
        request.Headers.Host = host;
        var (response, body) = await server.SendAsync(request);
        Assert.Equal(status, response.StatusCode);
        if (status != HttpStatusCode.OK) Assert.Equal(ServerRefusals.ForeignHost, Told.Problem(body).Name);
    }

    [Theory]
    [InlineData("Sec-Fetch-Site", "cross-site", true)]
    [InlineData("Sec-Fetch-Site", "same-site", true)]
    [InlineData("Sec-Fetch-Site", "same-origin", false)]
    [InlineData("Sec-Fetch-Site", "none", false)]
    [InlineData("Origin", "http://bees.example", true)]
    [InlineData("Origin", "null", true)]
    [InlineData("Origin", "http://127.0.0.1:1", true)]
    [InlineData("Origin", "own", false)]
    public async Task Pages_of_other_sites_change_nothing(string header, string value, bool refused)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/voids") { Content = new StringContent("{}", System.Text.Encoding.UTF8, "application/json") };
        request.Headers.TryAddWithoutValidation(header, value == "own" ? server.Root : value);
        var (response, body) = await server.SendAsync(request);
        if (refused) Assert.Equal((HttpStatusCode.Forbidden, ServerRefusals.ForeignSite), (response.StatusCode, Told.Problem(body).Name));
        else Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
    }

    [Theory]
    [InlineData("/", "text/html")]
    [InlineData("/queens-by-age?format=json", "*/*")]
    [InlineData("/no/such/thing", "*/*")]
    public async Task Every_answer_says_what_pages_never_do(string path, string accept)
    {
        var (response, _) = await server.GetAsync(path, accept);
        var policy = response.Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("frame-ancestors 'none'", policy);
        Assert.DoesNotContain("'unsafe-inline'", policy.Split(';').Single(part => part.TrimStart().StartsWith("script-src")));
        Assert.DoesNotContain("unsafe-eval", policy);
        Assert.Equal("nosniff", response.Headers.GetValues("X-Content-Type-Options").Single());
    }

    private static ServerOptions Options(string? urls) => new() { ConnectionString = "Host=/nowhere", Outfit = "guard", Urls = urls, RunDaemon = false };
}
