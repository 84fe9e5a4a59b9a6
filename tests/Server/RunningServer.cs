using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using ColonyLineage.Entries;
using ColonyLineage.Support;
using Microsoft.AspNetCore.Builder;

namespace ColonyLineage.Server.Tests;

/// <summary>The server as it is, on a port of its own and a database of its own; one for a test class.</summary>
public sealed class RunningServer(PostgresFixture postgres) : IAsyncLifetime
{
    /// <summary>The day on which the tests take place: 1 Sep 2026, noon.</summary>
    public static readonly DateTimeOffset Instant = new(2026, 9, 1, 12, 0, 0, TimeSpan.Zero);

    private TestDatabase? _database;
    private WebApplication? _app;

    /// <summary>How tests speak to it.</summary>
    public HttpClient Http { get; } = new();

    /// <summary>Where it listens.</summary>
    public string Root => _app!.Urls.Single();

    public async ValueTask InitializeAsync()
    {
        _database = await postgres.NewDatabaseAsync();
        _app = await LineageServer.BuildAsync(new ServerOptions
        {
            ConnectionString = _database.ConnectionString, Outfit = "tests", Urls = "http://127.0.0.1:0", RunDaemon = false, Time = new Noon(), BodyLimitBytes = 200_000, SheetLimitBytes = 100_000,
        });
        await _app.StartAsync();
        Http.BaseAddress = new Uri(Root);
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        if (_app is not null)
        {
            await _app.StopAsync();
            await _app.DisposeAsync();
        }

        if (_database is not null) await _database.DisposeAsync();
    }

    /// <summary>A GET; the body as text.</summary>
    public async Task<(HttpResponseMessage Response, string Body)> GetAsync(string path, string? accept = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (accept is not null) request.Headers.TryAddWithoutValidation("Accept", accept);
        return await SendAsync(request);
    }

    /// <summary>The rows of an answer as JSON.</summary>
    public async Task<JsonArray> RowsAsync(string path)
    {
        var (response, body) = await GetAsync(path);
        Assert.True(response.IsSuccessStatusCode, body);
        return JsonNode.Parse(body)!["rows"]!.AsArray();
    }

    /// <summary>A POST of JSON.</summary>
    public Task<(HttpResponseMessage Response, string Body)> PostAsync(string path, JsonNode body) => PostAsync(path, Encoding.UTF8.GetBytes(body.ToJsonString()));

    /// <summary>A POST of bytes that say they are JSON.</summary>
    public async Task<(HttpResponseMessage Response, string Body)> PostAsync(string path, byte[] body, string type = "application/json")
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = MediaTypeHeaderValue.Parse(type);
        return await SendAsync(request);
    }

    /// <summary>Records entries that must be taken.</summary>
    public async Task RecordAsync(params Entry[] entries)
    {
        var (response, body) = await PostAsync("/entries", Tagged(entries));
        Assert.True(response.IsSuccessStatusCode, body);
    }

    /// <summary>Entries as devices send them.</summary>
    public static JsonArray Tagged(params IEnumerable<Entry> entries) => new([.. entries.Select(entry => (JsonNode)EntryJson.WriteTagged(entry))]);

    public async Task<(HttpResponseMessage Response, string Body)> SendAsync(HttpRequestMessage request)
    {
        var response = await Http.SendAsync(request, TestContext.Current.CancellationToken);
        return (response, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private sealed class Noon : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Instant;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}
