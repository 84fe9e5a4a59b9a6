using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using ColonyLineage.Entries;
using ColonyLineage.Projections;
using ColonyLineage.Projections.Sums.Mixed;
using ColonyLineage.Server.Answers;

namespace ColonyLineage.Command.Commands;

/// <summary>A mixed model fitted to the columns of a file, without any books, so that a statistician can check the program with data of her own.</summary>
internal static class FitModel
{
    public static System.CommandLine.Command Command()
    {
        var file = new Argument<FileInfo>("DATA") { Description = "CSV with a header; empty and NA are no value." };
        var trait = new Option<string>("--trait") { Description = "The column of what was measured. Rows without it are left out.", Required = true, HelpName = "COLUMN" };
        var taken = new Option<string>("--fixed") { Description = "Columns divided by commas: numbers are covariates (factor(NAME) makes groups of them), others groups, A:B a group for each pair.", DefaultValueFactory = _ => "", HelpName = "COLUMNS" };
        var random = new Option<string>("--random") { Description = "Columns or pairs A:B of columns, divided by commas.", Required = true, HelpName = "COLUMNS" };
        var nested = new Option<bool>("--nested") { Description = "Each random column lies within the one before it. What is crossed must not be nested." };
        var related = new Option<string?>("--related") { Description = "The random column whose levels are queens of the pedigree: they are related as it has them (BLUP with A), and all its queens are predicted.", HelpName = "COLUMN" };
        var pedigree = new Option<FileInfo?>("--pedigree") { Description = "CSV 'id, mother, mating' for --related; 'id, mother' where no matings are known.", HelpName = "FILE" };
        var matings = Relate.MatingsOption();
        var shares = Relate.SharesOption();
        var format = new Option<string>("--format") { Description = "table (the default), csv or json.", DefaultValueFactory = _ => "table", HelpName = "table|csv|json" };
        format.AcceptOnlyFromAmong("table", "csv", "json");
        var command = new System.CommandLine.Command("fit", "Variance components (REML), fixed terms, predictions (BLUP) and their errors from the full equations, from a file.") { file, trait, taken, random, nested, related, pedigree, matings, shares, format };
        command.Does(async (parsed, cancel) =>
        {
            var sheet = Relate.Read(parsed.GetValue(file)!);
            var (model, refusals) = ModelSheet.Of(sheet.Columns, sheet.Rows, parsed.GetValue(trait)!, Split(parsed.GetValue(taken)!), Split(parsed.GetValue(random)!), parsed.GetValue(nested));
            if (model is null) throw new RefusedException(refusals);
            if (parsed.GetValue(related) is { } term) model = Related(model, term, parsed.GetValue(pedigree), parsed.GetValue(matings), parsed.GetValue(shares)!);
            var fit = model.Reml();
            var output = parsed.InvocationConfiguration.Output;
            switch (parsed.GetValue(format))
            {
                case "json": await output.WriteLineAsync(Json(model, fit)); break;
                case "csv": AnswerCsv.Write(output, Long(model, fit)); break;
                default: await TableAsync(output, model, fit); break;
            }

            return Exit.Done;
        });
        return Help.WithExample(command, "lineage fit honey.csv --trait honey --fixed yard:season,age --random line,mother\nlineage fit paste.csv --trait strength --random batch,cask --nested --format json\nlineage fit honey.csv --trait honey --fixed yard:season,age --random queen --related queen --pedigree queens.csv --matings matings.csv");
    }

    private static ModelSheet Related(ModelSheet model, string term, FileInfo? pedigree, FileInfo? matings, string shares)
    {
        if (pedigree is null) throw new RefusedException(new Refusal(Refusals.Missing, "pedigree", "Name the pedigree that --related goes by, with --pedigree."));
        var (queens, names) = Relate.Queens(pedigree, matings, shares);
        var (related, refusals) = model.Related(term, queens, names);
        return related ?? throw new RefusedException(refusals);
    }

    private static string[] Split(string text) => text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static IEnumerable<Predicted> Predictions(ModelSheet model, IFitted fit) => Enumerable.Range(0, model.Random.Count).SelectMany(fit.Predictions);

    private static string Json(ModelSheet model, IFitted fit) => JsonSerializer.Serialize(
        new
        {
            records = model.Y.Count,
            leftOut = model.LeftOut,
            converged = fit.Converged,
            remlCriterion = fit.RemlCriterion,
            confounded = fit.Confounded,
            variances = fit.Components().Select(one => new { effect = one.Name, variance = one.Variance, standardError = one.StandardError }),
            @fixed = fit.Fixed().Select(one => new { term = one.Name, estimate = one.Estimate, standardError = one.StandardError }),
            predictions = Predictions(model, fit).Select(one => new { effect = one.Effect, level = one.Level, blup = one.Blup, standardError = one.StandardError, reliability = one.Reliability }),
        },
        new JsonSerializerOptions { WriteIndented = true });

    private static Answer Long(ModelSheet model, IFitted fit) => new(
        [new("part", ColumnType.Text), new("name", ColumnType.Text), new("level", ColumnType.Text), new("value", ColumnType.Number), new("standard_error", ColumnType.Number), new("reliability", ColumnType.Number)],
        [
            .. fit.Components().Select(one => (object?[])["variance", one.Name, null, one.Variance, one.StandardError, null]),
            .. fit.Fixed().Select(one => (object?[])["fixed", one.Name, null, one.Estimate, one.StandardError, null]),
            .. Predictions(model, fit).Select(one => (object?[])["prediction", one.Effect, one.Level, one.Blup, one.StandardError, one.Reliability]),
        ]);

    private static async Task TableAsync(TextWriter to, ModelSheet model, IFitted fit)
    {
        await to.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{model.Y.Count} records{(model.LeftOut > 0 ? $", {model.LeftOut} left out for want of a value" : "")}. REML criterion {fit.RemlCriterion:0.000000}{(fit.Converged ? "" : ", NOT CONVERGED")}."));
        if (fit.Confounded.Count > 0) await to.WriteLineAsync($"Cannot be told from other terms, and left out: {string.Join(", ", fit.Confounded)}.");
        await PartAsync("variance of", fit.Components().Select(one => (one.Name, one.Variance, one.StandardError, (double?)null)));
        await PartAsync("fixed", fit.Fixed().Select(one => (one.Name, one.Estimate, (double?)one.StandardError, (double?)null)));
        foreach (var effect in Predictions(model, fit).GroupBy(one => one.Effect))
            await PartAsync(effect.Key, effect.Select(one => (one.Level, one.Blup, (double?)one.StandardError, (double?)one.Reliability)));

        async Task PartAsync(string name, IEnumerable<(string Name, double Value, double? Error, double? Reliability)> lines)
        {
            var all = lines.ToList();
            var width = all.Select(line => line.Name.Length).Append(name.Length).Max();
            await to.WriteLineAsync();
            await to.WriteLineAsync($"{name.PadRight(width)}  {"value",14}  {"standard error",14}{(all.Any(line => line.Reliability is not null) ? $"  {"reliability",11}" : "")}");
            foreach (var line in all)
                await to.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{line.Name.PadRight(width)}  {line.Value,14:0.000000}  {line.Error,14:0.000000}{(line.Reliability is { } known ? $"  {known,11:0.000000}" : "")}"));
        }
    }
}
