using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ColonyLineage.Entries;
using ColonyLineage.Projections;

namespace ColonyLineage.Simulation;

/// <summary>Whole answers as text, so that two of them can be compared to the byte.</summary>
public sealed class Answers : Dictionary<(string Question, Subject Subject), string>
{
    private static readonly JsonSerializerOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, Converters = { new JsonStringEnumConverter() } };

    /// <summary>Answers that are folded at once from all that is open; subjects without rows are left out.</summary>
    public static Answers Of(WholeBooks books, IEnumerable<IQuestion> questions)
    {
        var answers = new Answers();
        var subjects = books.Subjects;
        foreach (var question in questions)
            foreach (var subject in subjects)
                if (question.Asks(subject.Kind))
                    answers.Put(question, subject, question.Rows(books.Books, subject));
        return answers;
    }

    /// <summary>Replaces the rows of one subject.</summary>
    public void Put(IQuestion question, Subject subject, IEnumerable<IRow> rows)
    {
        var text = Text(rows);
        if (text.Length == 0) Remove((question.Name, subject));
        else this[(question.Name, subject)] = text;
    }

    /// <summary>The first difference in words; null where there is none.</summary>
    public string? DifferenceFrom(Answers other)
    {
        foreach (var (key, text) in this)
            if (!other.TryGetValue(key, out var theirs) || theirs != text)
                return $"{key.Question} of {key.Subject.Kind} {key.Subject.Id}:\n  {text}\n  against\n  {theirs ?? "no rows"}";
        foreach (var (key, text) in other)
            if (!ContainsKey(key))
                return $"{key.Question} of {key.Subject.Kind} {key.Subject.Id}:\n  no rows\n  against\n  {text}";
        return null;
    }

    public static string Text(IEnumerable<IRow> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows)
        {
            if (text.Length > 0) text.Append('\n');
            text.Append(JsonSerializer.Serialize(row, row.GetType(), Options));
        }

        return text.ToString();
    }
}
