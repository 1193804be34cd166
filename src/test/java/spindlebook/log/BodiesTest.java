package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import spindlebook.definition.Adjuster;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.BumpStop;
import spindlebook.definition.CarDetails;
import spindlebook.definition.CornerWeight;
import spindlebook.definition.Defined;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.Keep;
import spindlebook.definition.Layout;
import spindlebook.definition.Place;
import spindlebook.definition.RackSide;
import spindlebook.definition.Retired;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.definition.Spring;
import spindlebook.definition.Starter;
import spindlebook.definition.WatchPlace;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.entry.HappeningKind;
import spindlebook.entry.HeightName;
import spindlebook.entry.Joint;
import spindlebook.entry.LineSide;
import spindlebook.entry.Load;
import spindlebook.entry.Pairing;
import spindlebook.entry.PartDone;
import spindlebook.entry.PhotoSide;
import spindlebook.entry.Quantity;
import spindlebook.entry.SignedCorner;
import spindlebook.entry.SignedThing;
import spindlebook.entry.SpringFigure;
import spindlebook.entry.Steering;
import spindlebook.entry.SweptBy;
import spindlebook.entry.TelltaleKind;
import spindlebook.entry.UseUnit;
import spindlebook.entry.Zeroing;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

class BodiesTest {
  private static final TypedLength GAP =
      new TypedLength(" 3/8\"", 9.525, LengthUnit.INCH, "tape-1");
  private static final TypedLength LONG = new TypedLength("2 m", 2000, LengthUnit.MM, "tape-1");
  private static final TypedAngle ANGLE = new TypedAngle("18.5°", Math.toRadians(18.5), "angle-1");
  private static final CarDetails DETAILS =
      new CarDetails("Dune", LengthUnit.MM, GAP, GAP, GAP, RackSide.BEHIND_AXLE, "red");

  static Stream<Content> contents() {
    Content.Reading number =
        new Content.Reading(
            "h1",
            Steering.FULL_LEFT,
            Quantity.WATCH_POINT,
            "tie",
            GapResult.NUMBER,
            " 3/8\"",
            GAP,
            null,
            null,
            null,
            "It is far off.",
            true,
            "the boot is torn",
            null);
    Content.Reading there =
        new Content.Reading(
            "h1",
            Steering.FULL_LEFT,
            Quantity.WATCH_POINT,
            "tie",
            GapResult.NUMBER,
            " 3/8\"",
            GAP,
            null,
            null,
            null,
            "It is far off.",
            true,
            "the boot is torn",
            true);
    Content.Height height =
        new Content.Height(
            "r1", HeightName.IN_BETWEEN, "two", GAP, null, "h0", null, false, null, null);
    return Stream.of(
        new Content.Car(DETAILS, Starter.tools()),
        new Content.Corner(
            "car",
            Place.RIGHT_REAR,
            Layout.STEERED_DOUBLE_A_ARM,
            Starter.watchPoints(Layout.STEERED_DOUBLE_A_ARM),
            Starter.adjusters(Layout.STEERED_DOUBLE_A_ARM),
            List.of(new Given(Dimension.SHOCK_OPEN, GAP, GAP)),
            Starter.heldBack()),
        definition(DETAILS),
        definition(
            new WatchPoint(
                "cv", WatchPlace.CV_ANGLE, "the CV", new Keep(null, null, ANGLE), "its maker")),
        definition(
            new Adjuster(
                "strap",
                AdjusterKind.LIMIT_STRAP,
                null,
                SettingUnit.HOLES,
                GAP,
                true,
                new Setting("3", SettingUnit.HOLES, 3.0))),
        definition(new Given(Dimension.STOP_CRUSH, GAP, null)),
        definition(new Retired("tie", null, null)),
        new Content.Round(
            "lf",
            true,
            false,
            true,
            false,
            true,
            ANGLE,
            ANGLE,
            "18 psi",
            LengthUnit.CM,
            "tape",
            "drills",
            "angle-finder",
            List.of(
                new Content.ToRead(HeightName.RIDE, null, Steering.STRAIGHT, Quantity.CAMBER, null),
                new Content.ToRead(
                    HeightName.ON_THE_STRAP, null, Steering.STRAIGHT, null, null, Pairing.CROSSED)),
            "windy",
            List.of(Zeroing.FLOOR, Zeroing.SPRING_AND_STOP_OUT)),
        height,
        height.withAxle(new Content.OtherEnd(HeightName.FULL_BUMP, GAP, GAP), Pairing.CROSSED),
        number,
        there,
        new Content.Reading(
            "h1",
            Steering.PART_RIGHT,
            Quantity.WATCH_POINT,
            "tie",
            GapResult.GO_NO_GO,
            "1/8 goes",
            null,
            null,
            GAP,
            null,
            null,
            null,
            null,
            null),
        new Content.Reading(
            "h1",
            Steering.STRAIGHT,
            Quantity.CAMBER,
            null,
            GapResult.UNREAD,
            "about 2",
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null),
        new Content.Adjustment("lf", "strap", null, Setting.words("as new"), "worn", "Clash."),
        new Content.Happening("car", null, HappeningKind.DRIVEN, "40 miles"),
        new Content.Happening("car", "lf", HappeningKind.HIT_OR_BENT, null),
        new Content.Correction("h1", height, "read the wrong end"),
        new Content.Correction("g1", null, ""),
        new Content.Correction("x1", new Content.Correction("g1", number, "so"), "so it was"),
        new Content.Answer("g1", false, "it was the other bolt"),
        new Content.Use("car", UseUnit.DAYS, 1.5, "1 1/2", "dunes"),
        new Content.Telltale(
            "lf",
            TelltaleKind.SHOCK_RING,
            null,
            " 3/8\"",
            GAP,
            GAP,
            HeightName.RIDE,
            null,
            "left one"),
        new Content.Telltale(
            "lf", TelltaleKind.TYRE_PRESSURE, null, "18 psi", null, null, null, null, null),
        new Content.Telltale(
            "lf",
            TelltaleKind.STRAP_LENGTH,
            null,
            "20",
            LONG,
            null,
            null,
            amount("200 ± 5 lb"),
            null),
        new Content.Part(
            "car",
            "lf",
            "strap",
            PartDone.FITTED,
            "limit strap",
            "20 in",
            "S20",
            "strap",
            UseUnit.HOURS,
            20.0,
            1.5,
            "new"),
        new Content.Part(
            "car",
            null,
            "hose",
            PartDone.TAKEN_OFF,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null),
        new Content.Definition(
            null,
            "lf",
            new Spring(
                amount("250 lb/in"),
                amount("26 N/mm"),
                GAP,
                LONG,
                null,
                LONG,
                GAP,
                amount("280 N/mm"),
                GAP,
                1.1)),
        new Content.Definition(
            null,
            "lf",
            new BumpStop(
                "air",
                "2 in air",
                BumpStop.Kind.AIR,
                List.of(
                    new BumpStop.Point(
                        new TypedLength("0 in", 0, LengthUnit.INCH, "tape-1"), amount("0 lb")),
                    new BumpStop.Point(GAP, amount("900 lb"))),
                GAP,
                0.8,
                5.0,
                false,
                LONG,
                30.0)),
        new Content.Definition(
            null,
            "lf",
            new CornerWeight(
                CornerWeight.By.LEVER,
                null,
                amount("180 ± 1 lb"),
                amount("12 lb"),
                LONG,
                GAP,
                amount("90 ± 10 kg"),
                null)),
        new Content.ToDo("car", "lf", "tie", "grind tab", null, null),
        new Content.ToDo(null, null, null, null, "t1", true),
        new Content.Fastener("lf", "upper", "65 ft-lb", true, false, "new nut"),
        new Content.Fastener("lf", "upper", "", null, null, null),
        new Content.Photo("lf", "a1", "tie", "0f".repeat(32), 1600, 1200, PhotoSide.AFTER, "tab"),
        alignment(new AlignmentWay.Gauge(ANGLE, ANGLE, null)),
        alignment(new AlignmentWay.Line(LineSide.OUTBOARD, true, GAP, GAP, GAP)),
        alignment(
            new AlignmentWay.Line(
                LineSide.INBOARD,
                false,
                GAP,
                GAP,
                GAP,
                new AlignmentWay.Lean(LineSide.OUTBOARD, GAP, GAP, LONG, GAP))),
        alignment(new AlignmentWay.Tape(GAP, GAP, GAP)),
        alignment(new AlignmentWay.Dials(null, GAP, LONG, ANGLE)),
        alignment(new AlignmentWay.Spot(GAP, LONG)),
        alignment(
            new AlignmentWay.Swing(
                SweptBy.KINGPIN_TURN, ANGLE, ANGLE, ANGLE, null, ANGLE, ANGLE, ANGLE, ANGLE, null)),
        alignment(new AlignmentWay.Joint(GAP, GAP, GAP, LONG)),
        alignment(new AlignmentWay.Across(true, LONG, GAP, GAP)),
        new Content.Target("lf", AlignedFigure.TOTAL_TOE, null, null, null, GAP),
        new Content.Target("lf", AlignedFigure.CAMBER, ANGLE, ANGLE, null, null),
        new Content.JointPlace("lf", Joint.BOLT_L, GAP, LONG, GAP, "h1", ANGLE),
        new Content.JointPlace("lf", Joint.TI, GAP, LONG, GAP, null, null),
        new Content.SignOff(
            "car",
            6,
            "0f".repeat(32),
            LengthUnit.MM,
            List.of(
                new SignedCorner(
                    "lf",
                    Place.LEFT_FRONT,
                    "short",
                    -190.5,
                    "from ride",
                    List.of(new SignedCorner.SetTo("strap", "limit strap", null)),
                    List.of(new SignedCorner.Rule("tie", "tie rod", "at least 1/4 in")),
                    List.of(new SignedCorner.Figure("droop: margin", false, -3.25, 1.5, true)),
                    List.of(
                        new SignedCorner.Limit("tie rod", "droop", "short", 1.0, 2.0, null, null)),
                    List.of(
                        new SignedCorner.Aligned(
                            AlignedFigure.CAMBER, -0.01, 0.002, "holds", "−1° to 0°", "clear"),
                        new SignedCorner.Aligned(
                            AlignedFigure.TRAIL, null, null, null, "at least 1 in", "needs")),
                    List.of(
                        new SignedCorner.Ride(
                            SpringFigure.STOP_FORCE,
                            "air",
                            "2 in air",
                            null,
                            1.0,
                            0.1,
                            "holds",
                            null)),
                    List.of(new SignedCorner.Swing(Joint.BOLT_L, 0.6, 0.04, null, "28°", "short"))),
                new SignedCorner(
                    "rf", Place.RIGHT_FRONT, "short", 0, "from ride", null, null, null, null)),
            List.of(new SignedThing("short", Place.LEFT_FRONT, "too near")),
            "only round the yard"));
  }

  private static Content definition(Defined what) {
    return new Content.Definition("car", "lf", what);
  }

  private static TypedAmount amount(String text) {
    return TypedAmount.read(text, null).orElseThrow();
  }

  private static Content.Alignment alignment(AlignmentWay way) {
    return new Content.Alignment(
        "lf",
        true,
        Load.DRIVER,
        "full",
        "18 psi",
        "tape",
        "gauge",
        "plates",
        way,
        "Far off.",
        "so");
  }

  @ParameterizedTest
  @MethodSource("contents")
  void what_is_written_reads_back_the_same(Content content) throws IOException {
    byte[] line = Json.MAPPER.writeValueAsBytes(Bodies.write(content));
    assertEquals(content, Bodies.read(entry(Bodies.kind(content), 1, Json.read(line))));
  }

  @Test
  void words_are_small_with_hyphens_and_what_is_absent_is_left_out() {
    JsonNode body =
        Bodies.write(
            new Content.Height(
                "r1", HeightName.ON_THE_STRAP, null, null, null, "h0", null, null, null, null));
    assertEquals(
        "{\"round\":\"r1\",\"name\":\"on-the-strap\",\"markAsAt\":\"h0\"}", body.toString());
  }

  @Test
  void values_by_hand_are_plain_text() {
    Content.Definition strap =
        (Content.Definition)
            read(
                "definition",
                """
                {"corner":"lf","adjuster":{"adjuster":"strap","kind":"limit-strap","unit":"holes","step":"1 in","moreShortens":true,"first":"hole 3"}}\
                """);
    assertEquals(25.4, ((Adjuster) strap.what()).step().mm(), 1e-12);
    assertEquals(new Setting("3", SettingUnit.HOLES, 3.0), ((Adjuster) strap.what()).first());

    Content.Reading angle =
        (Content.Reading)
            read(
                "reading",
                """
                {"height":"h","steering":"straight","quantity":"camber","result":"number","angle":"-2.5°"}\
                """);
    assertEquals(Math.toRadians(-2.5), angle.angle().rad(), 1e-12);
    assertEquals("-2.5°", angle.angle().typed());
  }

  @Test
  void what_an_older_book_does_not_say_is_not_there() {
    Content.Round round =
        (Content.Round)
            read(
                "round",
                """
                {"corner":"lf","springIn":false,"bumpStopIn":true,"wheelOn":false,"onTyres":false,"steeringLinked":true}\
                """);
    assertEquals(List.of(), round.zeroed());
    Content.Reading reading =
        (Content.Reading)
            read(
                "reading",
                """
                {"height":"h","steering":"straight","quantity":"camber","result":"number","angle":"-2.5°"}\
                """);
    assertEquals(null, reading.note());
    assertFalse(Bodies.write(reading).has("note"));
    Content.Alignment alignment =
        (Content.Alignment)
            read(
                "alignment",
                """
                {"corner":"lf","rolled":true,"line":{"side":"inboard","plate":false,"front":"126 mm",\
                "rear":"125 mm","spacing":"600 mm","lean":{"front":"120 mm","rear":"126 mm","apart":"2800 mm"}}}\
                """);
    AlignmentWay.Line line = (AlignmentWay.Line) alignment.way();
    assertEquals(LineSide.INBOARD, line.lean().places());
    assertTrue(line.said().contains("from the line in to the car 120 mm in front"), line.said());
  }

  @Test
  void one_thing_said_differently_leaves_the_rest_as_it_was() {
    for (Content content : contents().toList()) {
      if (content instanceof Content.Reading r) {
        assertEquals(r, r.withDoubt("d").withDoubt(r.doubt()));
        assertEquals(r, r.withAgain(false).withAgain(r.again()));
        assertEquals(r.note(), r.withDoubt("d").note());
        assertEquals(r.atOtherEnd(), r.withAgain(false).atOtherEnd());
        assertEquals("d", r.withDoubt("d").doubt());
      } else if (content instanceof Content.Height h) {
        assertEquals(h, h.withDoubt("d").withDoubt(h.doubt()));
        assertEquals(h, h.withAgain(true).withAgain(h.again()));
        assertEquals("h9", h.withMarkAsAt("h9").markAsAt());
      } else if (content instanceof Content.Round r) {
        assertEquals("rf", r.withCorner("rf").corner());
        assertEquals(r, r.withCorner("rf").withCorner(r.corner()));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "hole 3, HOLES, 3",
    "2 turns, TURNS, 2",
    "-1.5 turns, TURNS, -1.5",
    "1 turn, TURNS, 1",
    "8 1/4 in, LENGTH, 209.55",
    "210 mm, LENGTH, 210",
    "8, WORDS,",
    "the soft ones, WORDS,"
  })
  void a_setting_by_hand_is_told_by_its_words(String text, SettingUnit unit, Double amount) {
    Setting setting =
        ((Content.Adjustment)
                read(
                    "adjustment", "{\"corner\":\"lf\",\"adjuster\":\"a\",\"to\":\"" + text + "\"}"))
            .to();
    assertEquals(unit, setting.unit());
    if (amount == null) {
      assertEquals(null, setting.amount());
    } else {
      assertEquals(amount, setting.amount(), 1e-9);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "height|{'round':'r','name':'ride','spindel':'8 in'}|Entry 7 (height) cannot be read: it"
            + " has a field 'spindel'; it may have again, doubt, label, mark, markAsAt, name,"
            + " otherEnd, pairing, round, spindle.",
        "height|{'round':'r','name':'ride','spindle':'8'}|Entry 7 (height) cannot be read: '8' is"
            + " not one length with its unit.",
        "height|{'round':'r','name':'ride','spindle':'81/4 in'}|Entry 7 (height) cannot be read:"
            + " '81/4 in' is not one length with its unit.",
        "height|{'round':'r','name':'ride','spindle':8}|Entry 7 (height) cannot be read: '8' is not"
            + " what belongs there.",
        "height|{'round':'r','name':'ride','spindle':{'typed':'8','mm':'8','unit':'mm','rule':'tape-1'}}|Entry"
            + " 7 (height) cannot be read: its 'mm' is not what belongs there.",
        "height|{'round':'r','name':'ride','spindle':{'typed':'8','unit':'mm','rule':'tape-1'}}|Entry"
            + " 7 (height) cannot be read: its 'mm' is missing.",
        "height|{'round':'r','name':'ride','spindle':{'typed':'8','mm':8,'unit':'mm','rule':'tape-1','by':'me'}}|Entry"
            + " 7 (height) cannot be read: it has a field 'by'; it may have typed, mm, unit, rule.",
        "height|{'round':'r','name':'high'}|Entry 7 (height) cannot be read: 'high' is none of"
            + " strap-off, on-the-strap, in-between, ride, stop-touch, full-bump, stop-out.",
        "height|{'round':'r','name':'RIDE'}|Entry 7 (height) cannot be read: 'RIDE' is none of"
            + " strap-off, on-the-strap, in-between, ride, stop-touch, full-bump, stop-out.",
        "height|{'round':'r'}|Entry 7 (height) cannot be read: its 'name' is missing.",
        "height|{'name':'ride'}|Entry 7 (height) cannot be read: its 'round' is missing.",
        "height|{'round':['r'],'name':'ride'}|Entry 7 (height) cannot be read: its 'round' is not"
            + " what belongs there.",
        "height|{'round':5,'name':'ride'}|Entry 7 (height) cannot be read: its 'round' is not what"
            + " belongs there.",
        "reading|{'height':'h','steering':'straight','quantity':'camber','result':'number'}|Entry 7"
            + " (reading) cannot be read: a number that was read is one length or one angle.",
        "reading|{'height':'h','steering':'straight','quantity':'watch-point','result':'touches'}|Entry"
            + " 7 (reading) cannot be read: its 'point' is missing.",
        "reading|{'height':'h','steering':'straight','quantity':'watch-point','point':'p','result':'go-no-go'}|Entry"
            + " 7 (reading) cannot be read: go / no-go needs a shank that goes or one that does"
            + " not.",
        "reading|{'height':'h','steering':'straight','quantity':'camber','result':'number','angle':'steep'}|Entry"
            + " 7 (reading) cannot be read: 'steep' is not one angle.",
        "adjustment|{'corner':'lf','adjuster':'strap'}|Entry 7 (adjustment) cannot be read: its"
            + " 'to' is missing.",
        "adjustment|{'corner':'lf','adjuster':'strap','to':{'typed':'3','unit':'holes'}}|Entry 7"
            + " (adjustment) cannot be read: a setting in holes and its amount disagree.",
        "adjustment|{'corner':'lf','adjuster':'strap','to':{'typed':'3','unit':'holes','amount':'3'}}|Entry"
            + " 7 (adjustment) cannot be read: its 'amount' is not what belongs there.",
        "definition|{'corner':'lf'}|Entry 7 (definition) cannot be read: a definition says one"
            + " thing, and this one 0.",
        "definition|{'corner':'lf','retired':{'tool':'t'},'details':{'name':'n'}}|Entry 7"
            + " (definition) cannot be read: a definition says one thing, and this one 2.",
        "definition|{'corner':'lf','watchPoint':{'point':'p','place':'cv-angle','keep':{'least':'1"
            + " in'}}}|Entry 7 (definition) cannot be read: the rule of 'CV joint angle' is an"
            + " angle that is kept at most.",
        "definition|{'corner':'lf','watchPoint':{'point':'p','place':'tyre-frame','keep':{'mostAngle':'18°'}}}|Entry"
            + " 7 (definition) cannot be read: the rule of 'tyre to frame' is a length, not an"
            + " angle.",
        "definition|{'corner':'lf','watchPoint':{'point':'p','place':'tyre-frame','keep':{}}}|Entry"
            + " 7 (definition) cannot be read: a rule needs a number to keep.",
        "definition|{'corner':'lf','watchPoint':'tie'}|Entry 7 (definition) cannot be read: its"
            + " 'watchPoint' is not what belongs there.",
        "definition|{'corner':'lf','heldBack':{'allowance':'strap-stretch','percent':'ten'}}|Entry"
            + " 7 (definition) cannot be read: its 'percent' is not what belongs there.",
        "definition|{'corner':'lf','heldBack':{'allowance':'impact-reserve'}}|Entry 7 (definition)"
            + " cannot be read: impact beyond the solid stop, at the wheel needs a number.",
        "round|{'corner':'lf','springIn':false,'bumpStopIn':true,'wheelOn':false,'onTyres':false}|Entry"
            + " 7 (round) cannot be read: its 'steeringLinked' is missing.",
        "round|{'corner':'lf','springIn':'no','bumpStopIn':true,'wheelOn':false,'onTyres':false,'steeringLinked':true}|Entry"
            + " 7 (round) cannot be read: its 'springIn' is not what belongs there.",
        "round|{'corner':'lf','springIn':false,'bumpStopIn':true,'wheelOn':false,'onTyres':false,'steeringLinked':true,'zeroed':['flor']}|Entry"
            + " 7 (round) cannot be read: 'flor' is none of floor, frame-mark, rack-centred,"
            + " steering-link, play, spring-and-stop-out, angle-finder, settled.",
        "round|{'corner':'lf','springIn':1,'bumpStopIn':true,'wheelOn':false,'onTyres':false,'steeringLinked':true}|Entry"
            + " 7 (round) cannot be read: its 'springIn' is not what belongs there.",
        "happening|{'car':'car','what':'rained-on'}|Entry 7 (happening) cannot be read: 'rained-on'"
            + " is none of hit-or-bent, cut-welded-ground, driven.",
        "answer|{'target':'g1'}|Entry 7 (answer) cannot be read: its 'itIsSo' is missing.",
        "answer|{'itIsSo':true}|Entry 7 (answer) cannot be read: its 'target' is missing.",
        "correction|{'reason':'none'}|Entry 7 (correction) cannot be read: its 'target' is"
            + " missing.",
        "correction|{'target':7}|Entry 7 (correction) cannot be read: its 'target' is not what"
            + " belongs there.",
        "correction|{'target':'h1','body':{'round':'r'}}|Entry 7 (correction) cannot be read: its"
            + " 'kind' is missing.",
        "correction|{'target':'h1','why':'none'}|Entry 7 (correction) cannot be read: it has a"
            + " field 'why'; it may have target, kind, body, reason.",
        "correction|{'target':'h1','kind':'height','body':{'name':'ride'}}|Entry 7 (height) cannot"
            + " be read: its 'round' is missing.",
        "car|{}|Entry 7 (car) cannot be read: its 'details' is missing.",
        "car|{'details':{'name':'n'},'tools':'tape'}|Entry 7 (car) cannot be read: its 'tools' is"
            + " not what belongs there.",
        "car|{'details':{'name':'n'},'tools':[{'tool':'t','name':'t','use':'angles','graduation':'1"
            + " in'}]}|Entry 7 (car) cannot be read: a tool for angles needs its own graduation."
      })
  void what_is_wrong_is_said_in_one_sentence(String kind, String body, String sentence) {
    BookRefused refused =
        assertThrows(BookRefused.class, () -> read(kind, body.replace('\'', '"')));
    assertEquals(sentence, refused.getMessage());
    assertEquals(BookRefused.Why.ENTRY, refused.why());
  }

  /** Each body that can be written, with one of its values made something else. */
  @Test
  void nothing_but_a_clear_refusal_comes_of_any_wrong_value() {
    SplittableRandom random = new SplittableRandom(9);
    List<String> wrong =
        List.of("null", "true", "-1", "1e300", "\"\"", "\"zzz\"", "[]", "{}", "[1]", "{\"x\":1}");
    List<Content> contents = contents().toList();
    int refusals = 0;
    for (int i = 0; i < 20_000; i++) {
      Content content = contents.get(random.nextInt(contents.size()));
      String json = Bodies.write(content).toString();
      List<Integer> colons =
          java.util.stream.IntStream.range(0, json.length())
              .filter(c -> json.charAt(c) == ':' && json.charAt(c - 1) == '"')
              .boxed()
              .toList();
      int at = colons.get(random.nextInt(colons.size())) + 1;
      String broken =
          json.substring(0, at)
              + wrong.get(random.nextInt(wrong.size()))
              + json.substring(endOfValue(json, at));
      try {
        Bodies.read(entry(Bodies.kind(content), 1, json(broken)));
      } catch (BookRefused refused) {
        refusals++;
        String said = refused.getMessage();
        assertAll(
            said + " for " + broken,
            () -> assertTrue(said.startsWith("Entry 7 ("), "says which"),
            () -> assertTrue(said.endsWith("."), "is a sentence"),
            () ->
                assertFalse(
                    said.matches(
                        "(?s).*(spindlebook|java|jackson|Exception|class |record|null|deserial|\\n"
                            + ").*"),
                    "speaks of the book only"),
            () -> assertTrue(said.length() < 700, "is short"));
      }
    }
    assertTrue(refusals > 5_000, "only " + refusals + " were refused");
  }

  private static int endOfValue(String json, int from) {
    int depth = 0;
    boolean text = false;
    for (int i = from; i < json.length(); i++) {
      char c = json.charAt(i);
      if (c == '"' && json.charAt(i - 1) != '\\') {
        text = !text;
      } else if (!text && (c == '{' || c == '[')) {
        depth++;
      } else if (!text && (c == '}' || c == ']')) {
        if (depth == 0) {
          return i;
        }
        depth--;
      } else if (!text && depth == 0 && c == ',') {
        return i;
      }
    }
    return json.length();
  }

  @Test
  void a_later_version_or_an_unknown_kind_is_only_kept() {
    assertEquals(
        new Content.Kept("height"), Bodies.read(entry("height", 2, json("{\"anything\":1}"))));
    assertEquals(
        new Content.Kept("weather"), Bodies.read(entry("weather", 1, json("{\"ring\":1}"))));
    Content.Correction correction =
        (Content.Correction)
            read("correction", "{\"target\":\"t\",\"kind\":\"weather\",\"body\":{\"ring\":2}}");
    assertInstanceOf(Content.Kept.class, correction.body());
  }

  private static Content read(String kind, String body) {
    return Bodies.read(entry(kind, 1, json(body)));
  }

  private static JsonNode json(String text) {
    try {
      return Json.read(text.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new AssertionError(text, e);
    }
  }

  private static Entry entry(String kind, int v, JsonNode body) {
    return new Entry(7, null, null, "me", null, "k", kind, v, 6, 0, null, body, null);
  }
}
