package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.entry.Joint;
import spindlebook.linkage.CornerText;
import spindlebook.linkage.Joints;
import spindlebook.linkage.Vec;

/** The joints of a corner, laid out joint by joint by the pages; the corner is invented. */
class LinkagePagesTest {
  private static final String[][] JOINTS = {
    {"lf", "10 7/8", "32 3/8", "9 15/16"},
    {"lr", "9 5/8", "48 1/16", "10 11/16"},
    {"l", "26 5/16", "39 3/4", "8 3/4"},
    {"uf", "10", "33 7/8", "21 5/8"},
    {"ur", "8 9/16", "47 3/8", "21 1/16"},
    {"u", "24 9/16", "40 13/16", "20 9/16"},
    {"ti", "10 1/4", "45 9/16", "13"},
    {"to", "24 7/8", "45 1/8", "11 3/4"},
    {"w", "30 3/4", "40", "14"}
  };

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String linkage;

  @BeforeEach
  void measure() {
    shop = new Shop(folder);
    marmot = new Marmot(shop).prepared().measured();
    linkage = "/corners/" + marmot.left + "/linkage";
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private Page layOut(String... joint) {
    String address = linkage + "/" + joint[0];
    return shop.get(address)
        .is(200)
        .form(address)
        .with("out", joint[1])
        .with("back", joint[2])
        .with("up", joint[3])
        .keep();
  }

  private void layOutAll() {
    for (String[] joint : JOINTS) {
      layOut(joint);
    }
  }

  @Test
  void the_joints_go_in_one_by_one_and_close() {
    assertTrue(shop.get(linkage).is(200).text().contains("9 joints of 9 missing"));
    for (int i = 0; i < JOINTS.length; i++) {
      String next = i + 1 < JOINTS.length ? JOINTS[i + 1][0] : "su";
      assertEquals(linkage + "/" + next, layOut(JOINTS[i]).location());
    }
    String page = shop.get(linkage).is(200).text();
    assertTrue(page.contains("joints fit together"), page);
    assertTrue(page.contains("24 7/8 out, 45 1/8 back, 11 3/4 in up"), page);
    assertTrue(shop.get(linkage + "/to").text().contains("Where the wheel stands"));
    // A shock has two mounts: the other one is asked for, not the same again.
    assertEquals(linkage + "/sl", layOut("su", "18", "40", "38").location());
  }

  @Test
  void what_cannot_close_is_said_with_the_joint_to_look_at() {
    layOutAll();
    layOut("u", "26 5/16", "39 3/4", "8 3/4");
    Page page = shop.get(linkage).is(200);
    assertTrue(page.text().contains("joints do not fit together"), page.text());
    assertTrue(page.text().contains("L and U are the same point."), page.text());
    assertTrue(page.html().contains(linkage + "/u\">"), page.html());
  }

  @Test
  void a_length_that_is_none_is_asked_back() {
    String address = linkage + "/lf";
    Page again =
        shop.get(address).form(address).with("out", "10 x").with("back", "1").with("up", "").send();
    assertEquals(422, again.status());
    assertTrue(again.text().contains("Type a length, such as 12 3/8."), again.text());
  }

  @Test
  void turned_rod_ends_ask_for_what_they_moved_and_nothing_else() {
    layOutAll();
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    String page = shop.get(linkage).is(200).text();
    assertTrue(page.contains("3 joints of 9 missing"), page);
    assertTrue(page.contains("Lay out: Upper ball joint"), page);
    marmot.adjust(marmot.left, "limit-strap", "17");
    assertEquals(page, shop.get(linkage).is(200).text());
  }

  @Test
  void one_tap_lays_the_same_joints_out_on_the_other_side() {
    layOutAll();
    Page kept = shop.get(linkage).form(linkage + "/mirror").keep();
    String other = "/corners/" + marmot.right + "/linkage";
    assertEquals(other + "?saved=yes", kept.location());
    String page = shop.get(other).is(200).text();
    assertTrue(page.contains("joints fit together"), page);
    assertTrue(page.contains("24 7/8 out, 45 1/8 back, 11 3/4 in up"), page);
  }

  /** It sent to a place that no page has. */
  @Test
  void joints_of_no_height_name_the_part_of_the_form_that_asks_for_it() {
    for (String[] joint : JOINTS) {
      String address = linkage + "/" + joint[0];
      Form form = shop.get(address).is(200).form(address);
      form.with("out", joint[1]).with("back", joint[2]).with("up", joint[3]).with("at", "").keep();
    }
    String said = shop.get(linkage + "/agree").is(200).text();
    Matcher named = Pattern.compile("“(.*?)”").matcher(said);
    assertTrue(named.find(), said);
    assertTrue(shop.get(linkage + "/lf").text().contains(named.group(1)), said);
  }

  @Test
  void the_demo_names_the_camber_typed_without_its_minus() {
    openDemo();
    Page agree = shop.get(linkage + "/agree").is(200);
    String text = agree.text();
    assertTrue(
        text.contains(
            "Probably wrong: Camber, in between, above ride, joints: read +1.0°, all the rest says"
                + " −1.0"),
        text);
    assertTrue(text.contains("Was a minus left out?"), text);
    assertTrue(text.contains("30 readings agree with the joints"), text);
    assertTrue(text.contains("so is the other: L forward with U forward"), text);
    assertTrue(agree.html().contains("href=\"/heights/lf-link-h?steering=straight\">Measure it"));
    String tried = shop.get(linkage + "/try?joint=uf&up=1%2F2&camber=-1&stop=-7").is(200).text();
    assertTrue(tried.contains("Toe of this wheel today +0.12° +0.20°"), tried);
    assertTrue(tried.contains("For the wanted camber and caster"), tried);
    assertTrue(tried.contains("Strap, mount to mount"), tried);
    assertTrue(tried.contains("Outer end up, least over the travel"), tried);
    assertEquals(422, shop.get(linkage + "/try?joint=q").status());
    for (String half : List.of("rod=tie-rod", "longer=1%2F8")) {
      String asked = shop.get(linkage + "/try?" + half).is(422).text();
      assertTrue(asked.contains("Say which rod end is turned, and by how much the rod"), asked);
    }
    String height = shop.get("/heights/lf-link-h?steering=straight").is(200).text();
    assertTrue(height.contains("joints say −1.0°"), height);
    assertTrue(height.contains("joints say 19 9/16 in"), height);
    String moves = shop.get(linkage + "/moves").is(200).text();
    assertTrue(moves.contains("Lower uniball: 30.8° ± 1.6 clear"), moves);
    assertTrue(moves.contains("Most in bump, left lock. Its hardware allows 38°"), moves);
    assertTrue(moves.contains("Needs what its hardware allows: Tie rod, inner end"), moves);
    String bump = shop.get("/corners/marmot-lf/curves?of=toe").is(200).text();
    assertTrue(bump.contains("the outer end wants to lie 1/16 in ± 1/32 lower"), bump);
    String csv = shop.get(linkage + "/table").is(200).html();
    assertTrue(csv.startsWith("dz,rack,feasible,L_x"), csv);
    assertEquals(1 + 3 * 41, csv.lines().count());
  }

  @Test
  void the_joints_go_out_as_a_file_and_come_back_from_one() {
    layOutAll();
    layOut("bolt-l", "0", "0", "1");
    layOut("house-l", "-1/8", "0", "1");
    String file = shop.get(linkage + "/joints").is(200).html();
    CornerText out = CornerText.read(file);
    assertEquals(30.75 * 25.4, out.joints().get(Joint.W).y(), 1e-9);
    assertEquals((40 - 45.125) * 25.4, out.joints().get(Joint.TO).x(), 1e-9);
    int entries = shop.get("/book").text().split("linkage|ball joint", -1).length;
    String before = shop.get(linkage).text();
    Form form = shop.get(linkage + "/file").is(200).form(linkage + "/file");
    assertEquals(linkage + "?saved=yes", form.with("joints", file).keep().location());
    assertEquals(before, shop.get(linkage).text());
    assertEquals(entries, shop.get("/book").text().split("linkage|ball joint", -1).length);

    // One joint an inch higher: one entry; the file is then the same again.
    Vec u = out.joints().get(Joint.U);
    String higher =
        CornerText.write(out.joints().with(Joint.U, new Vec(u.x(), u.y(), u.z() + 25.4)));
    shop.get(linkage + "/file").form(linkage + "/file").with("joints", higher).keep();
    String page = shop.get(linkage).text();
    assertTrue(page.contains("24.5625 out, 40.8125 back, 21.5625 in up"), page);
    assertTrue(page.contains("24 7/8 out, 45 1/8 back, 11 3/4 in up"), page);
    Joints again = CornerText.read(shop.get(linkage + "/joints").html()).joints();
    again.at().forEach((j, p) -> assertEquals(0, p.distance(at(higher, j)), 0.01, j.key));

    // Onto a corner that has none, and a file that is none.
    Page refused =
        shop.get(linkage + "/file")
            .form(linkage + "/file")
            .with("joints", "side,left\nLF,1,2\n")
            .send();
    assertEquals(422, refused.status());
    assertTrue(refused.text().contains("Line 2: LF needs numbers: 3, not 2."), refused.text());
    assertTrue(refused.html().contains("LF,1,2"), refused.html());
    String other = "/corners/" + marmot.right + "/linkage/file";
    Page wrongSide = shop.get(other).form(other).with("joints", file).send();
    assertEquals(422, wrongSide.status());
    String mirrored =
        file.replace("side,left", "side,right")
            .replaceAll("(?m)^(\\w+,[^,\r]+),", "$1,-")
            .replace(",--", ",");
    StringBuilder sent = new StringBuilder();
    shop.get(other).form(other).values().forEach((name, value) -> part(sent, name, value));
    part(sent, "file\"; filename=\"joints.csv", mirrored);
    String type = "multipart/form-data; boundary=cut-here";
    assertEquals(
        303,
        shop.browser
            .ask("POST", other, type, BodyPublishers.ofString(sent + "--cut-here--\r\n"))
            .status());
    assertTrue(
        shop.get("/corners/" + marmot.right + "/linkage").text().contains("joints fit together"));
  }

  @Test
  void what_was_read_at_a_lock_is_held_against_the_line_at_that_lock() {
    openDemo();
    String agree = linkage + "/agree?of=toe";
    assertFalse(shop.get(agree).is(200).html().contains("At which lock"));
    shop.get("/heights/lf-link-h?steering=full-left&all=1")
        .formWithId("q-toe")
        .with("v-q-toe", "-31°")
        .keep();
    String straight = shop.get(agree).is(200).html();
    assertTrue(straight.contains("href=\"?of=toe&amp;lock=full+left\">full left<"), straight);
    assertTrue(straight.contains("Toe: read, and as the joints make it"));
    Page left = shop.get(agree + "&lock=full+left").is(200);
    assertTrue(left.html().contains("lock=full+left\" aria-current=\"true\">"), left.html());
    assertTrue(left.text().contains("toe at full left, degrees"), left.text());
    assertTrue(left.html().contains(">1 reading. The figures"), left.html());
  }

  @Test
  void a_joint_that_rather_lies_elsewhere_is_one_tap_from_its_form() {
    openDemo();
    layOut("ti", "10 1/4", "45 9/16", "13 3/8");
    String agree = shop.get(linkage + "/agree").is(200).html();
    String told = agree.substring(agree.indexOf("What the readings tell of the joints"));
    assertTrue(told.contains("<a href=\"" + linkage + "/ti\">TI up</a>"), told);
  }

  @Test
  void the_spacer_for_a_wanted_bump_comes_from_its_gap_from_the_shock_or_says_what_it_needs() {
    openDemo();
    String byGap = shop.get(linkage + "/try?bump=5").is(200).text();
    assertTrue(byGap.contains("Spacer thicker by by the gap that was read 7/8 in ± 3/16"), byGap);
    assertTrue(byGap.contains("Spacer then today 1/4 in 1 1/8 in ± 3/16"), byGap);
    assertFalse(byGap.contains("The bump stop sits"), byGap);

    // The other corner's book: no gap to the pad was read, and it is solid where it was read.
    shop.close();
    shop = new Shop(folder.resolve("shock"));
    marmot = new Marmot(shop).prepared();
    linkage = "/corners/" + marmot.left + "/linkage";
    String round = marmot.startRound(marmot.left, Map.of());
    String ride = marmot.height(round, "ride", "21 in", "31.5 in");
    layOutAll();
    layOut("su", "14 3/16", "40", "33 5/16");
    layOut("sl", "19 11/16", "39 3/4", "13 1/8");
    String none = shop.get(linkage + "/try?bump=4").is(200).text();
    assertTrue(none.contains("A spacer needs where the bump stop is solid today"), none);
    marmot.height(round, "full-bump", "26.5 in", "31.5 in");
    String elsewhere = shop.get(linkage + "/try?bump=4").is(200).text();
    assertTrue(
        elsewhere.contains(
            "A spacer needs the gap to its pad at two heights, or a stop on the shock."),
        elsewhere);
    String stop = "/corners/" + marmot.left + "/spring/stops/new";
    shop.get(stop).form(stop).with("chart", "0 50, 1 200").with("ratio", "0.5").keep();
    String share = shop.get(linkage + "/try?bump=4").is(200).text();
    assertTrue(share.contains("thicker by by the stop's share of the wheel 3/4 in ±"), share);
    String shock = shop.get(linkage + "/try?bump=4&pad=shock").is(200).text();
    assertTrue(shock.contains("by the linkage, along the shock 7/8 in ± 1/8"), shock);
    assertTrue(
        shop.get(linkage + "/try?bump=6&pad=shock").text().contains("Spacer thinner by by the"));
    assertEquals(422, shop.get(linkage + "/try?bump=x").status());
  }

  @Test
  void hardware_that_allows_less_than_the_travel_asks_ends_it_on_the_moving_corner() {
    openDemo();
    assertFalse(shop.get(linkage + "/moves").is(200).text().contains("Met on the way"));
    shop.get(linkage + "/bolt-l").form(linkage + "/bolt-l").with("allows", "26°").keep();
    String moves = shop.get(linkage + "/moves").is(200).text();
    assertTrue(moves.contains("Its hardware allows 26° . Met on the way there at +"), moves);
    String poses = shop.get(linkage + "/poses").is(200).html();
    assertTrue(
        poses.contains("where the lower uniball is at its limit"), "the nearest limit where it is");
  }

  @Test
  void no_mark_on_the_moving_corners_tape_runs_through_a_numeral() {
    openDemo();
    String moves = shop.get(linkage + "/moves").is(200).html();
    List<Double> marks = numbers("class=\"(?:stop|limit)\" points=\"[-0-9.]+,([0-9.]+) ", moves);
    assertEquals(3, marks.size(), "strap, bump stop and the limit that is met first");
    List<Double> numerals = numbers("class=\"tape-numeral\" x=\"[0-9.]+\" y=\"([0-9.]+)\"", moves);
    assertTrue(numerals.size() >= 2, numerals.toString());
    numerals.forEach(
        y -> marks.forEach(at -> assertTrue(at < y - 12 || at > y + 1, at + ", " + y)));
  }

  private static List<Double> numbers(String pattern, String html) {
    return Pattern.compile(pattern)
        .matcher(html)
        .results()
        .map(m -> Double.valueOf(m.group(1)))
        .toList();
  }

  private void openDemo() {
    shop.close();
    Path demo = folder.resolve("demo");
    DemoBook.copyTo(demo);
    shop = new Shop(demo);
    linkage = "/corners/marmot-lf/linkage";
  }

  private static void part(StringBuilder sent, String name, String value) {
    sent.append("--cut-here\r\nContent-Disposition: form-data; name=\"" + name + "\"\r\n\r\n");
    sent.append(value + "\r\n");
  }

  private static Vec at(String file, Joint joint) {
    return CornerText.read(file).joints().get(joint);
  }

  @Test
  void what_a_uniball_allows_goes_in_with_its_bolt() {
    String address = linkage + "/bolt-l";
    Form bolt = shop.get(address).form(address).with("out", "0").with("back", "0").with("up", "1");
    assertEquals(422, bolt.with("allows", "100").send().status());
    bolt.with("allows", "18°").keep();
    String page = shop.get(linkage).is(200).text();
    assertTrue(page.contains("0 out, 0 back, 1 in up, swings 18° each way"), page);
    assertTrue(shop.get(address).html().contains("value=\"18°\""));
  }

  /**
   * Twelve equations solved by scipy's fsolve (lengths of five rods, the knuckle's six, the wheel's
   * height; spin axis and shock's mount carried along), of the joints above, at ± 100 mm.
   */
  @Test
  void what_is_tried_on_paper_comes_out_as_the_equations_of_the_corner_say() {
    layOutAll();
    layOut("su", "14 3/16", "40", "33 5/16");
    layOut("sl", "19 11/16", "39 3/4", "13 1/8");
    // 0.65, −0.45, 6.68, 7.86; in droop 1.55, −0.74, 4.99; in bump −0.27, −0.24, 8.27.
    tried(
        "rod=upper-front&longer=1%2F4",
        "Camber today 0.00° +0.65°",
        "Toe of this wheel today 0.00° −0.45°",
        "Caster today +5.14° +6.68°",
        "KPI today +8.43° +7.86°",
        "Camber today +0.84° +1.55°",
        "Toe of this wheel today +0.15° −0.74°",
        "Caster today +3.44° +4.99°",
        "Camber today −0.90° −0.27°",
        "Toe of this wheel today −0.16° −0.24°",
        "Caster today +6.72° +8.27°");
    // A hole moved in the knuckle: scrub 3.141 → 3.338 in, shock 20.925 → 20.986 in.
    tried(
        "joint=u&out=1%2F4&back=1%2F8",
        "Camber today 0.00° −1.26°",
        "Toe of this wheel today 0.00° +0.77°",
        "Caster today +5.14° +5.10°",
        "Scrub today 3 1/8 in 3 5/16 in",
        "Shock today 20 15/16 in 21 in",
        "Toe of this wheel today +0.15° +1.08°",
        "Camber today −0.90° −2.14°");
    // A mount moved on the lower arm: 23.336 → 23.407 in droop, 18.592 → 18.127 in bump.
    tried(
        "joint=sl&out=1&up=1%2F2",
        "Shock today 20 15/16 in 20 3/4 in",
        "Shock today 23 5/16 in 23 7/16 in",
        "Shock today 18 9/16 in 18 1/8 in");
  }

  private void tried(String change, String... lines) {
    String text = shop.get(linkage + "/try?" + change).is(200).text();
    for (String line : lines) {
      assertTrue(text.contains(line), () -> line + " in " + text);
    }
  }

  @Test
  void rod_ends_on_paper_take_the_joints_and_ask_for_them_no_more() {
    String paper = "/corners/" + marmot.left + "/rod-ends";
    assertTrue(shop.get(paper).text().contains("Upper joint above the lower"));
    layOutAll();
    String page = shop.get(paper + "?thread=5%2F8-18&front=1&rear=1").is(200).text();
    assertTrue(page.contains("The same turns exactly, from the pivots"), page);
    assertFalse(page.contains("Upper joint above the lower"), page);
    assertFalse(page.contains("Steering arm Outer"), page);
  }
}
