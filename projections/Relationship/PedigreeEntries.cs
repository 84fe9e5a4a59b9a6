using System.Globalization;
using ColonyLineage.Entries;

namespace ColonyLineage.Projections.Relationship;

/// <summary>When a queen of a pedigree sheet emerged: a day, an interval <c>2026-05-10/2026-07-02</c>, a year, or empty.</summary>
public sealed record BirthLine(int Row, string Id, string Birth);

/// <summary>A pedigree sheet as entries: a queen raised for each queen, a mating for each mating that is not open of itself.</summary>
/// <remarks>Ids come from the names, so that the same sheet recorded again adds nothing. A queen that the books know keeps what they say of her; only what they do not know is added.</remarks>
public static class PedigreeEntries
{
    private static readonly Guid Space = new("0f717000-0000-8000-8000-0000000ed16e");

    /// <param name="known">What the books have: queens by name.</param>
    /// <param name="books">Their pedigree.</param>
    /// <param name="today">A queen without a birth is entered on this day.</param>
    public static (IReadOnlyList<Entry> Entries, IReadOnlyList<Refusal> Refusals) Of(
        IReadOnlyList<QueenLine> queens, IReadOnlyList<MatingLine> matings, IReadOnlyList<BirthLine> births, IReadOnlyDictionary<string, QueenId> known, BooksPedigree books, DateOnly today)
    {
        var (pedigree, _, refusals) = PedigreeSheet.WithMatings(queens, matings);
        if (pedigree is null) return ([], refusals);
        var wrong = new List<Refusal>();
        var born = births.ToDictionary(line => line.Id, line => Birth(line, today, wrong));
        if (wrong.Count > 0) return ([], wrong);

        QueenId Queen(string name) => known.TryGetValue(name, out var id) ? id : new QueenId(NamedId.Of(Space, "queen " + name));
        var act = new ActId(NamedId.Of(Space, "act " + string.Join('\n', queens.Select(line => $"{line.Id} {line.Mother} {line.Mating}").Concat(matings.Select(line => $"{line.Mating} {line.Queen} {line.Drones} {line.Effective}")))));
        var entries = new List<Entry>();
        foreach (var (i, line) in queens.Index())
        {
            if (known.TryGetValue(line.Id, out var there) && (line.Mother.Length == 0 || books.MotherOf(there.Value) is not null)) continue;
            var birth = born.GetValueOrDefault(line.Id);
            entries.Add(new QueenRaised
            {
                Id = new EntryId(NamedId.Of(Space, $"raised {line.Id} {line.Mother} {birth}")), Act = act, Order = i, On = birth?.Day ?? today, Queen = Queen(line.Id), Name = line.Id,
                Mother = line.Mother.Length == 0 ? null : Queen(line.Mother), MotherIs = line.Mother.Length == 0 ? Certainty.Unknown : Certainty.Known, Born = birth, Note = "from a pedigree sheet",
            });
        }

        foreach (var (i, line) in matings.Index())
        {
            var drones = line.Drones.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            if (drones.Length == 0 && line.Effective.Length == 0) continue;
            var queen = Queen(line.Queen);
            if (known.ContainsKey(line.Queen) && books.DronesOf(queen.Value).Count > 0) continue;
            // After her own birth, and before her first daughter's where that is known.
            var on = queens.Where(one => one.Mother == line.Queen).Select(one => born.GetValueOrDefault(one.Id)?.Earliest).Where(day => day is not null).Min() ?? born.GetValueOrDefault(line.Queen)?.Day ?? today;
            entries.Add(new QueenMated
            {
                Id = new EntryId(NamedId.Of(Space, $"mated {line.Queen} {line.Drones} {line.Effective}")), Act = act, Order = queens.Count + i, On = on, Queen = queen,
                Drones = [.. drones.Select(Queen)], EffectiveDrones = line.Effective.Length == 0 ? null : decimal.Parse(line.Effective, NumberStyles.Float, CultureInfo.InvariantCulture), Note = "from a pedigree sheet",
            });
        }

        return (entries, [.. entries.SelectMany(entry => entry.Check())]);
    }

    private static Occurred? Birth(BirthLine line, DateOnly today, List<Refusal> wrong)
    {
        if (line.Birth.Length == 0) return null;
        Occurred? birth = Occurred.TryParse(line.Birth, out var read) ? read
            : int.TryParse(line.Birth, NumberStyles.None, CultureInfo.InvariantCulture, out var year) && year is >= 1900 and < 3000 ? new Occurred(new DateOnly(year, 12, 31), new DateOnly(year - 1, 12, 31)) : null;
        if (birth is null) wrong.Add(new Refusal(Refusals.NotReadable, FormattableString.Invariant($"row {line.Row}, birth"), $"'{line.Birth}' is neither a day (2026-05-10), nor days between (2026-05-10/2026-07-02), nor a year."));
        else if (birth.Value.Earliest > today) wrong.Add(new Refusal(Refusals.DayInFuture, FormattableString.Invariant($"row {line.Row}, birth"), $"'{line.Birth}' lies after today."));
        return birth is { } known && known.Day > today ? new Occurred(today, known.After) : birth;
    }
}
