using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;

namespace ColonyLineage.Desk;

/// <summary>What every page has at hand.</summary>
public abstract class DeskPage : ComponentBase
{
    [Inject] protected IOffice Office { get; set; } = null!;

    [Inject] protected Address Address { get; set; } = null!;

    [Inject] protected Lookup Lookup { get; set; } = null!;

    [CascadingParameter] protected HttpContext? Http { get; set; }

    /// <summary>Whoever asked may have gone away.</summary>
    protected CancellationToken Cancel => Http?.RequestAborted ?? CancellationToken.None;

    /// <summary>Reads what the page shows.</summary>
    protected virtual Task ReadAsync() => Task.CompletedTask;

    /// <summary>
    /// Reads first and renders then. A component's usual life renders it once while it still waits for the books, and a page has nothing to
    /// show then.
    /// </summary>
    public override async Task SetParametersAsync(ParameterView parameters)
    {
        parameters.SetParameterProperties(this);
        await ReadAsync();
        await base.SetParametersAsync(ParameterView.Empty);
    }

    /// <summary>There is no such thing: the page says so, and so does its status.</summary>
    protected bool Missing { get; private set; }

    /// <summary>Says that what the address names is not in the books.</summary>
    protected void IsMissing()
    {
        Missing = true;
        // Set at the last moment: a 404 that is set while the page is rendered makes the framework drop the page.
        Http?.Response.OnStarting(() =>
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
            return Task.CompletedTask;
        });
    }
}
