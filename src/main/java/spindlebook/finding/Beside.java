package spindlebook.finding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import spindlebook.finding.Finding.Group;
import spindlebook.fold.Card;
import spindlebook.measured.AlignedFinding;
import spindlebook.measured.AlignedPair;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * One finding held against the same of another card: the same, differs beyond its ±, decided
 * otherwise, or not compared and why.
 *
 * <p>What the two share, such as one tape's own error, cancels in a difference: of two cars nothing
 * does, a tape of the same name may be another tape; what was given or is held back is each
 * corner's own. Places are told from a frame mark, and held against each other at one mark only.
 *
 * @param one null where the first card has no such thing
 * @param apart the second less the first; null where there are no two numbers, or they are one
 * @param words what it came to; why it is not compared
 */
public record Beside(Finding one, Finding other, Figure apart, Found found, String words) {
  /** A hundredth of what the finest steel rule shows: less is the arithmetic of a machine. */
  private static final double SAME_MM = 1e-3;

  private static final double SAME_RAD = 1e-6;

  private static final String DIFFERS = "differs";

  /** What comparing came to. */
  public enum Found {
    DIFFERS("≠"),
    SAME("="),
    NOT_COMPARED("–");

    private final String sign;

    Found(String sign) {
      this.sign = sign;
    }

    /** Beside the word, so that it is told without colour. */
    public String sign() {
      return sign;
    }
  }

  /** The newer where both are there. */
  public Finding either() {
    return other == null ? one : other;
  }

  /**
   * What of two cards is one error, and one thing.
   *
   * @param car a tool of one name is one tool
   * @param corner one frame mark, one set of what is given
   * @param wheel not the two of one axle, which have some things in common
   */
  private record Common(boolean car, boolean corner, boolean wheel) {
    boolean error(Source source) {
      return source.kind() == SourceKind.ALLOWANCE ? corner : car;
    }
  }

  /**
   * Of lists of one corner whose figures share nothing, such as copies that were kept with U alone.
   */
  public static List<Beside> kept(List<Finding> one, List<Finding> other) {
    return of(one, other, "then", "now", new Common(false, true, true));
  }

  /** Whether anything of it is another, also within its ±, or how sure it is. */
  public boolean changed() {
    return one == null
        || other == null
        || one.verdict() != other.verdict()
        || one.stands() != other.stands()
        || !Objects.equals(one.bound(), other.bound())
        || !same(one, other)
        || !Objects.equals(one.value(), other.value())
        || (one.figure() != null && Math.abs(one.figure().U() - other.figure().U()) > step(one));
  }

  /** Whether what was decided of it is another. */
  public boolean turned() {
    return one != null && other != null && turned(one, other);
  }

  private static boolean turned(Finding a, Finding b) {
    return a.verdict() != null && b.verdict() != null && a.verdict() != b.verdict();
  }

  /**
   * All that one of them has at least, in one order; of the two wheels of one axle not what is the
   * axle's.
   *
   * @param headOne what the first is called, to say which of them lacks something
   */
  public static List<Beside> of(Findings one, Findings other, String headOne, String headOther) {
    Card a = one.card();
    Card b = other.card();
    Common common =
        new Common(a.car().equals(b.car()), a.corner().equals(b.corner()), a.place() == b.place());
    return of(one.all(), other.all(), headOne, headOther, common);
  }

  private static List<Beside> of(
      List<Finding> one, List<Finding> other, String headOne, String headOther, Common common) {
    Map<String, Finding> first = byId(one);
    Map<String, Finding> second = byId(other);
    Map<String, Finding> all = new LinkedHashMap<>(first);
    second.forEach(all::putIfAbsent);
    List<Beside> beside = new ArrayList<>();
    for (String id : all.keySet()) {
      Finding a = first.get(id);
      Finding b = second.get(id);
      if ((told(a) || told(b))
          && (common.wheel() || !all.get(id).ofAxle())
          && (common.corner() || !all.get(id).ofMark())) {
        beside.add(held(a, b, headOne, headOther, common));
      }
    }
    beside.sort(Comparator.comparing(b -> b.either().group()));
    return beside;
  }

  private static Map<String, Finding> byId(List<Finding> findings) {
    Map<String, Finding> byId = new LinkedHashMap<>();
    findings.forEach(f -> byId.putIfAbsent(f.group() + " " + f.id(), f));
    return byId;
  }

  private static boolean told(Finding finding) {
    return finding != null && (finding.figure() != null || !finding.number());
  }

  private static boolean exact(Finding finding) {
    return finding.figure() != null && finding.unknown() == null && finding.bound() == null;
  }

  private static Difference difference(Finding a, Finding b, Common common) {
    return a.of() instanceof AlignedFinding one && b.of() instanceof AlignedFinding other
        ? new AlignedPair(one, other).difference(common.car()).orElseThrow()
        : Difference.of(a.figure(), b.figure(), common::error);
  }

  private static Beside held(
      Finding a, Finding b, String headOne, String headOther, Common common) {
    String unknown = lacks(unknown(a, common), unknown(b, common), headOne, headOther);
    if (unknown != null) {
      return new Beside(a, b, null, Found.NOT_COMPARED, unknown);
    }
    if (a == null || b == null) {
      return new Beside(a, b, null, Found.DIFFERS, DIFFERS);
    }
    // The second less the first: what became of it.
    Difference difference = exact(a) && exact(b) ? difference(a, b, common) : null;
    Figure apart = difference == null || same(a, b) ? null : difference.apart().times(-1);
    if (turned(a, b)) {
      return new Beside(a, b, apart, Found.DIFFERS, "decided otherwise");
    }
    if (a.bound() != null && b.bound() != null && same(a, b)) {
      return new Beside(a, b, null, Found.SAME, "the same, as far as was read");
    }
    String bound = lacks(a.bound(), b.bound(), headOne, headOther);
    if (bound != null) {
      return new Beside(a, b, null, Found.NOT_COMPARED, bound);
    }
    if (same(a, b)) {
      return new Beside(a, b, null, Found.SAME, "the same");
    }
    return difference == null || difference.beyond()
        ? new Beside(a, b, apart, Found.DIFFERS, differs(a, b))
        : new Beside(a, b, apart, Found.SAME, "within ±");
  }

  private static String differs(Finding a, Finding b) {
    if (a.value() instanceof Finding.SetTo one
        && b.value() instanceof Finding.SetTo other
        && one.unit() != other.unit()) {
      return "differs, counted another way";
    }
    return a.group() == Group.RULES_END ? "another one rules" : DIFFERS;
  }

  /** Of one corner what is gone or new is a difference; another has not said it yet. */
  private static String unknown(Finding finding, Common common) {
    return finding != null ? finding.unknown() : common.corner() ? null : "not there";
  }

  private static String lacks(String one, String other, String headOne, String headOther) {
    if (one == null && other == null) {
      return null;
    }
    String head = one == null ? ", " + headOther : other == null ? ", " + headOne : "";
    return "not compared: " + (one == null ? other : one) + head;
  }

  private static boolean same(Finding a, Finding b) {
    if (a.figure() == null || b.figure() == null) {
      return Objects.equals(a.figure(), b.figure()) && Objects.equals(a.value(), b.value());
    }
    return Math.abs(a.figure().value() - b.figure().value()) <= step(a);
  }

  private static double step(Finding of) {
    return of.angle() ? SAME_RAD : SAME_MM;
  }
}
