package spindlebook.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Joint;

/** A corner as comma-separated values, and its sheet. */
class CornerTextTest {
  private static final String G1 = CornerText.write(ReferenceLinkage.g1());

  private static List<String[]> sheet(CornerText corner) {
    Sheet sheet = Sheet.of(new Linkage(corner.joints()), corner.heightsMm(), corner.racksMm());
    return sheet.csv().lines().map(line -> line.split(",", -1)).toList();
  }

  @Test
  void the_reference_corner_as_text_prints_the_references_rows() {
    CornerText corner = CornerText.read(G1 + "travel,-280,280,20\nrack,-60,0,60\n");
    List<String[]> lines = sheet(corner);
    List<String> names = Arrays.asList(lines.get(0));
    List<JsonNode> rows = ReferenceLinkage.rows(ReferenceLinkage.G1);
    assertEquals(rows.size() + 1, lines.size());
    for (int i = 0; i < rows.size(); i++) {
      JsonNode row = rows.get(i);
      String[] line = lines.get(i + 1);
      assertEquals(names.size(), line.length);
      assertEquals(row.get("dz").doubleValue(), Double.parseDouble(line[0]));
      assertEquals(row.get("rack").doubleValue(), Double.parseDouble(line[1]));
      assertEquals("true", line[2]);
      for (String name : List.of("camber_deg", "toe_in_deg", "shock_length_mm", "scrub_mm")) {
        double value = Double.parseDouble(line[names.indexOf(name)]);
        assertEquals(row.get("out").get(name).doubleValue(), value, 1e-7, name);
      }
    }
  }

  @Test
  void written_and_read_a_corner_is_the_same() {
    Random random = new Random(5);
    for (int i = 0; i < 100; i++) {
      Joints joints = RandomLinkage.near(random, 30);
      Joints again = CornerText.read(CornerText.write(joints)).joints();
      assertEquals(joints.at(), again.at());
      assertEquals(joints.left(), again.left());
      assertEquals(joints.toeRad(), again.toeRad(), 1e-15);
      assertEquals(joints.radiusMm(), again.radiusMm());
    }
  }

  @Test
  void what_is_not_asked_is_the_usual_sheet() {
    CornerText corner = CornerText.read(G1);
    assertEquals(57, corner.heightsMm().size());
    assertEquals(List.of(-60.0, 0.0, 60.0), corner.racksMm());
    assertEquals(List.of(5.0, -7.5), CornerText.read(G1 + "dz,5,-7.5").heightsMm());
  }

  @Test
  void semicolons_tabs_inches_quotes_and_capitals_are_read() {
    Joints g1 = CornerText.read(G1).joints();
    assertEquals(g1, CornerText.read(G1.replace(',', '\t')).joints());
    assertEquals(g1, CornerText.read(G1.replace(',', ';').replace('.', ',')).joints());
    String odd =
        "\uFEFF# mine\n\n"
            + G1.toUpperCase(java.util.Locale.ROOT).replace("SIDE,LEFT", "\"Side\" , \"Left\",,,");
    assertEquals(g1, CornerText.read(odd).joints());
    Joints small = g1;
    for (Joint joint : g1.at().keySet()) {
      small = joint.direction() ? small : small.with(joint, g1.get(joint).times(0.03125));
    }
    Joints inches = CornerText.read(CornerText.write(small) + "units,in").joints();
    assertEquals(25.4 * 790 / 32, inches.get(Joint.L).y(), 1e-9);
    assertEquals(25.4 * 405, inches.radiusMm(), 1e-9);
    assertEquals(g1.get(Joint.HOUSE_L), inches.get(Joint.HOUSE_L));
  }

  @Test
  void without_shock_and_hardware_their_columns_are_empty() {
    String bare = G1.replaceAll("(?m)^(SU|SL|KU|KL|bolt.|house.|stud..),.*\r\n", "");
    List<String[]> lines = sheet(CornerText.read(bare + "dz,10\nrack,0"));
    int shock = Arrays.asList(lines.get(0)).indexOf("shock_length_mm");
    assertEquals("", lines.get(1)[shock]);
    assertEquals("true", lines.get(1)[2]);
  }

  @Test
  void a_height_that_it_does_not_reach_is_told_in_its_row() {
    List<String[]> lines = sheet(CornerText.read(G1 + "dz,-400,0\nrack,0"));
    assertEquals("false", lines.get(1)[2]);
    assertEquals(
        "It stops assembling at −376.90 mm: at rack 0.0 mm the wheel comes no lower.",
        lines.get(1)[lines.get(1).length - 1]);
    assertEquals("true", lines.get(2)[2]);
  }

  private static void refused(String sentence, String text) {
    assertEquals(
        sentence, assertThrows(LinkageRefused.class, () -> CornerText.read(text)).getMessage());
  }

  @Test
  void more_rows_than_anyone_reads_are_refused() {
    String many = "0,".repeat(999) + "0";
    String text = CornerText.write(ReferenceLinkage.g1()) + "travel,-100,100,0.1\r\nrack," + many;
    String said = assertThrows(LinkageRefused.class, () -> CornerText.read(text)).getMessage();
    assertTrue(said.contains("more than 60000 rows"), said);
  }

  @Test
  void bad_lines_are_refused_in_a_sentence_with_their_number() {
    refused("LF is missing: lower arm, front pivot.", "");
    refused(
        "The tyre's loaded_radius must be given, and more than 0.",
        G1.replace("loaded_radius", "# "));
    refused("W is missing: wheel centre.", G1.replace("\r\nW,", "\r\n#"));
    refused(
        "Line 3: LF needs numbers: 3, not 2.", G1.replace("LF,210.0,320.0,330.0", "LF,210,320"));
    refused(
        "Line 3: \"2l0\" is no number for LF: plain decimals only, such as 12.5.",
        G1.replace("LF,210.0", "LF,2l0"));
    refused(
        "Line 3: \"\" is no number for LF: plain decimals only, such as 12.5.",
        G1.replace("LF,210.0", "LF,"));
    refused("Line 3: 1e999 is too much for LF.", G1.replace("LF,210.0", "LF,1e999"));
    refused("Line 3: 1e9 is too much for LF.", G1.replace("LF,210.0", "LF,1e9"));
    refused("Line 4: LF was given in line 3 already.", G1.replace("LR,", "LF,"));
    refused(
        "Line 25: \"LX\" is no joint and no setting; see docs/format-linkage.md.", G1 + "LX,1,2,3");
    refused("Line 25: units must be mm or in, not \"ft\".", G1 + "units,ft");
    refused(
        "Line 25: travel is from, to, step: a step from one towards the other, at most 20000 of"
            + " them.",
        G1 + "travel,10,-10,1");
    refused(
        "Line 25: travel is from, to, step: a step from one towards the other, at most 20000 of"
            + " them.",
        G1 + "travel,0,10,0");
    refused(
        "Line 2: side must be left or right, not \"middle\".",
        G1.replace("side,left", "side,middle"));
    refused(
        "Line 11: The wheel centre's y must be less than 0 on the right.",
        G1.replace("side,left", "side,right"));
    refused("Line 12: SL is missing: shock, lower mount.", G1.replace("SL,", "#"));
    refused("Line 4: LF and LR are the same point.", G1.replace("LR,-190.0", "LR,210.0"));
    refused("Line 17: houseL points nowhere.", G1.replaceAll("houseL,.*\r\n", "houseL,0,0,0\r\n"));
    refused(
        "Line 22: 60 is too much for toe_in_deg.",
        G1.replaceAll("toe_in_deg,.*\r\n", "toe_in_deg,60\r\n"));
    refused(
        "Line 25: travel is from, to, step: a step from one towards the other, at most 20000 of"
            + " them.",
        G1 + "travel,0,90,0.0001");
  }

  @Test
  void notes_no_break_spaces_and_dashes_are_read_as_they_look() {
    String odd =
        G1.replace("LR,", "LR,\u00a0").replace(",-", ",\u2013") + "note: by hand\nname my corner\n";
    assertEquals(CornerText.read(G1).joints(), CornerText.read(odd).joints());
  }

  @Test
  void a_kingpin_that_lies_level_or_upside_down_is_refused_with_its_line() {
    refused(
        "Line 5: U is not above L: were the two exchanged?",
        G1.replaceAll("(?m)^L,", "X,").replaceAll("(?m)^U,", "L,").replaceAll("(?m)^X,", "U,"));
  }

  @Test
  void spoilt_text_is_read_or_refused_and_never_fails_otherwise() {
    Random random = new Random(77);
    for (int i = 0; i < 5000; i++) {
      StringBuilder text = new StringBuilder(G1);
      for (int k = 1 + random.nextInt(4); k > 0; k--) {
        int at = random.nextInt(text.length());
        String piece =
            List.of(",", "-", "9", "", "\n", ";", "\"", "e", "x", "0").get(random.nextInt(10));
        text.replace(at, Math.min(text.length(), at + random.nextInt(6)), piece);
      }
      try {
        CornerText corner = CornerText.read(text.toString());
        Sheet.of(new Linkage(corner.joints()), List.of(-100.0, 100.0), List.of(0.0)).csv();
      } catch (LinkageRefused refused) {
        assertTrue(refused.getMessage().matches(".*[.?]"), refused.getMessage());
      }
    }
  }

  @Test
  void the_example_of_the_format_reads_and_every_column_is_named_there() throws IOException {
    String doc = Files.readString(Path.of("docs", "format-linkage.md"));
    String example = doc.substring(doc.indexOf("```csv") + 6, doc.indexOf("```\n\n## What a line"));
    assertEquals(16, sheet(CornerText.read(example)).size());
    for (String name : Columns.NAMES) {
      boolean point = name.matches(".*_[xyz]");
      assertTrue(
          point || doc.contains("`" + name + "`"), () -> name + " is not in the format's page");
    }
    for (Joint joint : Joint.values()) {
      assertTrue(doc.contains("`" + joint.key + "`"), joint.key);
    }
  }
}
