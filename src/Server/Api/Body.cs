using System.Text.Json.Nodes;
using ColonyLineage.Entries;

namespace ColonyLineage.Server.Api;

/// <summary>Reads the body of a request, or says what is wrong with it.</summary>
internal static class Body
{
    /// <summary>The JSON of the body; null after a problem was sent.</summary>
    public static async Task<JsonNode?> JsonAsync(HttpContext context, long limit)
    {
        if (!context.Request.HasJsonContentType())
        {
            await Problem.Write(context, StatusCodes.Status415UnsupportedMediaType, ServerRefusals.WrongType, "The body is of another type.", "Send JSON, with the header Content-Type: application/json.");
            return null;
        }

        if (await BytesAsync(context, limit) is not { } bytes) return null;
        try
        {
            return StrictJson.Parse(bytes.Span);
        }
        catch (RefusedException refused)
        {
            await Problem.Malformed(context, refused.Refusals[0]);
            return null;
        }
    }

    private static async Task<ReadOnlyMemory<byte>?> BytesAsync(HttpContext context, long limit)
    {
        using var buffer = new MemoryStream();
        var chunk = new byte[64 * 1024];
        var tooLarge = false;
        while (await context.Request.Body.ReadAsync(chunk, context.RequestAborted) is var read and > 0)
        {
            // What is too much is read to its end and let go: who is answered in the middle of sending sees a broken connection and not the answer.
            if (!tooLarge) buffer.Write(chunk, 0, read);
            tooLarge |= buffer.Length > limit;
        }

        if (tooLarge)
        {
            await TooLarge(context, limit);
            return null;
        }

        return buffer.GetBuffer().AsMemory(0, (int)buffer.Length);
    }

    public static Task TooLarge(HttpContext context, long limit) => Problem.Write(
        context, StatusCodes.Status413PayloadTooLarge, ServerRefusals.TooLarge, "The body is too large.", $"At most {limit:N0} bytes are taken at once: send it in parts.");
}
