using ColonyLineage.Desk;
using ColonyLineage.Entries;
using ColonyLineage.Server.Answers;

namespace ColonyLineage.Server.Api;

/// <summary>Owed work for the calendars of this machine: <c>/owed-work.ics</c>, with the filters of the page; <c>as=to-dos</c> for to-dos instead of events.</summary>
internal static class CalendarApi
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/owed-work.ics", Owed);

    private static async Task Owed(HttpContext context, RowsOverLedger rows)
    {
        try
        {
            var given = context.Request.Query.SelectMany(pair => pair.Value, (pair, value) => KeyValuePair.Create(pair.Key, value)).ToLookup(pair => pair.Key == "as");
            var toDos = given[true].Select(pair => pair.Value).LastOrDefault() switch
            {
                null or "" or "events" => false,
                "to-dos" => true,
                _ => throw new RefusedException(new Refusal(Refusals.UnknownWord, "as", "Take one of events, to-dos.")),
            };
            var asked = Query.Read("owed-work", given[false]);
            Answering.Check("owed-work", asked);
            var owed = await new Views(rows).OwedAsync(asked, context.RequestAborted);
            var outfit = (await rows.HouseholdAsync(Gather.Clocks(asked.Ask), context.RequestAborted)).Outfit;
            var calendar = new OwedCalendar(asked.On ?? Gather.Day(rows, asked.Ask), outfit.Name is { } name ? $"{name}: owed work" : "Owed work", $"{context.Request.Scheme}://{context.Request.Host}", toDos);
            context.Response.ContentType = "text/calendar; charset=utf-8";
            context.Response.Headers.ContentDisposition = "inline; filename=\"owed-work.ics\"";
            await context.Response.WriteAsync(calendar.Of(owed), context.RequestAborted);
        }
        catch (RefusedException refused) when (!context.Response.HasStarted)
        {
            await Problem.Malformed(context, refused.Refusals[0]);
        }
    }
}
