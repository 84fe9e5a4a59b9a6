using System.Text;
using System.Text.Json;
using ColonyLineage.Entries;

namespace ColonyLineage.Server;

/// <summary>Errors as RFC 9457 problem details. The type is a refusal's name, so that programs need not read the words.</summary>
internal static class Problem
{
    public const string ContentType = "application/problem+json";

    /// <summary>The type of a problem: <c>urn:colony-lineage:refusal:out-of-range</c>.</summary>
    public static string TypeOf(string name) => $"urn:colony-lineage:refusal:{name}";

    /// <summary>One reason alone.</summary>
    public static Task Write(HttpContext context, int status, string name, string title, string detail) => Write(context, status, name, title, detail, []);

    /// <summary>Content that was refused: 409 where an id is taken by other content, 422 else.</summary>
    public static Task Refused(HttpContext context, IReadOnlyList<Refusal> refusals)
    {
        var first = refusals[0];
        var status = refusals.Any(refusal => refusal.Name == Refusals.SameIdOtherContent) ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity;
        return Write(context, status, first.Name, "Nothing was recorded.", string.Join(" ", refusals.Take(5).Select(refusal => refusal.Message)), refusals);
    }

    /// <summary>A body or an address that cannot be read.</summary>
    public static Task Malformed(HttpContext context, Refusal refusal) =>
        Write(context, StatusCodes.Status400BadRequest, refusal.Name, "This cannot be read.", refusal.Message, [refusal]);

    public static async Task Write(HttpContext context, int status, string name, string title, string detail, IReadOnlyList<Refusal> refusals)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("type", TypeOf(name));
            json.WriteString("title", title);
            json.WriteNumber("status", status);
            json.WriteString("detail", Clean(detail));
            if (refusals.Count > 0)
            {
                json.WritePropertyName("refusals");
                Write(json, refusals);
            }

            json.WriteEndObject();
        }

        context.Response.StatusCode = status;
        context.Response.ContentType = ContentType;
        context.Response.ContentLength = buffer.Length;
        await context.Response.Body.WriteAsync(buffer.GetBuffer().AsMemory(0, (int)buffer.Length), context.RequestAborted);
    }

    /// <summary>Reasons, each at its field.</summary>
    public static void Write(Utf8JsonWriter json, IReadOnlyList<Refusal> refusals)
    {
        json.WriteStartArray();
        foreach (var refusal in refusals)
        {
            json.WriteStartObject();
            json.WriteString("name", refusal.Name);
            json.WriteString("field", Clean(refusal.Field));
            json.WriteString("message", Clean(refusal.Message));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // Half a surrogate pair, which a message may carry on from bad input, cannot be written.
    private static string Clean(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text));
}
