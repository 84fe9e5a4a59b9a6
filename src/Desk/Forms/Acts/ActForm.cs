using ColonyLineage.Entries;
using ColonyLineage.Projections.Cards;
using ColonyLineage.Projections.Register;
using ColonyLineage.Rules;

namespace ColonyLineage.Desk.Forms.Acts;

/// <summary>What lies ready when a form is laid out: the books' names, and what the address already says.</summary>
/// <param name="Filled">What stands in the form.</param>
/// <param name="Namer">Names of yards, colonies and queens.</param>
/// <param name="Outfit">Courses.</param>
/// <param name="Yard">The yard that it is about, where that is known.</param>
/// <param name="Colony">The colony that it is about, where that is known.</param>
/// <param name="Spot">The number of the spot that it is about.</param>
public sealed record Bench(Filled Filled, Namer Namer, OutfitCard Outfit, RegisterRow? Yard, RegisterRow? Colony, string? Spot)
{
    /// <summary>An entry whose fields are the first thing to stand in the form: an older definition, an example.</summary>
    public Entry? From { get; init; }

    /// <summary>The colony at hand, as it is written in a blank.</summary>
    public string? ColonyWritten => Colony is null ? null : Namer.Write(Colony);

    /// <summary>The id of the yard at hand.</summary>
    public string? YardId => Yard?.Id.ToString();
}

/// <summary>What every act has: its id and order made when the form was laid out, the day, who reports it.</summary>
public sealed record Head(ActId Act, Occurred On, string? By, string? Note, int FirstOrder);

/// <summary>The form of one kind of act: its blanks, and the request that they make.</summary>
public abstract class ActForm
{
    /// <summary>The name in the address.</summary>
    public abstract string Name { get; }

    /// <summary>What it is called.</summary>
    public abstract string Title { get; }

    /// <summary>What it is for, in a sentence.</summary>
    public abstract string About { get; }

    /// <summary>It may have been found later than it happened.</summary>
    public virtual string? AfterLabel => null;

    /// <summary>Its own blanks; the day, who and the note come by themselves.</summary>
    public abstract IReadOnlyList<Part> Parts(Bench bench);

    /// <summary>The request for Rules.</summary>
    public abstract object Request(Reading read, Head head);

    /// <summary>A request with what is the same for all.</summary>
    protected static ActRequest With(Head head, ActRequest request) => request with { By = head.By, Note = head.Note, FirstOrder = head.FirstOrder };

    protected static ActRequest Of(Head head, Func<ActId, Occurred, ActRequest> make) => With(head, make(head.Act, head.On));
}

/// <summary>The acts that can be recorded at the desk, in the order of how often they are.</summary>
public static class ActForms
{
    public static IReadOnlyList<ActForm> All { get; } =
    [
        new LookForm(), new TreatForm(), new RequeenForm(), new SplitForm(), new CombineForm(), new FixSpotForm(), new TransferForm(), new MoveForm(),
        new SupersedureForm(), new DeadForm(), new KillForm(), new NoteForm(),
        new KindForm(typeof(Washed), "Wash", "Mites and bees counted in a sample. Both counts are kept."),
        new KindForm(typeof(Fed), "Feed", "Syrup, sugar or anything else a colony was given; say whether parts were weighed or measured by volume."),
        new KindForm(typeof(FeederPutOn), "Feeder on", "A feeder is put on: how much it holds, and where it sits."), new KindForm(typeof(FeederTakenOff), "Feeder off", "A feeder is taken off."),
        new KindForm(typeof(Weighed), "Weigh", "What the scale said, and the weight of the hive without stores."), new KindForm(typeof(SupplementGiven), "Supplement", "Pollen substitute or a patty."),
        new KindForm(typeof(TreatmentTakenOut), "Take a treatment out", "Strips or trays of a treatment are taken out."), new KindForm(typeof(BoxesChanged), "Change boxes", "A colony is given another housing."),
        new KindForm(typeof(CourseDefined), "Define a course", "What makes a course of treatment complete, and within which limits: the owner's data; the label binds."),
        new KindForm(typeof(DailyMaximum), "Daily maximum", "The highest temperature of a day at a yard."), new KindForm(typeof(MedicineAcquired), "Lot of medicine", "What came into the outfit, from whom, and where the proof of purchase is."),
        new KindForm(typeof(StoresTargetSet), "Stores target", "What colonies in a housing are to have on for the winter."), new KindForm(typeof(ReadinessSet), "Criteria for wintering", "What the owner asks of a colony that is to be wintered."),
        new KindForm(typeof(StockCounted), "Count stock", "Something the outfit has at hand was counted."), new KindForm(typeof(StockChanged), "Stock in or out", "Something was bought, made, used up or lost."),
        new KindForm(typeof(OutfitDescribed), "Settings", "The outfit's name and the settings that answers depend on."),
    ];

    public static ActForm? Named(string? name) => All.FirstOrDefault(form => form.Name == name);
}
