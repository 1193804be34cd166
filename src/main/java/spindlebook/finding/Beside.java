package spindlebook.finding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import spindlebook.alignment.AlignedPair;
import spindlebook.finding.Finding.Group;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Figure;
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

  /** With the first less the second. */
  public Beside turned() {
    return new Beside(one, other, apart == null ? null : apart.times(-1), found, words);
  }

  /** The newer where both are there. */
  public Finding either() {
    return other == null ? one : other;
  }

  /**
   * All that one of them has at least, in one order; of the two wheels of one axle not what is the
   * axle's.
   *
   * @param headOne what the first is called, to say which of them lacks something
   */
  public static List<Beside> of(Findings one, Findings other, String headOne, String headOther) {
    Map<String, Finding> first = byId(one);
    Map<String, Finding> second = byId(other);
    Map<String, Finding> all = new LinkedHashMap<>(first);
    second.forEach(all::putIfAbsent);
    boolean twoWheels = one.card().place() != other.card().place();
    boolean oneMark = one.card().corner().equals(other.card().corner());
    List<Beside> beside = new ArrayList<>();
    for (String id : all.keySet()) {
      Finding a = first.get(id);
      Finding b = second.get(id);
      if ((told(a) || told(b))
          && !(twoWheels && all.get(id).ofAxle())
          && (oneMark || !all.get(id).isPlace())) {
        Difference apart = numbers(a, b) ? difference(one, a, other, b) : null;
        beside.add(held(a, b, apart, headOne, headOther));
      }
    }
    beside.sort(Comparator.comparing(b -> b.either().group()));
    return beside;
  }

  private static Map<String, Finding> byId(Findings findings) {
    Map<String, Finding> byId = new LinkedHashMap<>();
    findings.all().forEach(f -> byId.putIfAbsent(f.group() + " " + f.id(), f));
    return byId;
  }

  private static boolean told(Finding finding) {
    return finding != null && (finding.figure() != null || !finding.number());
  }

  private static boolean numbers(Finding a, Finding b) {
    return a != null && b != null && exact(a) && exact(b);
  }

  private static boolean exact(Finding finding) {
    return finding.figure() != null && finding.unknown() == null && finding.bound() == null;
  }

  private static Difference difference(Findings one, Finding a, Findings other, Finding b) {
    boolean car = one.card().car().equals(other.card().car());
    boolean corner = one.card().corner().equals(other.card().corner());
    return a.group() == Group.ALIGNMENT
        ? new AlignedPair(Findings.aligned(a), Findings.aligned(b)).difference(car).orElseThrow()
        : Difference.of(
            a.figure(), b.figure(), s -> s.kind() == SourceKind.ALLOWANCE ? corner : car);
  }

  private static Beside held(
      Finding a, Finding b, Difference difference, String headOne, String headOther) {
    if (a == null || b == null) {
      return new Beside(a, b, null, Found.DIFFERS, DIFFERS);
    }
    String unknown = lacks(a.unknown(), b.unknown(), headOne, headOther);
    if (unknown != null) {
      return new Beside(a, b, null, Found.NOT_COMPARED, unknown);
    }
    // The second less the first: what became of it.
    Figure apart = difference == null || same(a, b) ? null : difference.apart().times(-1);
    if (a.verdict() != null && b.verdict() != null && a.verdict() != b.verdict()) {
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
    return Math.abs(a.figure().value() - b.figure().value()) <= (a.angle() ? SAME_RAD : SAME_MM);
  }
}
