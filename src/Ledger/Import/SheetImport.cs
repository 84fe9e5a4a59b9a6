using ColonyLineage.Entries;

namespace ColonyLineage.Ledger.Import;

/// <summary>How large a sheet may be: what is planned is kept in memory until it is recorded as one act.</summary>
/// <param name="Bytes">The most bytes.</param>
/// <param name="Entries">The most entries and bad cells taken together.</param>
public sealed record SheetLimits(long Bytes = 200_000_000, int Entries = 1_000_000);

/// <summary>
/// Turns a field sheet into entries by a mapping. Pure but for reading the stream: nothing is recorded, no clock is read,
/// and the same sheet with the same mapping gives the same ids.
/// </summary>
public sealed class SheetImport
{
    private readonly Mapping _map;
    private readonly DateOnly _today;
    private readonly Names _names;
    private readonly SheetLimits _limits;
    private readonly List<Planned> _rows = [];
    private readonly Dictionary<string, int> _rowOfKey = new(StringComparer.Ordinal);
    private readonly Dictionary<EntryId, (int Row, string Says)> _saidOnce = [];
    private int _kept;

    private SheetImport(Mapping map, DateOnly today, KnownNames known, SheetLimits limits)
    {
        _limits = limits;
        _map = map;
        _today = today;
        _names = new Names(map, known);
    }

    /// <summary>Plans the import of a sheet.</summary>
    /// <param name="csv">The sheet; read once, from where it stands, and left open.</param>
    /// <param name="map">What its columns mean.</param>
    /// <param name="today">No entry may lie after it.</param>
    /// <param name="known">Names that the books know already.</param>
    /// <param name="limits">How large the sheet may be.</param>
    /// <param name="progress">Is told the bytes read so far.</param>
    /// <exception cref="RefusedException">The sheet as a whole cannot be read, or the mapping does not fit it.</exception>
    public static ImportPlan Plan(
        Stream csv, Mapping map, DateOnly today, KnownNames? known = null, SheetLimits? limits = null, IProgress<long>? progress = null)
    {
        limits ??= new SheetLimits();
        using var sheet = SheetReader.Open(LimitedStream.Over(csv, limits.Bytes, progress), map.Separator);
        return new SheetImport(map, today, known ?? new KnownNames(), limits).Plan(sheet);
    }

    private ImportPlan Plan(SheetReader sheet)
    {
        var columns = sheet.Columns.Index().Where(column => column.Item.Length > 0).ToDictionary(column => column.Item, column => column.Index, StringComparer.Ordinal);
        RefuseUnknownColumns(columns);
        var places = new PlacesInYard();
        foreach (var row in sheet.Rows()) Read(row, new RowReading(_map, _names, columns, places, row));
        if (_rows.Count == 0) throw new RefusedException(new Refusal(ImportRefusals.NoRows, "", "The sheet has a header and no rows below it."));
        RefuseUnknownThings();

        var used = _map.Columns.Select(column => column.Column).ToHashSet(StringComparer.Ordinal);
        return new ImportPlan
        {
            Act = _names.Act,
            Entries = [.. Created(), .. OfGoodRows()],
            Bad = [.. _rows.SelectMany(row => row.Bad)],
            BadRows = [.. _rows.Where(row => row.Bad.Count > 0).Select(row => new BadRow(row.Row, row.Raw))],
            GoodRows = _rows.Count(row => row.Bad.Count == 0),
            Header = sheet.Header,
            UnusedColumns = [.. sheet.Columns.Where(column => column.Length > 0 && !used.Contains(column))],
        };
    }

    private void RefuseUnknownColumns(Dictionary<string, int> columns)
    {
        var unknown = _map.Columns.Where(column => !columns.ContainsKey(column.Column)).DistinctBy(column => column.Column).ToList();
        if (unknown.Count == 0) return;
        var has = string.Join(", ", columns.Keys.Take(100));
        throw new RefusedException([.. unknown.Select(column => new Refusal(
            ImportRefusals.UnknownColumn, column.Place, $"The mapping at {column.Place} names the column '{column.Column}'. The sheet has {has}."))]);
    }

    private void Read(SheetRow sheetRow, RowReading row)
    {
        var made = new List<Made>();
        if (row.Bad.Count == 0 && row.ReadKey())
        {
            if (!_rowOfKey.TryAdd(row.Key, sheetRow.Row))
                row.Note(_map.Key.Column, ImportRefusals.SameKeyTwice, $"Row {_rowOfKey[row.Key]} has the same key, '{row.Key}'. Take one row out, or give the mapping a \"key\" that tells them apart.");
            else
                made.AddRange(_map.Entries.Select(entry => RowEntries.Make(entry, row, _names, _today)).OfType<Made>());
        }

        foreach (var once in made.Where(entry => entry.Map.Once is not null))
        {
            if (!_saidOnce.TryAdd(once.Entry.Id, (sheetRow.Row, once.SaysOnce)) && _saidOnce[once.Entry.Id] is var first && first.Says != once.SaysOnce)
                row.Note(once.Map.Once!.Column, ImportRefusals.DiffersFromEarlierRow, $"{once.Map.Label} is recorded once for all rows with '{once.Map.Once.Written}', and row {first.Row} says it otherwise.");
        }

        _rows.Add(new Planned(sheetRow.Row, sheetRow.Raw, made, [.. row.Bad]));
        _kept += made.Count + row.Bad.Count;
        if (_kept > _limits.Entries)
            throw new RefusedException(new Refusal(ImportRefusals.SheetTooLarge, "", $"Row {sheetRow.Row}: the sheet gives more than {_limits.Entries:N0} entries and bad cells. Split it into smaller sheets, or raise the limit."));
    }

    /// <summary>
    /// A name that nothing in the sheet establishes and the books do not know is most likely a slip of the pen. A row that
    /// leans on a bad row is bad too, and so on until nothing changes.
    /// </summary>
    private void RefuseUnknownThings()
    {
        bool changed;
        do
        {
            changed = false;
            var there = _rows.Where(row => row.Bad.Count == 0).SelectMany(row => row.Made).SelectMany(Establishes).ToHashSet();
            foreach (var row in _rows.Where(row => row.Bad.Count == 0))
            {
                var unknown = row.Made.SelectMany(made => made.Mentions)
                    .Where(mention => !IsCreated(mention.Thing.Kind) && !there.Contains(mention.Thing) && !_names.Knows(mention.Thing))
                    .Distinct().ToList();
                foreach (var (thing, column) in unknown)
                    row.Bad.Add(new BadCell(row.Row, column, SheetReader.Shown(thing.Name), Refusals.NotFound, Unknown(thing)));
                changed |= unknown.Count > 0;
            }
        }
        while (changed);
    }

    private static string Unknown(Mention thing) => thing.Kind == SubjectKind.Yard
        ? $"No yard '{thing.Name}' is known, and no good row of the sheet opens it. Mend the name, or say \"create\": \"yards\" in the mapping."
        : $"No colony '{thing.Name}' is known, and no good row of the sheet establishes it. Mend the name, or say \"create\": \"colonies\" in the mapping.";

    private static IEnumerable<Mention> Establishes(Made made) => made.Entry is ColonyEstablished or YardOpened
        ? made.Mentions.Select(mention => mention.Thing).Where(thing => thing.Kind == (made.Entry is YardOpened ? SubjectKind.Yard : SubjectKind.Colony))
        : [];

    private bool IsCreated(SubjectKind kind) => kind == SubjectKind.Yard ? _map.CreateYards : _map.CreateColonies;

    /// <summary>Yards and colonies that begin by being named: on the first day any row names them, so that a bad row, once mended, changes nothing.</summary>
    private List<Entry> Created()
    {
        var wanted = _rows.Where(row => row.Bad.Count == 0).SelectMany(row => row.Made).SelectMany(made => made.Mentions).Select(mention => mention.Thing).ToHashSet();
        var established = _rows.SelectMany(row => row.Made).SelectMany(Establishes).ToHashSet();
        return
        [
            .. _rows.SelectMany(row => row.Made).SelectMany(made => made.Mentions.Select(mention => (mention.Thing, made.Entry.On.Day)))
                .Where(named => wanted.Contains(named.Thing) && IsCreated(named.Thing.Kind) && !established.Contains(named.Thing) && !_names.Knows(named.Thing))
                .GroupBy(named => named.Thing, named => named.Day)
                .OrderByDescending(things => things.Key.Kind == SubjectKind.Yard)
                .Select(things => Creation(things.Key, things.Min())),
        ];
    }

    private Entry Creation(Mention thing, DateOnly day) => thing.Kind == SubjectKind.Yard
        ? new YardOpened { Id = _names.Creation(thing), On = day, Act = _names.Act, Order = 0, Yard = _names.Yard(thing.Name), Name = thing.Name }
        : new ColonyEstablished
        {
            Id = _names.Creation(thing), On = day, Act = _names.Act, Order = 1, Colony = _names.Colony(thing.Name), Number = thing.Name,
            How = HowEstablished.OpeningCount,
        };

    private IEnumerable<Entry> OfGoodRows()
    {
        var firstDays = _rows.SelectMany(row => row.Made).Where(made => made.Map.Once is not null)
            .GroupBy(made => made.Entry.Id, made => made.Entry.On).ToDictionary(days => days.Key, days => days.MinBy(on => on.Day));
        var given = new HashSet<EntryId>();
        foreach (var made in _rows.Where(row => row.Bad.Count == 0).SelectMany(row => row.Made))
        {
            if (made.Map.Once is null) yield return made.Entry;
            else if (given.Add(made.Entry.Id)) yield return made.Entry with { On = firstDays[made.Entry.Id] };
        }
    }

    private sealed record Planned(int Row, byte[] Raw, List<Made> Made, List<BadCell> Bad);
}
