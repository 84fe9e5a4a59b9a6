using System.Reflection;
using ColonyLineage.Entries;
using ColonyLineage.Ledger.Import;
using Xunit;

namespace ColonyLineage.Core.Tests.Import;

/// <summary>Every refusal of the import has a minimal file in Refusals/ that provokes it, named after it.</summary>
public sealed class RefusalTests
{
    private static readonly DateOnly Today = new(2026, 11, 1);
    private static readonly string Folder = Path.Combine(Places.Import, "Refusals");

    /// <summary>File, row (the header is 1), column.</summary>
    public static TheoryData<string, int, string> BadCells => new()
    {
        { "wrong-quotes", 3, "yard" },
        { "wrong-quotes-after", 3, "yard" },
        { "wrong-quotes-unclosed", 3, "yard" },
        { "ragged-row-short", 3, "mother" },
        { "ragged-row-long", 3, "column 12" },
        { "not-utf8", 3, "yard" },
        { "nul-byte", 3, "yard" },
        { "spreadsheet-error", 3, "mites" },
        { "not-a-number", 3, "mites" },
        { "not-a-number-whole", 3, "mites" },
        { "not-a-number-comma", 3, "mites" },
        { "not-a-day", 3, "washed" },
        { "same-key-twice", 3, "colony" },
        { "differs-from-earlier-row", 3, "mother" },
        { "not-found", 3, "into" },
        { "not-found-in-good-rows", 4, "into" },
        { "day-in-future", 3, "washed" },
        { "out-of-range", 3, "mites" },
        { "out-of-range-huge", 3, "mites" },
        { "missing", 3, "bees" },
        { "missing-day", 3, "made" },
        { "missing-key", 3, "colony" },
        { "missing-part", 3, "mother yard" },
        { "unknown-word", 3, "queen" },
        { "too-long", 3, "colony" },
        { "of-itself", 3, "into" },
    };

    [Theory]
    [MemberData(nameof(BadCells))]
    public void A_bad_cell_has_its_name_row_and_column(string file, int row, string column)
    {
        var plan = Plan(file);
        var bad = Assert.Single(plan.Bad, bad => Refused(file, bad.Name) && bad.Row == row);
        Assert.Equal(column, bad.Column);
        Assert.NotEmpty(bad.Message);
        Assert.Contains(plan.BadRows, badRow => badRow.Row == row);
        Assert.Equal(1, plan.GoodRows);
        Assert.Equal(Plan("good").Entries.Count(entry => entry is Washed) - 1, plan.Entries.Count(entry => entry is Washed));
    }

    /// <summary>File, and the field or place that the refusal names.</summary>
    public static TheoryData<string, string> WholeSheets => new()
    {
        { "not-utf8-header", "column 2" },
        { "nul-byte-header", "column 1" },
        { "no-rows", "" },
        { "no-rows-empty", "" },
        { "not-csv", "" },
        { "duplicate-column", "yard" },
        { "unknown-column", "entries[3].bees" },
    };

    [Theory]
    [MemberData(nameof(WholeSheets))]
    public void A_sheet_that_cannot_be_read_is_refused_as_a_whole(string file, string field)
    {
        var refusal = Assert.Single(Assert.Throws<RefusedException>(() => Plan(file)).Refusals);
        Assert.True(Refused(file, refusal.Name), refusal.Name);
        Assert.Equal(field, refusal.Field);
    }

    /// <summary>File, and the place in the mapping.</summary>
    public static TheoryData<string, string> Mappings => new()
    {
        { "mapping-not-readable", "line 3, character 9" },
        { "mapping-not-readable-twice", "" },
        { "mapping-wrong-setting", "date" },
        { "mapping-wrong-date-format", "dates" },
        { "mapping-wrong-kind", "entries[0].kind" },
        { "mapping-wrong-field", "entries[0].mite" },
        { "mapping-wrong-needs-field", "entries[0]" },
        { "mapping-wrong-needs-day", "entries[0]" },
        { "mapping-wrong-constant", "entries[0].how" },
        { "mapping-wrong-words", "entries[0].queen.words" },
        { "mapping-wrong-translation", "entries[0].queen" },
        { "mapping-wrong-label", "entries[1]" },
        { "mapping-wrong-brace", "entries[0].on" },
        { "mapping-wrong-place", "entries[0].colony" },
        { "mapping-wrong-part", "entries[0].gross" },
        { "mapping-wrong-no-entries", "entries" },
        { "mapping-wrong-names-entries", "entries[0].kind" },
        { "mapping-wrong-key", "key" },
        { "mapping-wrong-name", "name" },
    };

    [Theory]
    [MemberData(nameof(Mappings))]
    public void A_wrong_mapping_is_refused_with_the_place(string file, string place)
    {
        var json = File.ReadAllText(Path.Combine(Folder, file + ".map.json"));
        var refusal = Assert.Single(Assert.Throws<RefusedException>(() => Mapping.Read(json)).Refusals);
        Assert.True(Refused(file, refusal.Name), refusal.Name);
        Assert.StartsWith(place, refusal.Field);
    }

    [Fact]
    public void A_sheet_larger_than_the_limit_is_refused_before_it_is_read()
    {
        using var gigabyte = new Endless(canSeek: true, length: 1_000_000_000);
        var refusal = Assert.Single(Assert.Throws<RefusedException>(() => SheetImport.Plan(gigabyte, Map(), Today)).Refusals);
        Assert.Equal(ImportRefusals.SheetTooLarge, refusal.Name);
        Assert.Equal(0, gigabyte.BytesRead);
    }

    [Fact]
    public void A_stream_without_a_length_is_read_no_further_than_the_limit()
    {
        using var endless = new Endless(canSeek: false, length: long.MaxValue);
        var refusal = Assert.Single(Assert.Throws<RefusedException>(() => SheetImport.Plan(endless, Map(), Today, limits: new SheetLimits(Bytes: 500_000))).Refusals);
        Assert.Equal(ImportRefusals.SheetTooLarge, refusal.Name);
        Assert.InRange(endless.BytesRead, 500_000, 3_000_000);
    }

    [Fact]
    public void A_sheet_that_gives_too_many_entries_is_refused()
    {
        using var endless = new Endless(canSeek: false, length: long.MaxValue);
        var refusal = Assert.Single(Assert.Throws<RefusedException>(() => SheetImport.Plan(endless, Map(), Today, limits: new SheetLimits(Entries: 1000))).Refusals);
        Assert.Equal(ImportRefusals.SheetTooLarge, refusal.Name);
        Assert.InRange(endless.BytesRead, 0, 3_000_000);
    }

    [Fact] // a quote that is never closed would otherwise take the whole file into memory
    public void A_row_that_never_ends_is_refused()
    {
        using var open = new Endless(canSeek: false, length: long.MaxValue, filler: "C2,\"North"u8.ToArray());
        var refusal = Assert.Single(Assert.Throws<RefusedException>(() => SheetImport.Plan(open, Map(), Today)).Refusals);
        Assert.Equal(ImportRefusals.RowTooLong, refusal.Name);
        Assert.InRange(open.BytesRead, 1_000_000, 10_000_000);
    }

    [Fact]
    public void Every_name_has_its_case()
    {
        string[] withoutFile = [ImportRefusals.SheetTooLarge, ImportRefusals.RowTooLong]; // big files are made above
        var files = Directory.GetFiles(Folder).Select(file => Path.GetFileName(file)).ToList();
        var names = typeof(ImportRefusals).GetFields(BindingFlags.Public | BindingFlags.Static).Select(field => (string)field.GetRawConstantValue()!);
        Assert.All(names.Except(withoutFile), name => Assert.Contains(files, file => file.StartsWith(name, StringComparison.Ordinal)));

        var tested = BadCells.Select(row => row.Data.Item1).Concat(WholeSheets.Select(row => row.Data.Item1)).Select(file => file + ".csv")
            .Concat(Mappings.Select(row => row.Data.Item1 + ".map.json")).Concat(["good.csv", "sheet.map.json", ".gitattributes"]);
        Assert.Empty(files.Except(tested));
    }

    private static bool Refused(string file, string name) => file.StartsWith(name, StringComparison.Ordinal);

    private static Mapping Map() => Mapping.Read(File.ReadAllText(Path.Combine(Folder, "sheet.map.json")));

    private static ImportPlan Plan(string file)
    {
        using var sheet = File.OpenRead(Path.Combine(Folder, file + ".csv"));
        return SheetImport.Plan(sheet, Map(), Today);
    }

    /// <summary>A header, and then the same bytes again and again.</summary>
    private sealed class Endless(bool canSeek, long length, byte[]? filler = null) : Stream
    {
        private static readonly byte[] Header = "colony,yard,made,mother,mother yard,washed,mites,bees,queen,combined,into\n"u8.ToArray();
        private readonly byte[] _filler = filler ?? "C1,North,5/1/26,M1,South,5/20/26,3,300,QS,,\n"u8.ToArray();

        public long BytesRead { get; private set; }
        public override bool CanRead => true;
        public override bool CanSeek => canSeek;
        public override bool CanWrite => false;
        public override long Length => length;

        public override long Position
        {
            get => BytesRead;
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            for (var i = 0; i < count; i++, BytesRead++)
                buffer[offset + i] = BytesRead < Header.Length ? Header[BytesRead] : _filler[(BytesRead - Header.Length) % _filler.Length];
            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
