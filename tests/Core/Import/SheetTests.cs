using System.Text;
using ColonyLineage.Entries;
using ColonyLineage.Ledger.Import;
using Xunit;

namespace ColonyLineage.Core.Tests.Import;

/// <summary>What a mapping can say, case by case.</summary>
public sealed class SheetTests
{
    private static readonly DateOnly Today = new(2026, 11, 1);

    private const string Washes = """
        { "name": "t", "key": "{c}", "create": ["colonies"], "ignore": ["NA"],
          "entries": [ { "kind": "washed", "on": "{d}", "colony": "{c}", "mites": "{m}", "bees": "{b}" } ] }
        """;

    private const string OneWash = "c,d,m,b\n7,2026-05-01,3,300\n";

    [Theory] // RFC 4180, section 2: line ends, the last line without one, quotes, separators and line breaks inside them
    [InlineData("c,d,m,b\r\n7,2026-05-01,3,300\r\n")]
    [InlineData("c,d,m,b\n7,2026-05-01,3,300")]
    [InlineData("\"c\",\"d\",\"m\",\"b\"\n\"7\",\"2026-05-01\",\"3\",\"300\"\n")]
    [InlineData("c,d,m,b,note\n7,2026-05-01,3,300,\"a, \"\"b\"\"\r\nc\"\n")]
    [InlineData(" c , d ,m,b\n 7 ,2026-05-01 , 3,300\n,,,\n")]
    public void Forms_of_csv(string csv)
    {
        var wash = Assert.IsType<Washed>(Plan(Washes, csv).Entries[^1]);
        Assert.Equal((new DateOnly(2026, 5, 1), 3, 300), (wash.On.Day, wash.Mites, wash.Bees));
    }

    [Theory]
    [InlineData("utf-8")]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    public void A_byte_order_mark_tells_the_encoding(string name)
    {
        var encoding = Encoding.GetEncoding(name);
        var bytes = encoding.GetPreamble().Concat(encoding.GetBytes("c,d,m,b\nPrés 7,2026-05-01,3,300\n")).ToArray();
        var colony = Assert.IsType<ColonyEstablished>(SheetImport.Plan(new MemoryStream(bytes), Mapping.Read(Washes), Today).Entries[0]);
        Assert.Equal("Prés 7", colony.Number);
    }

    [Fact]
    public void Semicolons_and_a_decimal_comma()
    {
        var plan = Plan(
            """
            { "name": "t", "key": "{c}", "separator": ";", "decimal": ",", "dates": ["dd.MM.yyyy", "dd.MM.yy"], "create": ["colonies"],
              "entries": [ { "kind": "weighed", "on": "{d}", "colony": "{c}", "gross": { "amount": "{kg}", "unit": "kg" }, "tare": { "amount": 8.5, "unit": "kg" } } ] }
            """,
            "c;d;kg\n1;03.04.26;41,5\n2;04.04.2026;1.000\n");
        var weighed = Assert.Single(plan.Entries.OfType<Weighed>());
        Assert.Equal((new DateOnly(2026, 4, 3), 41.5m, 8.5m), (weighed.On.Day, weighed.Gross.Amount, weighed.Tare!.Amount));
        Assert.Equal(ImportRefusals.NotANumber, Assert.Single(plan.Bad).Name); // a thousand, or one? Nobody can say
    }

    [Theory]
    [InlineData("1/2/00", 2000)]
    [InlineData("1/2/26", 2026)]
    [InlineData("1/2/99", 2099)]
    public void Two_digit_years_are_of_this_century(string day, int year)
    {
        var plan = SheetImport.Plan(
            Sheet($"c,d\n1,{day}\n"),
            Mapping.Read("""{ "name": "t", "key": "{c}", "dates": ["M/d/yy"], "create": ["colonies"], "entries": [ { "kind": "found-dead", "on": "{d}", "colony": "{c}" } ] }"""),
            new DateOnly(2099, 12, 31));
        Assert.Equal(new DateOnly(year, 1, 2), plan.Entries[^1].On.Day);
    }

    [Fact] // a formula is a text; nothing is worked out
    public void A_formula_stays_as_it_is_written()
    {
        var plan = Plan(
            """{ "name": "t", "key": "{c}", "create": ["colonies"], "entries": [ { "kind": "noted", "on": "{d}", "colony": "{c}", "text": "{n}" } ] }""",
            "c,d,n\n1,2026-05-01,=1+1\n");
        Assert.Equal("=1+1", Assert.Single(plan.Entries.OfType<Noted>()).Text);
    }

    [Fact]
    public void Rows_are_numbered_as_in_a_spreadsheet_whatever_is_blank()
    {
        var plan = Plan(Washes, "c,d,m,b\n\n7,2026-05-01,3,300\n,,,\n8,2026-05-01,x,300\n");
        Assert.Equal(5, Assert.Single(plan.Bad).Row);
    }

    [Theory]
    [InlineData("7,2026-05-01,,", 0, 0)]         // nobody washed
    [InlineData("7,NA, NA,NA", 0, 0)]            // ignored cells are empty cells
    [InlineData("7,,3,300", 0, 1)]               // a wash without its day
    [InlineData("7,2026-05-01,3,", 0, 1)]        // a wash without its bees
    [InlineData("7,2026-05-01,0,300", 1, 0)]     // no mites are a count
    public void Nothing_to_say_is_no_entry_and_half_of_it_is_a_bad_cell(string row, int washes, int bad)
    {
        var plan = Plan(Washes, $"c,d,m,b\n{row}\n");
        Assert.Equal((washes, bad), (plan.Entries.OfType<Washed>().Count(), plan.Bad.Count));
    }

    [Fact]
    public void A_dead_out_needs_no_cause_and_a_blank_day_is_no_dead_out()
    {
        var plan = Plan(
            """{ "name": "t", "key": "{c}", "create": ["colonies"], "entries": [ { "kind": "found-dead", "on": "{d}", "after": "{seen}", "colony": "{c}", "cause": "{why}" } ] }""",
            "c,d,seen,why\n1,2026-03-01,2025-12-03,\n2,,,\n3,2026-03-01,,starved\n");
        var dead = plan.Entries.OfType<FoundDead>().ToList();
        Assert.Empty(plan.Bad);
        Assert.Equal(["2025-12-03/2026-03-01", "2026-03-01"], dead.Select(colony => colony.On.ToString()));
        Assert.Equal([null, "starved"], dead.Select(colony => colony.Cause));
    }

    [Fact]
    public void Conditions_words_choices_and_constants()
    {
        var plan = Plan(
            """
            { "name": "t", "key": "{c}", "create": ["colonies"],
              "words": { "heft": { "l": "light", "h": "heavy", "?": null } },
              "entries": [
                { "kind": "treated", "on": ["{d1}", "{d}"], "colony": "{c}", "when": { "what": ["full", "half"], "no": false },
                  "course": "thymol", "doses": { "from": "{what}", "words": { "full": "1", "half": "0.5" } }, "note": "{{as written}}: {what}" },
                { "kind": "inspected", "on": { "from": "{d}", "days": 14 }, "colony": "{c}", "heft": { "from": "{heft}", "words": "heft" },
                  "signs": ["{s1}", "{s2}"] }
              ] }
            """,
            """
            c,d,d1,what,no,heft,s1,s2
            1,2026-05-01,2026-05-03,half,,l,chalk,
            2,2026-05-01,,full,,?,,
            3,2026-05-01,,full,x,h,chalk,sunken caps
            4,2026-05-01,,none,,,,
            """);
        Assert.Empty(plan.Bad);
        Assert.Equal([(3, 0.5m, "{as written}: half"), (1, 1m, "{as written}: full")], plan.Entries.OfType<Treated>().Select(dose => (dose.On.Day.Day, dose.Doses, dose.Note!)));
        var looks = plan.Entries.OfType<Inspected>().ToList();
        Assert.Equal([Heft.Light, Heft.Heavy], looks.Select(look => look.Heft!.Value));
        Assert.Equal([1, 2], looks.Select(look => look.Signs!.Count));
        Assert.All(looks, look => Assert.Equal(15, look.On.Day.Day));
    }

    [Fact]
    public void Entries_of_a_day_keep_the_order_of_the_mapping_and_what_is_created_comes_first()
    {
        var plan = Plan(
            """
            { "name": "t", "key": "{c}", "create": ["yards", "colonies"],
              "entries": [ { "kind": "moved", "on": "{d}", "colony": "{c}", "to": { "yard": "{y}", "number": "{#}" } },
                           { "kind": "found-queenless", "on": "{d}", "colony": "{c}" } ] }
            """,
            "c,d,y\n1,2026-05-02,A\n2,2026-05-01,A\n3,2026-05-01,B\n");
        var first = plan.Entries.OrderBy(entry => entry.On.Day).ThenBy(entry => entry.Order).Select(entry => Kinds.Of(entry).Name).ToList();
        Assert.Equal(["yard-opened", "yard-opened", "colony-established", "colony-established", "moved", "moved"], first[..6]);
        Assert.Equal(["1", "2", "1"], plan.Entries.OfType<Moved>().Select(moved => moved.To.Number)); // rows of each yard, in turn
        Assert.All(plan.Entries.OfType<YardOpened>(), yard => Assert.Equal(new DateOnly(2026, 5, 1), yard.On.Day));
    }

    [Fact]
    public void Another_mapping_with_the_same_names_speaks_of_the_same_colonies_but_makes_its_own_entries()
    {
        var spring = Plan(Washes, OneWash);
        var autumn = Plan(Washes.Replace("\"name\": \"t\"", "\"name\": \"u\", \"names\": \"t\""), OneWash);
        Assert.Equal(spring.Entries.OfType<Washed>().Single().Colony, autumn.Entries.OfType<Washed>().Single().Colony);
        Assert.Empty(spring.Entries.Select(entry => entry.Id).Intersect(autumn.Entries.Select(entry => entry.Id)));
        Assert.NotEqual(spring.Act, autumn.Act);
        Assert.NotEqual(spring.Entries.OfType<Washed>().Single().Colony, Plan(Washes.Replace("\"t\"", "\"v\""), OneWash).Entries.OfType<Washed>().Single().Colony);
    }

    /// <summary>A station's file in Fahrenheit, with a column that nobody needs, a day that it missed and a bad cell.</summary>
    [Fact]
    public void Daily_maxima_of_a_weather_station()
    {
        var yard = new YardId(new Guid("00000000-0000-8000-8000-000000000009"));
        var map = Mapping.Read(
            """
            { "name": "weather", "key": "{date}", "ignore": ["-999"],
              "entries": [ { "kind": "daily-maximum", "on": "{date}", "yard": "Withy Bottom", "when": { "tmax": true },
                             "maximum": { "degrees": "{tmax}", "scale": "F" }, "station": "{station}" } ] }
            """);
        var plan = SheetImport.Plan(Sheet("station,date,tmin,tmax\nMill,2026-07-20,55,91.4\nMill,2026-07-21,54,-999\nMill,2026-07-22,50,hot\n"), map, Today, new KnownNames { Yards = new Dictionary<string, YardId> { ["Withy Bottom"] = yard } });
        var maximum = Assert.IsType<DailyMaximum>(Assert.Single(plan.Entries));
        Assert.Equal((yard, new DateOnly(2026, 7, 20), new Temperature(91.4m, "F"), 33m, "Mill"), (maximum.Yard, maximum.On.Day, maximum.Maximum, maximum.Maximum.Celsius, maximum.Station));
        Assert.Equal([(4, ImportRefusals.NotANumber)], plan.Bad.Select(bad => (bad.Row, bad.Name)));
    }

    [Fact]
    public void A_colony_that_the_books_know_is_not_created_again()
    {
        var seven = new ColonyId(new Guid("00000000-0000-8000-8000-000000000007"));
        var known = new KnownNames { Colonies = new Dictionary<string, ColonyId> { ["7"] = seven } };
        var entry = Assert.Single(SheetImport.Plan(Sheet(OneWash), Mapping.Read(Washes), Today, known).Entries);
        Assert.Equal(seven, Assert.IsType<Washed>(entry).Colony);
    }

    [Fact]
    public void A_row_that_leans_on_a_row_that_leans_on_a_bad_row_is_bad_too()
    {
        var plan = Plan(
            """
            { "name": "t", "key": "{c}",
              "entries": [ { "kind": "colony-established", "on": "{d}", "colony": "{c}", "number": "{c}", "how": "split" },
                           { "kind": "split-from", "on": "{d}", "colony": "{from}", "into": "{c}", "when": { "from": true } } ] }
            """,
            "c,d,from\n3,2026-05-03,2\n2,2026-05-02,1\n1,1 May,\n4,2026-05-04,\n");
        Assert.Equal([(2, Refusals.NotFound), (3, Refusals.NotFound), (4, ImportRefusals.NotADay)], plan.Bad.Select(bad => (bad.Row, bad.Name)));
        Assert.Equal("4", Assert.IsType<ColonyEstablished>(Assert.Single(plan.Entries)).Number);
    }

    [Fact]
    public void A_colony_that_the_sheet_establishes_is_not_created_besides()
    {
        var plan = Plan(
            """
            { "name": "t", "key": "{c}", "create": ["colonies"],
              "entries": [ { "kind": "colony-established", "on": "{d}", "colony": "{c}", "number": "{c}", "how": "swarm", "when": { "how": "swarm" } },
                           { "kind": "found-queenless", "on": "{d}", "colony": "{c}" } ] }
            """,
            "c,d,how\n1,2026-05-03,swarm\n2,2026-05-02,\n");
        Assert.Equal([("2", HowEstablished.OpeningCount), ("1", HowEstablished.Swarm)], plan.Entries.OfType<ColonyEstablished>().Select(colony => (colony.Number, colony.How)));
    }

    [Fact]
    public void Mending_a_bad_row_changes_nothing_else()
    {
        var good = Plan(Washes, "c,d,m,b\n7,2026-05-01,3,300\n8,2026-05-02,1,310\n");
        var bad = Plan(Washes, "c,d,m,b\n7,2026-05-01,3,300\n8,2026-05-02,1,none\n");
        Assert.Equal(2, bad.Entries.Count);
        Assert.All(bad.Entries.Select(EntryJson.Write), entry => Assert.Contains(entry, good.Entries.Select(EntryJson.Write)));
    }

    [Fact]
    public void Bad_rows_are_written_as_they_stand()
    {
        var plan = Plan(Washes, "c,d,m,b,note\r\n7,2026-05-01,3,300,\r\n8,2026-05-02,\"x\",310,\"a\r\nb\"\r\n");
        using var to = new MemoryStream();
        plan.WriteBadRows(to);
        Assert.Equal("c,d,m,b,note\r\n8,2026-05-02,\"x\",310,\"a\r\nb\"\r\n", Encoding.UTF8.GetString(to.ToArray()));
        Assert.Equal(["note"], plan.UnusedColumns);
        Assert.Equal(new Dictionary<string, int> { ["colony-established"] = 1, ["washed"] = 1 }, plan.Counts);
    }

    [Fact]
    public void The_example_of_the_documentation_runs()
    {
        var text = File.ReadAllText(Path.Combine(Places.Root, "src", "Ledger", "Import", "mapping.md")).Split("```jsonc")[1].Split("```")[0];
        var plan = SheetImport.Plan(
            Sheet("colony,wash day,mites,bees,May,May queen,May frames,scale,kg\n12,8/20/26,3,300,2026-05-04,QS,7.5,A,41.5\n13,NA,,,5/4/26,QNS,4,C,\n"),
            Mapping.Read(text), Today);
        Assert.Empty(plan.Bad);
        Assert.Equal(new Dictionary<string, int> { ["colony-established"] = 2, ["inspected"] = 2, ["washed"] = 1, ["weighed"] = 1 }, plan.Counts);
    }

    private static MemoryStream Sheet(string csv) => new(Encoding.UTF8.GetBytes(csv));

    private static ImportPlan Plan(string map, string csv) => SheetImport.Plan(Sheet(csv), Mapping.Read(map), Today);
}
