using ColonyLineage.Entries;

namespace ColonyLineage.Rules;

/// <summary>
/// One entry, recorded by a person who sees the books. The colonies and yards that it speaks of must be in them, or begin with
/// it; a queen may be named here for the first time.
/// </summary>
/// <param name="Entry">The entry, its id made on the device.</param>
public sealed record RecordOne(Entry Entry)
{
    /// <summary>The entry as it is, or why not. Refusals name the entry's own fields.</summary>
    public static Outcome Decide(RecordOne request, IStanding standing, Now now)
    {
        var entry = request.Entry;
        Refusal[] refusals = [.. EntryCheck.Of(entry, now), .. entry is Voided voided ? OfVoid(voided, standing) : OfSubjects(entry, standing)];
        return refusals.Length > 0 ? Outcome.Refused(refusals) : Outcome.Of([entry]);
    }

    private static IEnumerable<Refusal> OfSubjects(Entry entry, IStanding standing) =>
        from subject in entry.Concerns
        where subject.Kind is SubjectKind.Colony or SubjectKind.Yard && subject.Id != Guid.Empty && !Begins(entry, subject) && !standing.Knows(subject)
        let what = subject.Kind == SubjectKind.Colony ? "colony" : "yard"
        select new Refusal(Refusals.NotFound, what, $"The books know no {what} {subject.Id}: take one that they know, or record first how it came.");

    private static bool Begins(Entry entry, Subject subject) => entry is ColonyEstablished or YardOpened && subject == entry.Stream;

    private static IEnumerable<Refusal> OfVoid(Voided voided, IStanding standing)
    {
        // A void that names itself has its own refusal.
        if (voided.Entry == voided.Id) yield break;
        var wrong = standing.Find(voided.Entry);
        if (wrong is null) yield return new Refusal(Refusals.NotFound, "entry", "The books hold no entry of this id: open the history and void it there.");
        else if (wrong is Voided) yield return VoidEntries.OfVoid("entry");
        else if (wrong.Stream != voided.Of || !wrong.Concerns.ToHashSet().SetEquals(voided.Concerns))
            yield return new Refusal(Refusals.NotFound, "of", "The wrong entry does not stand where this void says: void it from its own history.");
    }
}
