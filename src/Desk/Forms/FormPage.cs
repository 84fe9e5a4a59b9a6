using ColonyLineage.Entries;
using ColonyLineage.Projections;
using Microsoft.AspNetCore.Http;

namespace ColonyLineage.Desk.Forms;

/// <summary>
/// A page with a form that records something. The act's id and order are made when the form is first laid out and travel in
/// it, so that a form sent twice records once.
/// </summary>
public abstract class FormPage : DeskPage
{
    /// <summary>What stands in the form.</summary>
    protected Filled Filled { get; private set; } = new(null);

    /// <summary>What was refused, by blank.</summary>
    protected Placed Placed { get; set; } = new([], []);

    /// <summary>Files that came with the form.</summary>
    protected IFormFileCollection? Files { get; private set; }

    protected ActId Act { get; private set; }

    protected int FirstOrder { get; private set; }

    /// <summary>It is recorded; the answer sends the browser on, and the page has nothing to show.</summary>
    protected bool IsDone { get; private set; }

    /// <summary>Reads the form that was sent, or makes the act of a new one.</summary>
    protected async Task ReadFormAsync()
    {
        if (Http is { Request: { Method: "POST", HasFormContentType: true } request })
        {
            var form = await request.ReadFormAsync(Cancel);
            Filled = new Filled(form);
            Files = form.Files;
        }

        Act = Guid.TryParse(Filled["act"], out var act) && act != Guid.Empty ? new ActId(act) : new ActId(Office.NewId());
        FirstOrder = int.TryParse(Filled["order"], out var order) ? order : Office.NextOrder();
    }

    /// <summary>Shows what was refused.</summary>
    protected void Refuse(IEnumerable<Refusal> refusals, IEnumerable<Blank> blanks)
    {
        Placed = new Placed(refusals.Select(InWords), blanks);
        if (Http is { Response.HasStarted: false }) Http.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
    }

    /// <summary>Sends the browser to a page with 'see other', so that going back or reloading sends nothing again.</summary>
    protected void GoTo(string path, ActId recorded)
    {
        IsDone = true;
        if (Http is not { Response.HasStarted: false }) return;
        Http.Response.StatusCode = StatusCodes.Status303SeeOther;
        Http.Response.Headers.Location = $"{path}{(path.Contains('?') ? '&' : '?')}recorded={recorded.Value}";
    }

    /// <summary>Where to look at what an act did: its one colony, else the yard at hand, else its first colony.</summary>
    protected async Task<string> WhereToLookAsync(ActId act, Guid? yard)
    {
        var lines = await Office.ActAsync(act, Cancel);
        var colonies = lines.SelectMany(line => line.Entry.Concerns).Where(subject => subject.Kind == SubjectKind.Colony).Distinct().ToList();
        if (colonies.Count == 1 || (yard is null && colonies.Count > 0)) return $"/colonies/{colonies[0].Id}";
        if (yard is { } there) return $"/yards/{there}";
        return lines.Count > 0 && lines[0].Entry.Stream is { Kind: not SubjectKind.Outfit } subject ? $"/{(subject.Kind == SubjectKind.Queen ? "queens" : "yards")}/{subject.Id}" : "/";
    }

    private static Refusal InWords(Refusal refusal) => refusal.Name == Refusals.SameIdOtherContent
        ? refusal with { Field = "", Message = "This form was recorded before, with other content, and that stands. Open a new form to record this as well, or void what was wrong." }
        : refusal;
}
