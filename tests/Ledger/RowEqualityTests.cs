using System.Reflection;
using ColonyLineage.Entries;
using ColonyLineage.Ledger.Tables;
using ColonyLineage.Projections;
using ColonyLineage.Simulation;

namespace ColonyLineage.Ledger.Tests;

/// <summary>Rows are the same exactly where every column is: a difference that is missed stays in a read table.</summary>
public class RowEqualityTests
{
    [Fact]
    public void Rows_worked_out_twice_are_the_same_and_a_change_in_any_column_is_seen()
    {
        var history = Generator.Make(31, 60, 400);
        var (one, other) = (WholeBooks.Of(history), WholeBooks.Of(history));
        var columns = 0;
        foreach (var question in Questions.All)
        {
            var same = RowEquality.Of(question.Columns);
            foreach (var subject in one.Subjects.Where(subject => question.Asks(subject.Kind)))
                foreach (var (left, right) in question.Rows(one.Books, subject).Zip(question.Rows(other.Books, subject)))
                {
                    Assert.True(same(left, right), question.Name);
                    foreach (var column in question.Columns)
                    {
                        var changed = With(right, column.Property, Other(column.Property, column.Property.GetValue(right)));
                        Assert.False(same(left, changed), $"{question.Name}: {column.Name}");
                        columns++;
                    }
                }
        }

        Assert.True(columns > 1000, $"{columns} columns");
    }

    private static IRow With(IRow row, PropertyInfo property, object? value)
    {
        var copy = (IRow)row.GetType().GetMethod("<Clone>$")!.Invoke(row, null)!;
        property.SetValue(copy, value);
        return copy;
    }

    /// <summary>Another value that looks as much like it as can be.</summary>
    private static object? Other(PropertyInfo property, object? value)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        return value switch
        {
            null when type == typeof(string) => "",
            null => Activator.CreateInstance(type),
            string text => text + " ",
            int whole => whole + 1,
            // The same number, of other bytes.
            decimal number => number * 1.0m,
            bool flag => !flag,
            DateOnly day => day.AddDays(1),
            Enum word => Enum.GetValues(type).Cast<Enum>().First(another => !another.Equals(word)),
            IReadOnlyList<EntryId> ids => ids.Count > 1 ? ids.Reverse().ToArray() : (EntryId[])[.. ids, new EntryId(Guid.Empty)],
            IReadOnlyList<string> texts => (string[])[.. texts, ""],
            _ => Activator.CreateInstance(type),
        };
    }
}
