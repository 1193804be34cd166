package spindlebook.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import spindlebook.fold.CarBook;
import spindlebook.fold.HandBooks;

/**
 * A solid rear axle on the bench, whose rounds are of its left end. Both marks lie 1000 mm over the
 * floor; tape and shanks have no steps. Its strap and stop hold nothing back unless a test says so:
 *
 * <pre>
 *   both ends: on the strap S = 200, ride 300, full bump B = 400; impact r = 0, stretch 0 %
 * </pre>
 */
public final class AxleBench {
  private final List<String> lines = new ArrayList<>();
  private int next;

  public AxleBench() {
    line(
        "car",
        "car",
        """
        {"details":{"name":"Dune"},"tools":[\
        {"tool":"tape","name":"tape","use":"tape","graduation":"0 mm","placingHalfWidth":"0 mm"},\
        {"tool":"drills","name":"shanks","use":"gaps","graduation":"0 mm","placingHalfWidth":"0 mm"}]}\
        """);
    corner("lr", "left-rear");
    corner("rr", "right-rear");
    round("r1", "lr");
  }

  private void corner(String key, String place) {
    line(
        key,
        "corner",
        """
        {"car":"car","place":"%s","layout":"solid-axle-end",\
        "watchPoints":[{"point":"tube","place":"axle-frame","keep":{"least":"6 mm"}}],\
        "adjusters":[{"adjuster":"strap","kind":"limit-strap","unit":"words","moreShortens":false}],\
        "heldBack":[{"allowance":"strap-stretch","percent":0.0},\
        {"allowance":"impact-reserve","length":"0 mm"}]}\
        """
            .formatted(place));
  }

  AxleBench round(String key, String corner) {
    return line(
        key,
        "round",
        """
        {"corner":"%s","springIn":false,"bumpStopIn":false,"wheelOn":false,"onTyres":false,\
        "steeringLinked":true,"tape":"tape","gapTool":"drills"}\
        """
            .formatted(corner));
  }

  AxleBench line(String key, String kind, String body) {
    lines.add("{\"key\":\"%s\",\"kind\":\"%s\",\"body\":%s}".formatted(key, kind, body));
    return this;
  }

  /** Both spindles and both marks, at left and right wheel positions. */
  public AxleBench height(String key, String name, String pairing, double leftMm, double rightMm) {
    return line(
        key,
        "height",
        """
        {"round":"r1","name":"%s","spindle":"%s","mark":"1000 mm","pairing":"%s",\
        "otherEnd":{"spindle":"%s","mark":"1000 mm"}}\
        """
            .formatted(name, mm(1000 + leftMm), pairing, mm(1000 + rightMm)));
  }

  public AxleBench gap(String height, double gapMm) {
    return line(
        "g" + next++,
        "reading",
        """
        {"height":"%s","steering":"straight","quantity":"watch-point","point":"tube",\
        "result":"number","length":"%s"}\
        """
            .formatted(height, mm(gapMm)));
  }

  /** Both ends on the strap, at ride and on the stop together. */
  public AxleBench level() {
    return height("strap", "on-the-strap", "both-together", 200, 200)
        .height("ride", "ride", "both-together", 300, 300)
        .height("bump", "full-bump", "both-together", 400, 400);
  }

  /** The left end down and up, the right the other way; the stops where they are. */
  public AxleBench crossed(double strapMm, double bumpMm) {
    return height("x-strap", "on-the-strap", "crossed", strapMm, 390)
        .height("x-bump", "full-bump", "crossed", bumpMm, 210);
  }

  /** Shock and ground of the left end so far out, 90 and 1500, that neither comes first. */
  public AxleBench roomy() {
    String[][] given = {
      {"shock-open", "470 mm"},
      {"shock-closed", "100 mm"},
      {"tyre-squashed-radius", "2000 mm"},
      {"mark-to-lowest-frame", "500 mm"}
    };
    for (String[] g : given) {
      line(
          g[0],
          "definition",
          "{\"corner\":\"lr\",\"given\":{\"dimension\":\"%s\",\"length\":\"%s\"}}"
              .formatted((Object[]) g));
    }
    for (String allowance :
        new String[] {"shock-open-reserve", "shock-closed-reserve", "ground-clearance"}) {
      line(
          allowance,
          "definition",
          "{\"corner\":\"lr\",\"heldBack\":{\"allowance\":\"%s\",\"length\":\"0 mm\"}}"
              .formatted(allowance));
    }
    return this;
  }

  public AxleBench strapLength(String height, double mm) {
    return line(
        "l-" + height,
        "reading",
        """
        {"height":"%s","steering":"straight","quantity":"strap-length","result":"number",\
        "length":"%s"}\
        """
            .formatted(height, mm(mm)));
  }

  /** The left strap set by its length, 508 at first. */
  public AxleBench strapByLength() {
    return line(
        "by-length",
        "definition",
        """
        {"corner":"lr","adjuster":{"adjuster":"strap","kind":"limit-strap","unit":"length",\
        "moreShortens":false,"first":"508 mm"}}\
        """);
  }

  /** 460 long at 100, a millimetre less for each of wheel. */
  public AxleBench shock(String height, double positionMm) {
    return line(
        "s-" + height,
        "reading",
        """
        {"height":"%s","steering":"straight","quantity":"shock-length","result":"number",\
        "length":"%s"}\
        """
            .formatted(height, mm(560 - positionMm)));
  }

  public CarBook book() {
    return HandBooks.of(lines);
  }

  public TravelFindings travel(String corner) {
    return CornerTravel.of(book().card(corner));
  }

  static String mm(double mm) {
    return String.format(Locale.ROOT, "%.4f mm", mm);
  }
}
