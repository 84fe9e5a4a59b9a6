using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Ledger;
using ColonyLineage.Ledger.Import;
using ColonyLineage.Server.Import;
using ColonyLineage.Server.Jobs;
using Wolverine;

namespace ColonyLineage.Server.Api;

/// <summary>
/// A field sheet and its mapping as a form with the files <c>sheet</c> and <c>map</c>. With <c>dry-run=yes</c> it answers what would be recorded;
/// else a sheet without bad cells (or with <c>skip-bad=yes</c> its good rows) is taken on as a job.
/// </summary>
internal sealed class ImportApi(ServerOptions options)
{
    public void Map(IEndpointRouteBuilder routes) => routes.MapPost("/import", Take);

    private async Task Take(HttpContext context)
    {
        if (!context.Request.HasFormContentType)
        {
            await Problem.Write(
                context, StatusCodes.Status415UnsupportedMediaType, ServerRefusals.WrongType, "The body is of another type.",
                "Send a form with the files 'sheet' (CSV) and 'map' (JSON), as multipart/form-data.");
            return;
        }

        if (context.Request.ContentLength > options.SheetLimitBytes)
        {
            await Body.TooLarge(context, options.SheetLimitBytes);
            return;
        }

        try
        {
            await Take(context, await context.Request.ReadFormAsync(context.RequestAborted));
        }
        catch (RefusedException refused)
        {
            await Problem.Refused(context, refused.Refusals);
        }
        catch (Exception broken) when (broken is InvalidDataException || (broken is IOException and not BadHttpRequestException))
        {
            await Problem.Malformed(context, new Refusal(ServerRefusals.Malformed, "", "This form cannot be read: send the files 'sheet' and 'map' as multipart/form-data."));
        }
    }

    private async Task Take(HttpContext context, IFormCollection form)
    {
        if (form.Files["sheet"] is not { } file) throw Missing("sheet");
        var sheet = new byte[file.Length];
        await using (var from = file.OpenReadStream()) await from.ReadExactlyAsync(sheet, context.RequestAborted);
        var text = form.Files["map"] is { } mapFile ? await new StreamReader(mapFile.OpenReadStream()).ReadToEndAsync(context.RequestAborted)
            : form["map"].ToString() is { Length: > 0 } written ? written : throw Missing("map");
        var map = Mapping.Read(text);
        var services = context.RequestServices;
        var clock = services.GetRequiredService<Clock>();
        var plan = await Sheets.PlanAsync(services.GetRequiredService<OutfitLedger>(), new MemoryStream(sheet), map, clock.Today, new SheetLimits(options.SheetLimitBytes), cancel: context.RequestAborted);
        var skipBad = Yes("skip-bad");
        if (Yes("dry-run"))
        {
            await Json.Send(context, json => Write(json, plan));
        }
        else if (plan.Bad.Count > 0 && !skipBad)
        {
            await Problem.Refused(context, Sheets.Refusals(plan));
        }
        else
        {
            var (board, job) = (services.GetRequiredService<JobBoard>(), Guid.CreateVersion7(clock.Now.Instant));
            board.Waits(job, ImportSheet.What(map));
            await services.GetRequiredService<IMessageBus>().PublishAsync(new ImportSheet(job, sheet, text, skipBad));
            await BooksApi.Accepted(context, board, job);
        }

        bool Yes(string name) => context.Request.Query[name] == "yes" || form[name] == "yes";
    }

    private static RefusedException Missing(string field) => new(new Refusal(Refusals.Missing, field, $"Send the file '{field}' with the form."));

    private static void Write(Utf8JsonWriter json, ImportPlan plan)
    {
        json.WriteStartObject();
        json.WriteString("act", plan.Act.Value);
        json.WriteNumber("good_rows", plan.GoodRows);
        json.WriteNumber("bad_rows", plan.BadRows.Count);
        json.WriteStartObject("entries");
        foreach (var (kind, count) in plan.Counts) json.WriteNumber(kind, count);
        json.WriteEndObject();
        json.WriteStartArray("unused_columns");
        foreach (var column in plan.UnusedColumns) json.WriteStringValue(column);
        json.WriteEndArray();
        json.WritePropertyName("refusals");
        Problem.Write(json, Sheets.Refusals(plan));
        json.WriteEndObject();
    }
}
