package spindlebook.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import spindlebook.curve.Node;
import spindlebook.curve.PositionToSetting;
import spindlebook.definition.SettingUnit;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.linkage.Change;
import spindlebook.linkage.Change.Longer;
import spindlebook.linkage.Change.Moved;
import spindlebook.linkage.Change.Rod;
import spindlebook.linkage.Coordinate;
import spindlebook.linkage.Joints;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.LinkageRefused;
import spindlebook.linkage.ModelFigure;
import spindlebook.linkage.OnGround;
import spindlebook.linkage.Pose;
import spindlebook.linkage.Quantity;
import spindlebook.linkage.Reassembly;
import spindlebook.linkage.Span;
import spindlebook.linkage.Vec;
import spindlebook.linkage.WorkBack;
import spindlebook.measured.CornerModel;
import spindlebook.measured.ModelRange;
import spindlebook.page.Asked;
import spindlebook.sums.OnPaperView;
import spindlebook.sums.OnPaperView.Block;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.SolidStop;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * A joint moved or a rod made longer, tried before anything is cut: today against tried, straight
 * ahead; and back from what is wanted to what has to be set.
 */
final class TryPaper {
  /** How far a shim or a mount is looked for either way, and how far anything may be moved. */
  private static final double WITHIN_MM = 50;

  private static final double MOST_MM = 100;
  private static final double MOST_RAD = Math.toRadians(10);

  /** What a change is told by. */
  private enum Told {
    CAMBER("Camber", Pose::camberRad),
    TOE("Toe of this wheel", Pose::toeRad),
    CASTER("Caster", Pose::casterRad),
    KPI("KPI", Pose::kpiRad),
    SCRUB("Scrub", pose -> OnGround.of(pose).scrubMm()),
    SHOCK("Shock", Pose::shockMm),
    STRAP("Strap mounts", Pose::strapMm);

    private final String words;
    private final ToDoubleFunction<Pose> of;

    Told(String words, ToDoubleFunction<Pose> of) {
      this.words = words;
      this.of = of;
    }
  }

  private final Asked a;
  private final Card card;
  private final CornerModel model;
  private final Joints today;
  private final ModelRange range;
  private final Lengths lengths;
  private final List<Change> changes = new ArrayList<>();
  private final TypedAngle camber;
  private final TypedAngle caster;
  private final TypedLength stop;
  private final TypedLength bump;
  private final List<Node> gaps;
  private final boolean onShock;
  private final List<Block> blocks = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  TryPaper(Card card, CornerModel model, Asked a) {
    this.a = a;
    this.card = card;
    this.model = model;
    this.today = model.linkage().joints();
    this.range = ModelRange.of(card, model);
    this.lengths = new Lengths(a.unit());
    Joint joint =
        a.typed("joint", "Joint moved", this::joint)
            .hint("As the drawing names it: U, TO, SU. A shim under the tie rod's end moves TO up.")
            .read();
    TypedLength out = by("out", "Outboard by");
    TypedLength back = by("back", "Rearward by");
    TypedLength up = by("up", "Up by");
    if (joint != null) {
      double side = today.left() ? 1 : -1;
      changes.add(new Moved(joint, new Vec(-mm(back), side * mm(out), mm(up))));
    }
    Rod rod =
        a.<Rod>one("rod", "Rod end turned out")
            .option("", null, "none", "")
            .options(Arrays.asList(Rod.values()), TryPaper::name)
            .firstKey("")
            .read();
    TypedLength longer = by("longer", "Longer by");
    if (rod != null && longer != null) {
      changes.add(new Longer(rod, longer.mm()));
    } else if ((rod != null || longer != null) && a.ok()) {
      a.wrong("longer", "Say which rod end is turned, and by how much the rod gets longer.");
    }
    camber = angle("camber", "Wanted: camber as laid out");
    caster = angle("caster", "Wanted: caster there");
    stop = end("stop", "Wanted: the wheel stops in droop at", "From ride, below it −.");
    bump = end("bump", "Wanted: the wheel stops in bump at", "From ride, above it +.");
    gaps = SolidStop.setLengths(card, End.BUMP, null);
    onShock =
        gaps.size() < 2
            && today.has(Joint.SU)
            && a.<Boolean>one("pad", "The bump stop sits")
                .option("shock", true, "on the shock", "")
                .option("", false, "elsewhere", "")
                .firstKey("")
                .read();
  }

  private TypedLength end(String name, String label, String hint) {
    return a.signed(name, label)
        .hint(hint)
        .check(l -> Math.abs(l.mm()) < 1000, "That is further than any wheel travels.")
        .read();
  }

  private Joint joint(String text) {
    String key = text.toUpperCase(Locale.ROOT);
    for (Joint joint : Joint.values()) {
      if (joint.key.equals(key) && !joint.direction() && today.has(joint)) {
        return joint;
      }
    }
    a.wrong("joint", "Type a joint as the drawing names it, such as U or TO.");
    return null;
  }

  private TypedLength by(String name, String label) {
    return a.signed(name, label)
        .check(l -> Math.abs(l.mm()) <= MOST_MM, "That is another corner: type 4 in or less.")
        .read();
  }

  private static double mm(TypedLength length) {
    return length == null ? 0 : length.mm();
  }

  private TypedAngle angle(String name, String label) {
    return a.angle(name, label)
        .check(x -> Math.abs(x.rad()) <= 2 * MOST_RAD, "Type an angle of 20° or less.")
        .read();
  }

  private static String name(Rod rod) {
    return switch (rod) {
      case LOWER_FRONT -> "lower arm, front";
      case LOWER_REAR -> "lower arm, rear";
      case UPPER_FRONT -> "upper arm, front";
      case UPPER_REAR -> "upper arm, rear";
      case TIE_ROD -> "tie rod";
    };
  }

  OnPaperView view(String address) {
    if (a.posted().ok()) {
      if (!changes.isEmpty()) {
        trying(() -> tried(new Linkage(Reassembly.of(today, changes))));
      }
      if (camber != null || caster != null) {
        trying(this::turns);
      }
      if (stop != null) {
        trying(this::strap);
      }
      if (bump != null) {
        trying(this::spacer);
      }
      trying(this::bumpSteer);
      if (today.has(Joint.SU)) {
        trying(this::shock);
      }
    }
    notes.add(
        "Today is what the joints make that agree best with the readings. Parts are rigid and"
            + " nothing else is set again, so toe comes out as it will.");
    return new OnPaperView(address, a.parts(), "Try it", blocks, notes);
  }

  private void trying(Runnable work) {
    try {
      work.run();
    } catch (LinkageRefused e) {
      notes.add(0, e.getMessage());
    }
  }

  private void tried(Linkage changed) {
    Map<String, Double> heights = new LinkedHashMap<>();
    heights.put("Tried, as laid out", 0.0);
    heights.put("Tried, in droop", range.droopMm());
    heights.put("Tried, in bump", range.bumpMm());
    heights.forEach(
        (title, height) -> {
          List<Line> lines = new ArrayList<>();
          for (Told told : Told.values()) {
            double now = ModelFigure.value(model.linkage(), told.of, height, 0);
            boolean wanted = height == 0 || (told != Told.KPI && told != Told.SCRUB);
            if (wanted && !Double.isNaN(now)) {
              FigureText was = text(told, now);
              FigureText then = text(told, ModelFigure.value(changed, told.of, height, 0));
              lines.add(new Line(told.words, then, "today " + was.words()));
            }
          }
          blocks.add(new Block(title, lines));
        });
  }

  private FigureText text(Told told, double value) {
    return Double.isNaN(value)
        ? FigureText.of("?", "")
        : told.compareTo(Told.KPI) <= 0
            ? FigureText.of(Rounded.signed(Math.toDegrees(value), 2), "°")
            : lengths.figure(value);
  }

  private void turns() {
    Map<Quantity, Double> wanted = new EnumMap<>(Quantity.class);
    Pose now = model.linkage().design(0).orElseThrow();
    wanted.put(Quantity.CAMBER, camber == null ? now.camberRad() : camber.rad());
    wanted.put(Quantity.TOE, now.toeRad());
    wanted.put(Quantity.CASTER, caster == null ? now.casterRad() : caster.rad());
    List<Line> lines = new ArrayList<>();
    for (Longer longer :
        WorkBack.lengthsFor(today, List.of(Rod.UPPER_FRONT, Rod.UPPER_REAR, Rod.TIE_ROD), wanted)) {
      lines.add(
          new Line(
              "Rod ends, " + name(longer.rod()),
              fine(longer.byMm()),
              "+ out, longer; toe as it is"));
    }
    blocks.add(new Block("For the wanted camber and caster", lines));
  }

  private void strap() {
    double ride = Double.isNaN(range.rideMm()) ? 0 : range.rideMm();
    Pose there = model.linkage().at(stop.mm() + ride, 0).pose();
    List<Line> lines = new ArrayList<>();
    if (today.has(Joint.KU)) {
      lines.add(
          new Line(
              "Strap, mount to mount",
              lengths.figure(there.strapMm()),
              "stretched, with the wheel there"));
    }
    if (today.has(Joint.SU)) {
      lines.add(new Line("Shock there", lengths.figure(there.shockMm()), ""));
    }
    blocks.add(new Block("To stop in droop at " + stop.words(), lines));
  }

  /** By the gap to its pad where that was read, else on the shock, else by what its owner gave. */
  private void spacer() {
    Figure solid = range.solidMm();
    if (solid == null) {
      notes.add(0, "A spacer needs where the bump stop is solid today: read its touch in a round.");
      return;
    }
    Optional<Figure> ride =
        CornerTravel.of(card).rideMm().map(r -> r.minus(model.joints().positionMm()));
    Figure wanted = ride.orElse(Figure.exact(0)).plus(bump.mm());
    Pose there = model.linkage().at(wanted.value(), 0).pose();
    boolean read = gaps.size() > 1;
    Optional<Figure> thicker =
        read
            ? Optional.of(byGap(solid, wanted))
            : onShock
                ? WorkBack.spacerOnShock(model.linkage(), model.coordinates(), solid, wanted)
                : card.springs().stops().stream()
                    .filter(s -> s.what().fitted() && s.stands().counts())
                    .map(s -> solid.minus(wanted).times(s.what().ratio()))
                    .findFirst();
    if (thicker.isEmpty()) {
      notes.add(0, "A spacer needs the gap to its pad at two heights, or a stop on the shock.");
      return;
    }
    Figure by = thicker.get();
    boolean thinner = by.value() < 0;
    List<Line> lines = new ArrayList<>();
    lines.add(
        new Line(
            thinner ? "Spacer thinner by" : "Spacer thicker by",
            lengths.figure(by.times(thinner ? -1 : 1)),
            read
                ? "by the gap that was read"
                : onShock
                    ? "by the linkage, along the shock"
                    : "by the stop's share of the wheel"));
    card.adjuster(End.BUMP.setBy())
        .map(InForce::setting)
        .filter(s -> s.unit() == SettingUnit.LENGTH)
        .map(s -> then(by.plus(s.amount()), "today " + s.inWords()))
        .ifPresent(lines::add);
    if (today.has(Joint.SU)) {
      lines.add(new Line("Shock there", lengths.figure(there.shockMm()), ""));
    }
    blocks.add(new Block("To stop in bump at " + bump.words(), lines));
  }

  private Line then(Figure spacer, String today) {
    return spacer.value() < 0
        ? new Line("Spacer then", FigureText.of("none thin enough", ""), today)
        : new Line("Spacer then", lengths.figure(spacer), today);
  }

  /** The gap where the wheel is to stop less the one where it is solid today, as it was read. */
  private Figure byGap(Figure solid, Figure wanted) {
    return gap(solid.value(), wanted.value()).plus(doubt(wanted)).minus(doubt(solid));
  }

  private Figure gap(double fromMm, double toMm) {
    return PositionToSetting.lengthChange(gaps, model.positionMm(fromMm), model.positionMm(toMm))
        .changeMm();
  }

  private Figure doubt(Figure heightMm) {
    double height = heightMm.value();
    return heightMm.plus(-height).times(gap(height - 1, height).value());
  }

  private void bumpSteer() {
    Coordinate shim = new Coordinate.Along(Joint.TO, Coordinate.Axis.Z);
    Coordinate rack = new Coordinate.Along(Joint.TI, Coordinate.Axis.Z);
    double low = range.droopMm();
    double high = range.bumpMm();
    double now = WorkBack.bumpSteerRad(today, low, high);
    List<Line> lines = new ArrayList<>();
    lines.add(new Line("Toe changes by, today", degrees(now), "droop to bump, this wheel"));
    for (Coordinate of : List.of(shim, rack)) {
      String part = of == shim ? "Outer end" : "Rack";
      OptionalDouble none = WorkBack.noBumpSteer(today, of, WITHIN_MM);
      none.ifPresent(
          by -> lines.add(new Line(part + " up, none as laid out", fine(by), rod(of, by))));
    }
    double by = WorkBack.leastBumpSteer(today, shim, low, high, WITHIN_MM);
    double then = WorkBack.bumpSteerRad(shim.moved(today, by), low, high);
    lines.add(
        new Line(
            "Outer end up, least over the travel",
            fine(by),
            "toe then changes by " + degrees(then).words() + "; " + rod(shim, by)));
    blocks.add(new Block("Bump steer, toe set again", lines));
  }

  private String rod(Coordinate of, double by) {
    double change = Rod.TIE_ROD.lengthMm(of.moved(today, by)) - Rod.TIE_ROD.lengthMm(today);
    return "tie rod longer by " + fine(change).words();
  }

  /** Finer than a tape reads: threads and shims can be set so. */
  private FigureText fine(double mm) {
    int decimals = a.unit() == LengthUnit.INCH ? 3 : a.unit() == LengthUnit.CM ? 2 : 1;
    return FigureText.of(Rounded.signed(mm / a.unit().mm(), decimals), a.unit().word());
  }

  private static FigureText degrees(double rad) {
    return FigureText.of(Rounded.number(Math.toDegrees(rad), 2), "°");
  }

  private void shock() {
    Linkage linkage = model.linkage();
    Span span = Span.of(linkage, Quantity.SHOCK, range.droopMm(), range.bumpMm(), 0);
    Pose design = linkage.design(0).orElseThrow();
    blocks.add(
        new Block(
            "Shock for this travel",
            List.of(
                new Line("Open at least", lengths.figure(span.most()), ""),
                new Line("Closed at most", lengths.figure(span.least()), ""),
                new Line("Stroke", lengths.figure(span.range()), ""),
                new Line(
                    "Motion ratio as laid out",
                    FigureText.of(Rounded.number(design.shockRatio(), 3), ""),
                    "shock for 1 of wheel"))));
  }
}
