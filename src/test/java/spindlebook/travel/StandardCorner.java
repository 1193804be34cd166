package spindlebook.travel;

import spindlebook.fold.Card;

/**
 * A whole corner whose sums can be done by hand. The arm is watched against the frame, at least 6
 * mm; where nothing else is said:
 *
 * <pre>
 *   strap off 150, on the strap S = 254 (10.00 in), ride 400, full bump B = 500, beyond it 600 mm
 *   strap length λ = 635 − z/2: 508 on the strap, ratio 1/2; as new 508; share 2.5 %
 *   so e at the strap = 12.7, at the wheel 25.4 mm (1.00 in)
 *   shock length = 700 − z/2, open 700, closed 300, reserves 12.7: never the first to act
 *   ground R − d − g = 1000 − 100 − 50 = 850 mm; impact r = 6.35 mm
 * </pre>
 */
public final class StandardCorner {
  public static final double INCH = 25.4;

  private StandardCorner() {}

  /** Read without error, the arm's limit at 8.00 in. */
  public static Card worked() {
    return limit(bench(CornerBench.exact()), 8 * INCH).card();
  }

  /** Everything but the gaps of the arm. */
  public static CornerBench bench(CornerBench bench) {
    return stops(bench).height("beyond", "in-between", 600).length("shock-length", "beyond", 400);
  }

  public static CornerBench stops(CornerBench bench) {
    return chosen(bench)
        .height("off", "strap-off", 150)
        .height("strap", "on-the-strap", 254)
        .height("ride", "ride", 400)
        .height("bump", "full-bump", 500)
        .length("strap-length", "strap", 508)
        .length("strap-length", "ride", 435)
        .length("strap-length", "bump", 385)
        .length("shock-length", "off", 625)
        .length("shock-length", "strap", 573)
        .length("shock-length", "bump", 450);
  }

  public static CornerBench chosen(CornerBench bench) {
    return bench
        .watch("arm", "lower-arm-frame", "{\"least\":\"6 mm\"}")
        .given("new-strap-length", 508)
        .stretch(2.5)
        .given("shock-open", 700)
        .given("shock-closed", 300)
        .held("shock-open-reserve", 12.7)
        .held("shock-closed-reserve", 12.7)
        .given("tyre-squashed-radius", 1000)
        .given("mark-to-lowest-frame", 100)
        .held("ground-clearance", 50)
        .held("impact-reserve", 6.35);
  }

  /** The arm meets its rule exactly at {@code limitMm}, by a reading there. */
  public static CornerBench limit(CornerBench bench, double limitMm) {
    return bench
        .height("limit", "in-between", limitMm)
        .gap("arm", "off", 2)
        .gap("arm", "limit", 6)
        .gap("arm", "beyond", 40);
  }

  public static Limit arm(EndFindings end) {
    return end.limits().stream()
        .filter(l -> l.kind() == Limit.Kind.WATCH_POINT)
        .findFirst()
        .orElseThrow();
  }

  /** Read on the strap again after it was set. */
  public static EndFindings again(CornerBench bench) {
    return bench
        .height("strap2", "on-the-strap", 254)
        .length("strap-length", "strap2", 508)
        .travel()
        .droop();
  }

  public static String holes(String step, String first) {
    String known = step == null ? "" : "\"step\":\"" + step + "\",";
    return "{\"adjuster\":\"strap\",\"kind\":\"limit-strap\",\"unit\":\"holes\","
        + known
        + "\"moreShortens\":true,\"first\":\""
        + first
        + "\"}";
  }
}
