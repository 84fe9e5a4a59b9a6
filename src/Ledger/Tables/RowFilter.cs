using System.Text;
using ColonyLineage.Projections;
using Npgsql;

namespace ColonyLineage.Ledger.Tables;

/// <summary>
/// <see cref="Ask.Wants"/> in SQL. Names are compared without regard to case as .NET does it, which no collation of PostgreSQL's does
/// exactly: plain ASCII is left to SQL, other names are sought by their length in SQL and compared here.
/// </summary>
internal sealed class RowFilter
{
    private readonly List<(int At, int? Id, string Wanted)> _here = [];
    private readonly StringBuilder _where = new();
    private readonly NpgsqlParameterCollection _parameters;
    private readonly List<string> _columns;

    public RowFilter(ReadTable table, Ask ask, NpgsqlParameterCollection parameters)
    {
        _parameters = parameters;
        _columns = [.. table.Question.Columns.Select(column => column.Name)];
        ByName(ask.Yard, "yard", "yard_id");
        ByName(ask.Spot, "spot", null);
        ByName(ask.Colony, "colony", "colony_id");
        ByName(ask.Queen, "queen", "queen_id");
        if (ask.Season is { } season && _columns.Contains("season")) And($"(season is null or season = {Parameter(season)})");
    }

    /// <summary>The condition with its <c>where</c>; empty where everything is asked for.</summary>
    public string Sql => _where.ToString();

    /// <summary>Whether the row that the reader stands on, which fits the SQL, is asked for; the columns are the table's, in order.</summary>
    public bool Wants(NpgsqlDataReader reader)
    {
        foreach (var (at, id, wanted) in _here)
        {
            if (!reader.IsDBNull(at) && string.Equals(reader.GetString(at), wanted, StringComparison.OrdinalIgnoreCase)) continue;
            if (id is { } by && Guid.TryParse(wanted, out var asked) && !reader.IsDBNull(by) && reader.GetGuid(by) == asked) continue;
            return false;
        }

        return true;
    }

    private void ByName(string? wanted, string name, string? id)
    {
        var at = _columns.IndexOf(name);
        if (wanted is null || at < 0) return;
        var byId = id is null ? -1 : _columns.IndexOf(id);
        var fits = Ascii.IsValid(wanted)
            ? $"upper({name} collate \"C\") = {Parameter(wanted.ToUpperInvariant())}"
            : $"char_length({name}) = {Parameter(wanted.EnumerateRunes().Count())}";
        if (!Ascii.IsValid(wanted)) _here.Add((at, byId < 0 ? null : byId, wanted));
        if (byId >= 0 && Guid.TryParse(wanted, out var asked)) fits += $" or {id} = {Parameter(asked)}";
        And($"({fits})");
    }

    private void And(string condition) => _where.Append(_where.Length == 0 ? " where " : " and ").Append(condition);

    private string Parameter(object value)
    {
        _parameters.Add(new NpgsqlParameter { Value = value });
        return $"${_parameters.Count}";
    }
}
