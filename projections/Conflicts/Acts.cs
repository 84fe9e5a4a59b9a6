namespace ColonyLineage.Projections.Conflicts;

/// <summary>The acts that would settle a conflict, in words, the likeliest first. Which is right only a person can know.</summary>
internal static class Acts
{
    public static IReadOnlyList<string> For(string conflict) => conflict switch
    {
        "after-end" => ["void the later entry, and record it on the colony that it was done to", "void the end, if it was another colony", Stand],
        "before-beginning" => ["void the early entry, and record it with its right day", "void the beginning, and record it with its right day", Stand],
        "two-on-a-spot" => ["record where one of them went: moved, combined, dead or given up", "void the entry that set one here, and record it as standing above the other", Stand],
        "moved-from-elsewhere" => ["record the move that is missing before it", "void it, and record it from where the colony stood", Stand],
        "queen-in-two-places" => ["record how she left the first colony: taken out, banked, lost", "void one of the two, if it was another queen", Stand],
        "two-queens" => ["record what became of the queen before: killed, lost, superseded", "void it, and record the colony as requeened", Stand],
        "mark-against-record" => ["void the look, if the mark was misread", "record her birth or her mark anew", "record a supersedure seen, if it is another queen", Stand],
        "daughter-older" => ["void the wrong birth, and record the right one", "void the wrong mother", Stand],
        "too-many-mites" => ["void the wash, and record it with the right counts", Stand],
        "out-of-nothing" => ["record the dose that is missing", "void it, if it was another colony", Stand],
        _ => [Stand],
    };

    private const string Stand = "let it stand, with a reason";
}
