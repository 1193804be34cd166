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
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.CureAddress;
import spindlebook.card.NeedAddress;
import spindlebook.card.TravelWords;
import spindlebook.corner.CarBook;
import spindlebook.corner.Change;
import spindlebook.corner.Content;
import spindlebook.corner.Content.ToRead;
import spindlebook.corner.HeightName;
import spindlebook.corner.Quantity;
import spindlebook.corner.Steering;
import spindlebook.corner.WatchPoint;
import spindlebook.travel.Cure;
import spindlebook.travel.DriveCheck;
import spindlebook.travel.DriveCheck.Checked;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.travel.NextReading;
import spindlebook.travel.ThingFirst;
import spindlebook.travel.ThingFirst.Why;

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
  private final LifeWords life;
  private final Map<String, TravelWords> words = new LinkedHashMap<>();
  private final Set<String> curesTold = new HashSet<>();

  private CheckWords(CarBook book, DriveCheck check) {
    this.check = check;
    this.car = book.car().orElse("");
    this.life = new LifeWords(book);
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
      return life.line(toDo, "the whole car");
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
    return life.line(thing, at, say);
  }

  static String corner(Checked at) {
    return at.card().corner();
  }

  static Line line(ThingFirst thing, Checked at, String sentence, String more, String href) {
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
            ? "To be read again: " + what + "."
            : "Put back, and not confirmed by a reading: " + what + ".";
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
}
