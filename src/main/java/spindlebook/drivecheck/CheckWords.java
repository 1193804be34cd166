package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
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
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.SeenFastener;
import spindlebook.travel.Cure;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.uncertainty.Figure;

/** What a drive check found, in sentences, and the page that cures each. Used once. */
public final class CheckWords {
  private static final int MOST_NAMED = 3;

  /**
   * One thing to see to.
   *
   * @param place the corner's, in words; "the whole car"
   * @param more what cures it, or why it is so; may be empty
   */
  public record Line(ThingFirst thing, String place, String words, String more, String href) {}

  private final DriveCheck check;
  private final String car;
  private final CarBook book;
  private final Map<String, TravelWords> words = new LinkedHashMap<>();
  private final Set<String> curesTold = new HashSet<>();

  private CheckWords(CarBook book, DriveCheck check) {
    this.check = check;
    this.car = book.car().orElse("");
    this.book = book;
    check
        .corners()
        .forEach(c -> words.put(c.card().corner(), new TravelWords(c.card(), c.travel())));
  }

  /** Of a check of this book, in its order. */
  public static List<Line> of(CarBook book, DriveCheck check) {
    CheckWords these = new CheckWords(book, check);
    return check.things().stream().map(these::line).toList();
  }

  /** "meets your rules", or how many things first. */
  public static String outcome(DriveCheck check) {
    return check.meetsRules()
        ? "meets your rules"
        : Counted.of(check.things().size(), "thing") + " first";
  }

  private Line line(ThingFirst thing) {
    Checked at = thing.corner() == null ? null : check.corner(thing.corner()).orElse(null);
    if (at != null) {
      return line(thing, at, words.get(thing.corner()));
    }
    if (thing instanceof ThingFirst.ToDo toDo) {
      return toDo(toDo, "the whole car");
    }
    return new Line(
        thing,
        "the whole car",
        "No corner of it is in the book.",
        "",
        "/cars/" + car + "/corners/new");
  }

  private Line line(ThingFirst thing, Checked at, TravelWords say) {
    if (thing instanceof ThingFirst.OfLimit of) {
      return limit(of, at, say);
    }
    if (thing instanceof ThingFirst.NotReadFarEnough of) {
      return line(
          thing,
          at,
          say.unreadReach(of.reach()),
          "",
          NeedAddress.of(corner(at), say, of.reach().needs()));
    }
    if (thing instanceof ThingFirst.OfMidTravel of) {
      return line(thing, at, say.midTravel(of.mid()), "", curve(at, of.mid().point()));
    }
    if (thing instanceof ThingFirst.OffTarget off) {
      return offTarget(off, at);
    }
    if (thing instanceof ThingFirst.StopsDisagree) {
      return line(
          thing,
          at,
          "Full bump as read and as worked out from touch and crush disagree.",
          "",
          round(at, say, new ToRead(HeightName.FULL_BUMP, null, Steering.STRAIGHT, null, null)));
    }
    if (thing instanceof ThingFirst.Missing missing) {
      return line(
          thing,
          at,
          "Needs " + named(missing.needs(), at, say) + ".",
          "",
          NeedAddress.of(corner(at), say, missing.needs()));
    }
    if (thing instanceof ThingFirst.Again again) {
      return again(again, at, say);
    }
    if (thing instanceof ThingFirst.InDoubt in) {
      return line(
          thing,
          at,
          Capital.of(in.doubted().kind() + ": " + in.doubted().words()),
          in.doubted().doubt(),
          "/entries/" + in.doubted().key());
    }
    if (thing instanceof ThingFirst.NotMeasured not) {
      return not.round()
          ? line(
              thing,
              at,
              "A round was begun; no height is in it yet.",
              "",
              "/corners/" + corner(at) + "/rounds")
          : line(
              thing,
              at,
              "No round yet: nothing was ever measured here.",
              "",
              "/corners/" + corner(at) + "/rounds/new");
    }
    return ofLife(thing, at, say);
  }

  private static String corner(Checked at) {
    return at.card().corner();
  }

  private static Line line(
      ThingFirst thing, Checked at, String sentence, String more, String href) {
    return new Line(thing, at.card().place().words(), sentence, more, href);
  }

  private static String curve(Checked at, WatchPoint point) {
    return "/corners/" + corner(at) + "/curves?of=p-" + point.point();
  }

  private static String round(Checked at, TravelWords say, ToRead toRead) {
    return NeedAddress.of(corner(at), say, List.of(new Need(toRead, null, null, List.of(), null)));
  }

  private static Line offTarget(ThingFirst.OffTarget off, Checked at) {
    Content.Target target = off.target().target();
    String figure = Capital.of(target.figure().words());
    String words =
        switch (off.why()) {
          case SHORT -> figure + " misses your target.";
          case CANT_TELL -> figure + " is too close to your target to tell.";
          case STALE -> figure + " has to be measured again.";
          case NOT_CONFIRMED -> figure + " was moved and put back, and not measured since.";
          default -> figure + " has a target and is not known.";
        };
    return line(
        off,
        at,
        words,
        "Your target: " + target.inWords() + ".",
        "/corners/" + corner(at) + "/alignment");
  }

  private Line limit(ThingFirst.OfLimit of, Checked at, TravelWords say) {
    EndFindings end = at.travel().at(of.end());
    boolean worst = of.why() == Why.SHORT && curesTold.add(corner(at) + of.end());
    String cure = worst ? say.cure(end) : "";
    return line(of, at, say.finding(end, of.limit()), cure, cureOf(of, end, at, say));
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

  private static Line again(ThingFirst.Again again, Checked at, TravelWords say) {
    String what =
        named(
            again.again().stream()
                .map(a -> new Need(a.toRead(), null, null, List.of(), null))
                .toList(),
            at,
            say);
    String because =
        again.again().stream()
            .flatMap(a -> a.because().stream())
            .distinct()
            .sorted(Comparator.comparingLong(Change::n).reversed())
            .map(Change::words)
            .distinct()
            .limit(2)
            .collect(Collectors.joining("; "));
    String words =
        again.why() == Why.STALE
            ? "Measure again: " + what + "."
            : "Set back, check it: " + what + ".";
    return line(
        again,
        at,
        words,
        because.isEmpty() ? "" : "Since: " + because + ".",
        "/corners/" + corner(at) + "/rounds/new?again=1");
  }

  /** What is no gap in its own words; gaps counted, and named by their places. */
  private static String named(List<Need> needs, Checked at, TravelWords say) {
    List<String> words = new ArrayList<>();
    Set<String> places = new LinkedHashSet<>();
    int gaps = 0;
    for (Need need : needs) {
      if (need.toRead() == null || need.toRead().quantity() != Quantity.WATCH_POINT) {
        words.add(say.need(need));
      } else {
        gaps++;
        String point = need.toRead().point();
        places.add(at.card().watchPoint(point).map(WatchPoint::name).orElse(point));
      }
    }
    if (gaps == 1) {
      needs.stream()
          .filter(n -> n.toRead() != null && n.toRead().quantity() == Quantity.WATCH_POINT)
          .forEach(n -> words.add(say.need(n)));
    } else if (gaps > 1) {
      words.add(0, gaps + " gaps or angles (" + some(List.copyOf(places)) + ")");
    }
    return some(words);
  }

  private static String some(List<String> words) {
    int told = words.size() == MOST_NAMED + 1 ? MOST_NAMED + 1 : MOST_NAMED;
    String first = words.stream().limit(told).collect(Collectors.joining(", "));
    return words.size() <= told ? first : first + " and " + (words.size() - told) + " more";
  }

  // --- what drives did and hands have to do

  private Line ofLife(ThingFirst thing, Checked at, TravelWords say) {
    String corner = "/corners/" + corner(at);
    if (thing instanceof ThingFirst.Opened opened) {
      SeenFastener seen = opened.fastener();
      String name = Capital.of(seen.adjuster().name()) + ", " + seen.adjuster().kind().fastener();
      return line(
          thing,
          at,
          name + ": " + seen.state().words() + ".",
          seen.torque() == null ? "" : "Torque " + seen.torque() + ".",
          corner + "/fasteners/" + seen.adjuster().adjuster());
    }
    if (thing instanceof ThingFirst.ReCheckDue due) {
      return line(
          thing, at, notLookedAt(due), "", "/cars/" + car + "/re-check?corner=" + corner(at));
    }
    if (thing instanceof ThingFirst.ToDo toDo) {
      return toDo(toDo, at.card().place().words());
    }
    if (thing instanceof ThingFirst.DeeperThanAllowed deeper) {
      return line(
          thing, at, deeper(deeper, say), "", adjuster(at.card(), AdjusterKind.BUMP_STOP_SPACER));
    }
    if (thing instanceof ThingFirst.NearerThanAllowed nearer) {
      return line(thing, at, nearer(nearer.clay(), say), "", corner + "/adjustments");
    }
    ThingFirst.StretchUsed used = (ThingFirst.StretchUsed) thing;
    return line(
        used,
        at,
        used.between() == null
            ? "The limit strap has taken up all the stretch that is held back for it."
            : "Between drives the limit strap was longer than the stretch held back for it allows.",
        used.between() == null
            ? "A new strap, or more held back."
            : "Read it on the strap in a round.",
        used.between() == null
            ? adjuster(at.card(), AdjusterKind.LIMIT_STRAP)
            : corner + "/rounds/new");
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
  static String due(ThingFirst.ReCheckDue due) {
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

  private Line toDo(ThingFirst.ToDo toDo, String place) {
    String words = Capital.of(toDo.toDo().toDo().words());
    return new Line(toDo, place, words, "", "/cars/" + car + "/to-do");
  }
}
