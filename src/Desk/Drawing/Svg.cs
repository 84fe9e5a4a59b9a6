using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Components;

namespace ColonyLineage.Desk.Drawing;

/// <summary>Pieces of a drawing. Razor keeps the element <c>text</c> for itself, so it is written here.</summary>
public static class Svg
{
    /// <summary>A number of the drawing.</summary>
    public static string N(double number) => number.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>A text at a place.</summary>
    /// <param name="anchor"><c>start</c>, <c>middle</c> or <c>end</c>.</param>
    public static MarkupString Text(string look, double x, double y, string said, string anchor = "start") =>
        new($"<text class=\"{look}\" x=\"{N(x)}\" y=\"{N(y)}\"{(anchor == "start" ? "" : $" text-anchor=\"{anchor}\"")}>{WebUtility.HtmlEncode(said)}</text>");
}
