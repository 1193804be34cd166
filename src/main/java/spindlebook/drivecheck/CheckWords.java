package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.advice.ClayGap;
import spindlebook.advice.DeepestBump;
import spindlebook.advice.DriveCheck;
import spindlebook.advice.DriveCheck.Checked;
import spindlebook.advice.NextReading;
import spindlebook.advice.ThingFirst;
import spindlebook.advice.ThingFirst.Why;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.CureAddress;
import spindlebook.card.Days;
import spindlebook.card.NeedAddress;
import spindlebook.card.TravelWords;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.Doubted;
import spindlebook.fold.ReadAgain;
import spindlebook.fold.SeenFastener;
import spindlebook.fold.SeenPart;
import spindlebook.travel.Cure;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.uncertainty.Figure;

/** What a drive check found, in sentences and as jobs, and the page that cures each. Used once. */
public final class CheckWords {
  private static final int MOST_NAMED = 3;
  private static final int MOST_PLACES = 2;
  private static final String BACK = "drive-check";

  private final DriveCheck check;
  private final String car;
  private final CarBook book;
  private final Map<String, TravelWords> words = new LinkedHashMap<>();
  private final Set<String> curesTold = new HashSet<>();
  private final Set<String> stopsTold = new HashSet<>();

  private CheckWords(CarBook book, DriveCheck check) {
    this.check = check;
    this.car = book.car().orElse("");
    this.book = book;
    check
        .corners()
        .forEach(c -> words.put(c.card().corner(), new TravelWords(c.card(), c.travel())));
  }

  /** Of a check of this book, in its order. */
  public static List<Task> of(CarBook book, DriveCheck check) {
    CheckWords these = new CheckWords(book, check);
    return check.things().stream().map(these::line).toList();
  }

  /** "meets your rules", or how many things first. */
  public static String outcome(DriveCheck check) {
    return check.meetsRules()
        ? "meets your rules"
        : Counted.of(check.things().size(), "thing") + " first";
  }

  private Task line(ThingFirst thing) {
    Checked at = thing.corner() == null ? null : check.corner(thing.corner()).orElse(null);
    if (at != null) {
      return line(thing, at, words.get(thing.corner()));
    }
    if (thing instanceof ThingFirst.ToDo toDo) {
      return toDo(toDo, "the whole car");
    }
    if (thing instanceof ThingFirst.PartDue due) {
      return partDue(due);
    }
    String address = "/cars/" + car + "/corners/new";
    return new Task(thing, "the whole car", "No corner of it is in the book.", "", address)
        .job("Add", "its corners");
  }

  private Task line(ThingFirst thing, Checked at, TravelWords say) {
    return TOLD.get(thing.getClass()).of(this, thing, at, say);
  }

  private interface Telling<T> {
    Task of(CheckWords words, T thing, Checked at, TravelWords say);
  }

  /** How each kind of thing is told at its corner; none can be left out. */
  private static final Map<Class<? extends ThingFirst>, Telling<ThingFirst>> TOLD = new HashMap<>();

  private static <T extends ThingFirst> void tell(Class<T> kind, Telling<T> telling) {
    TOLD.put(kind, (words, thing, at, say) -> telling.of(words, kind.cast(thing), at, say));
  }

  static Set<Class<? extends ThingFirst>> kinds() {
    return TOLD.keySet();
  }

  static {
    tell(ThingFirst.OfLimit.class, CheckWords::limit);
    tell(ThingFirst.NotReadFarEnough.class, (w, of, at, say) -> notReadFarEnough(of, at, say));
    tell(ThingFirst.OfMidTravel.class, (w, of, at, say) -> midTravel(of, at, say));
    tell(ThingFirst.OffTarget.class, (w, off, at, say) -> offTarget(off, at));
    tell(ThingFirst.SwingsTooFar.class, (w, swing, at, say) -> swingsTooFar(swing, at));
    tell(ThingFirst.StopsDisagree.class, (w, stops, at, say) -> stopsDisagree(stops, at, say));
    tell(ThingFirst.Missing.class, (w, missing, at, say) -> missing(missing, at, say));
    tell(ThingFirst.Again.class, (w, again, at, say) -> again(again, at, say));
    tell(ThingFirst.InDoubt.class, (w, in, at, say) -> inDoubt(in, at));
    tell(ThingFirst.NotMeasured.class, (w, not, at, say) -> notMeasured(not, at));
    tell(ThingFirst.Opened.class, (w, opened, at, say) -> opened(opened, at));
    tell(ThingFirst.ReCheckDue.class, CheckWords::reCheck);
    tell(ThingFirst.ToDo.class, (w, toDo, at, say) -> w.toDo(toDo, at.card().place().words()));
    tell(ThingFirst.PartDue.class, (w, due, at, say) -> w.partDue(due));
    tell(
        ThingFirst.DeeperThanAllowed.class,
        (w, bump, at, say) ->
            room(bump, at, deeper(bump, say), adjuster(at.card(), AdjusterKind.BUMP_STOP_SPACER)));
    tell(
        ThingFirst.NearerThanAllowed.class,
        (w, clay, at, say) ->
            room(clay, at, nearer(clay.clay(), say), "/corners/" + corner(at) + "/adjustments"));
    tell(ThingFirst.StretchUsed.class, (w, used, at, say) -> stretchUsed(used, at));
  }

  private static Task notReadFarEnough(
      ThingFirst.NotReadFarEnough of, Checked at, TravelWords say) {
    String href = NeedAddress.of(corner(at), say, of.reach().needs());
    return line(of, at, say.unreadReach(of.reach()), "", href)
        .job("Measure", of.count() + " places " + say.outTo(of.reach()));
  }

  private static Task midTravel(ThingFirst.OfMidTravel of, Checked at, TravelWords say) {
    return line(of, at, say.midTravel(of.mid()), "", curve(at, of.mid().point()))
        .job(
            of.why() == Why.SHORT ? "Make room" : "Measure",
            say.name(of.mid()) + ", in mid-travel");
  }

  private static Task stopsDisagree(ThingFirst.StopsDisagree thing, Checked at, TravelWords say) {
    ToRead bump = new ToRead(HeightName.FULL_BUMP, null, Steering.STRAIGHT, null, null);
    String sentence = "Full bump as read and as worked out from touch and crush disagree.";
    return line(thing, at, sentence, "", NeedAddress.of(corner(at), say, List.of(need(bump))))
        .job("Measure again", "full bump: read and worked out disagree");
  }

  private Task partDue(ThingFirst.PartDue due) {
    SeenPart part = due.part();
    String what = part.said().called();
    String used = part.said().used(Math.rint(part.since() * 10) / 10);
    return new Task(
            due,
            part.where(),
            Capital.of(what) + ": " + used + " since it was fitted or looked at.",
            "You wanted it looked at after " + part.said().used(part.said().lookAfter()) + ".",
            "/cars/" + car + "/parts")
        .job("Look at", what)
        .ticked(
            "/cars/" + car + "/parts/" + part.fitted().key(),
            Map.of("done", "looked-at", "back", BACK));
  }

  private static Task inDoubt(ThingFirst.InDoubt in, Checked at) {
    Doubted doubted = in.doubted();
    String sentence = Capital.of(doubted.kind() + ": " + doubted.words());
    return line(in, at, sentence, doubted.doubt(), "/entries/" + doubted.key())
        .job("Check this:", doubted.kind() + ", " + doubted.words());
  }

  private static Task notMeasured(ThingFirst.NotMeasured not, Checked at) {
    String rounds = "/corners/" + corner(at) + "/rounds";
    return line(
            not,
            at,
            not.round()
                ? "A round was begun; no height is in it yet."
                : "No round yet: nothing was ever measured here.",
            "",
            not.round() ? rounds : rounds + "/new")
        .job("Measure", at.card().place().words() + ", nothing read yet");
  }

  private static String corner(Checked at) {
    return at.card().corner();
  }

  private static Task line(
      ThingFirst thing, Checked at, String sentence, String more, String href) {
    return new Task(thing, at.card().place().words(), sentence, more, href);
  }

  private static String curve(Checked at, WatchPoint point) {
    return "/corners/" + corner(at) + "/curves?of=p-" + point.point();
  }

  private static Need need(ToRead toRead) {
    return new Need(toRead, null, null, List.of(), null);
  }

  private static Task missing(ThingFirst.Missing missing, Checked at, TravelWords say) {
    List<Need> needs = missing.needs();
    String sentence = "Needs " + named(needs, at, say) + ".";
    Task task = line(missing, at, sentence, "", NeedAddress.of(corner(at), say, needs));
    List<ToRead> toRead = needs.stream().map(Need::toRead).toList();
    return toRead.stream().allMatch(t -> t == null)
        ? task.job("Give", say.needs(needs.stream().map(Need::bare).toList()))
        : task.job("Measure", places(toRead, at.card()));
  }

  private static Task offTarget(ThingFirst.OffTarget off, Checked at) {
    Content.Target target = off.target().content();
    String figure = Capital.of(target.figure().words());
    String words =
        switch (off.why()) {
          case SHORT -> figure + " misses your target.";
          case CANT_TELL -> figure + " is too close to your target to tell.";
          case STALE -> figure + " has to be measured again.";
          case NOT_CONFIRMED -> figure + " was moved and put back, and not measured since.";
          default -> figure + " has a target and is not known.";
        };
    String verb =
        switch (off.why()) {
          case SHORT -> "Set";
          case STALE, NOT_CONFIRMED -> "Measure again";
          default -> "Measure";
        };
    String href = "/corners/" + corner(at) + "/alignment";
    return line(off, at, words, "Your target: " + target.inWords() + ".", href)
        .job(verb, target.figure().words() + ", target " + target.inWords());
  }

  private static Task swingsTooFar(ThingFirst.SwingsTooFar swing, Checked at) {
    String joint = swing.joint().swings();
    boolean sure = swing.why() == Why.SHORT;
    String sentence =
        Capital.of(joint)
            + (sure
                ? ": it swings more than its hardware allows, by the linkage."
                : ": too close to what its hardware allows to tell.");
    String href = "/corners/" + corner(at) + "/linkage/moves";
    return line(swing, at, sentence, "Its hardware allows " + swing.allows() + ".", href)
        .job(sure ? "Make room" : "Look at", joint + ", allows " + swing.allows());
  }

  private Task limit(ThingFirst.OfLimit of, Checked at, TravelWords say) {
    EndFindings end = at.travel().at(of.end());
    boolean worst = of.why() == Why.SHORT && curesTold.add(corner(at) + of.end());
    String cure = worst ? say.cure(end) : "";
    Task task = line(of, at, say.finding(end, of.limit()), cure, cureOf(of, end, at, say));
    String name = say.name(of.limit());
    boolean toStop = task.href().contains("/adjustments/");
    String key = say.cureKey(end);
    // The stop's change once an end; what else is too close there goes by it.
    if (toStop && !key.isEmpty() && stopsTold.add(corner(at) + of.end())) {
      String to = say.cureTo(end);
      return task.job(key, to.isEmpty() ? "for " + name : to);
    }
    boolean throughout = of.limit().at() instanceof EndLimit.BrokenThroughout;
    if (toStop && !(throughout && of.why() != Why.CANT_TELL)) {
      return task.job(say.cureVerb(end), "also for " + name);
    }
    return task.job(of.why() == Why.CANT_TELL ? "Measure" : "Make room", name);
  }

  private static String cureOf(
      ThingFirst.OfLimit of, EndFindings end, Checked at, TravelWords say) {
    if (of.why() == Why.CANT_TELL) {
      for (NextReading next : say.next()) {
        if (next.about(of.limit()) && next.need().toRead() != null) {
          return NeedAddress.of(corner(at), say, List.of(next.need()));
        }
      }
    }
    Limit limit = of.limit();
    boolean noStop = limit.at() instanceof EndLimit.BrokenThroughout;
    String otherwise = limit.point() == null ? "/corners/" + corner(at) : curve(at, limit.point());
    return noStop
        ? otherwise
        : end.cure().map((Cure c) -> CureAddress.of(at.card(), c)).orElse(otherwise);
  }

  private static Task again(ThingFirst.Again again, Checked at, TravelWords say) {
    List<ToRead> toRead = again.again().stream().map(ReadAgain::toRead).toList();
    String what = named(toRead.stream().map(CheckWords::need).toList(), at, say);
    String because =
        again.again().stream()
            .flatMap(a -> a.because().stream())
            .distinct()
            .sorted(Comparator.comparingLong(Change::n).reversed())
            .map(Change::words)
            .distinct()
            .limit(2)
            .collect(Collectors.joining("; "));
    boolean stale = again.why() == Why.STALE;
    return line(
            again,
            at,
            (stale ? "Measure again: " : "Set back, check it: ") + what + ".",
            because.isEmpty() ? "" : "Since: " + because + ".",
            "/corners/" + corner(at) + "/rounds/new?again=1")
        .job(stale ? "Measure again" : "Set back, check", places(toRead, at.card()));
  }

  /** "tyre to frame and upper rod end, 12": what is read, by its places, and how much of it. */
  private static String places(List<ToRead> toRead, Card card) {
    List<String> names =
        toRead.stream()
            .flatMap(Stream::ofNullable)
            .map(
                t ->
                    t.quantity() != null
                        ? card.what(t)
                        : t.name().words() + (t.pairing() == Pairing.CROSSED ? ", crossed" : ""))
            .distinct()
            .toList();
    String first = names.stream().limit(MOST_PLACES).collect(Collectors.joining(", "));
    String all = names.size() > MOST_PLACES ? first + " …" : first;
    return toRead.size() == 1 ? all : all + ", " + toRead.size() + " places";
  }

  /** What is no gap in its own words; gaps counted, and named by their places. */
  private static String named(List<Need> needs, Checked at, TravelWords say) {
    List<Need> gaps =
        needs.stream().filter(n -> n.toRead() != null && n.toRead().point() != null).toList();
    List<String> words =
        new ArrayList<>(needs.stream().filter(n -> !gaps.contains(n)).map(say::need).toList());
    if (gaps.size() == 1) {
      words.add(say.need(gaps.get(0)));
    } else if (gaps.size() > 1) {
      List<String> of = gaps.stream().map(n -> at.card().what(n.toRead())).distinct().toList();
      words.add(0, gaps.size() + " gaps or angles (" + some(of) + ")");
    }
    return some(words);
  }

  private static String some(List<String> words) {
    int told = words.size() == MOST_NAMED + 1 ? MOST_NAMED + 1 : MOST_NAMED;
    String first = words.stream().limit(told).collect(Collectors.joining(", "));
    return words.size() <= told ? first : first + " and " + (words.size() - told) + " more";
  }

  // --- what drives did and hands have to do

  private static Task opened(ThingFirst.Opened opened, Checked at) {
    SeenFastener seen = opened.fastener();
    String name = Capital.of(seen.adjuster().name()) + ", " + seen.adjuster().kind().fastener();
    String torque = seen.torque() == null ? "" : "Torque " + seen.torque() + ".";
    String href = "/corners/" + corner(at) + "/fasteners/" + seen.adjuster().adjuster();
    return line(opened, at, name + ": " + seen.state().words() + ".", torque, href)
        .job("Torque", fastener(seen) + (seen.torque() == null ? "" : ", " + seen.torque()))
        .ticked(href, Map.of("how", "marked", "back", BACK));
  }

  private Task reCheck(ThingFirst.ReCheckDue due, Checked at, TravelWords say) {
    String href = "/cars/" + car + "/re-check?corner=" + corner(at);
    return line(due, at, notLookedAt(due), "", href).job("Look at", due(due));
  }

  private static Task stretchUsed(ThingFirst.StretchUsed used, Checked at) {
    return used.between() == null
        ? line(
                used,
                at,
                "The limit strap has taken up all the stretch that is held back for it.",
                "A new strap, or more held back.",
                adjuster(at.card(), AdjusterKind.LIMIT_STRAP))
            .job("Replace", "limit strap, its stretch is used up")
        : line(
                used,
                at,
                "Between drives the limit strap was longer than the stretch held back for it"
                    + " allows.",
                "Read it on the strap in a round.",
                "/corners/" + corner(at) + "/rounds/new")
            .job("Measure", "limit strap, longer than its stretch allows");
  }

  private static Task room(ThingFirst thing, Checked at, String sentence, String href) {
    return line(thing, at, sentence, "", href).job("Make room:", sentence);
  }

  /** "strap bolts"; with what it holds where the word alone does not say. */
  private static String fastener(SeenFastener seen) {
    String fastener = seen.adjuster().kind().fastener();
    String name = seen.adjuster().name();
    String first = fastener.split(" ", 2)[0].replace('-', ' ');
    return name.contains(first) ? fastener : name + ", " + fastener;
  }

  private static String adjuster(Card card, AdjusterKind kind) {
    String address = "/corners/" + card.corner() + "/adjustments";
    return card.adjuster(kind).map(a -> address + "/" + a.adjuster().adjuster()).orElse(address);
  }

  private String notLookedAt(ThingFirst.ReCheckDue due) {
    String drive =
        book.lastUse().filter(u -> u.at() != null).map(u -> " of " + Days.day(u.at())).orElse("");
    return "Not looked at since the drive" + drive + ": " + due(due) + ".";
  }

  /** "strap, tyre pressure, marks of 2 fasteners". */
  private static String due(ThingFirst.ReCheckDue due) {
    String read =
        due.unread().stream().sorted().map(CheckWords::briefly).collect(Collectors.joining(", "));
    String marks = due.marks() == 0 ? "" : "marks of " + Counted.of(due.marks(), "fastener");
    return read + (read.isEmpty() || marks.isEmpty() ? "" : ", ") + marks;
  }

  private static String briefly(TelltaleKind kind) {
    return switch (kind) {
      case STRAP_LENGTH -> "strap";
      case TYRE_PRESSURE -> "tyre pressure";
      case SHOCK_RING, CLAY, WITNESS_MARK -> kind.words();
    };
  }

  private static String deeper(ThingFirst.DeeperThanAllowed deeper, TravelWords say) {
    DeepestBump.At bump = deeper.bump();
    Figure left = (deeper.pastLimit() ? bump.toLimitMm() : bump.toSolidMm()).orElseThrow();
    return "The ring on the shock shaft: a drive took the wheel "
        + (bump.beyond() ? "at least " : "")
        + say.lengths().text(-left.value())
        + " past "
        + (deeper.pastLimit()
            ? "the limit of bump, " + say.name(bump.limit().orElseThrow())
            : "where the stop is solid")
        + ".";
  }

  private static String nearer(ClayGap clay, TravelWords say) {
    return "Clay at "
        + clay.point().name()
        + ": the gap came down to "
        + say.lengths().text(clay.thickMm())
        + " on a drive, "
        + say.lengths().text(-clay.overMm())
        + " less than its rule asks.";
  }

  private Task toDo(ThingFirst.ToDo toDo, String place) {
    String words = Capital.of(toDo.toDo().toDo().words());
    String[] job = words.split(" ", 2);
    return new Task(toDo, place, words, "", "/cars/" + car + "/to-do")
        .job(job[0], job.length > 1 ? job[1] : "")
        .ticked("/to-do/" + toDo.toDo().key() + "/done", Map.of("done", "true", "back", BACK));
  }
}
