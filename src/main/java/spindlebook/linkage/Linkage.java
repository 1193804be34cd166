package spindlebook.linkage;

import java.util.Optional;
import spindlebook.entry.Joint;
import spindlebook.linkage.Found.StopsAssembling;

/**
 * A double A-arm with tie rod and rack, or with a toe link at the rear, of rigid links: one free
 * motion, told by the lower arm's angle θ from the design.
 *
 * <pre>
 *   L  = its orbit at θ
 *   U  : a cos φ + b sin φ = c,  D = L − Q,  a = D·spoke,  b = D·ahead,
 *        c = (D² + r² − |UL|²)/2      two φ: (a c ∓ b w, b c ± a w)/(a² + b²),  w² = a² + b² − c²
 *   TO : three spheres, about L, U and TI: in the axes ex from L to U, ey square to it towards TI,
 *        x = (|TL|² − |TU|² + |UL|²)/2|UL|,   y = ((|TL|² + |TI−L|² − rod²)/2 − x i)/j,  z² = |TL|² − x² − y²
 * </pre>
 *
 * Q and r centre and radius of the upper joint's orbit, i and j where TI lies along ex and ey. Of
 * the two φ and the two z the one is kept that the design has, until the wheel's height runs
 * through a dead centre and the other takes over ({@link March}).
 *
 * <p>Assumes rigid links, joints without play, a level floor. Bushes that give, and arms that bend,
 * move a wheel by more than the tape's error under load; on a jack they do not. Source: plane
 * trigonometry and the intersection of spheres, derived here; checked against reference numbers of
 * two other methods, Freudenstein's equation and parallel linkages (tests). Degenerate joints are
 * refused in a sentence.
 */
public final class Linkage {
  private static final double RACK_STEP_MM = 20;
  private static final double HELD_STEP_MM = 2;

  private final Joints joints;
  private final int side;

  final Orbit lower;
  final Orbit upper;
  final Orbit shock;
  final Orbit strap;
  final Orbit lowerHouse;
  final Orbit upperHouse;
  final InKnuckle wheel;
  final InKnuckle spin;
  final InKnuckle lowerBolt;
  final InKnuckle upperBolt;
  final InKnuckle outerStud;
  final OnGround design;

  private final double upperSquared;
  private final double kingpin;
  private final double toLowerSquared;
  private final double rodSquared;
  private final double alongKingpin;
  private final double armSquared;
  private final int upperWay;
  private final int tieWay;

  /**
   * @throws LinkageRefused when the joints make no corner
   */
  public Linkage(Joints joints) {
    this.joints = joints;
    this.side = joints.side();
    Vec l = joints.get(Joint.L);
    Vec u = joints.get(Joint.U);
    Vec t = joints.get(Joint.TO);
    Vec lowerAxis = axis(Joint.LF, Joint.LR);
    Vec upperAxis = axis(Joint.UF, Joint.UR);
    lower = orbit(Joint.LF, lowerAxis, Joint.L);
    upper = orbit(Joint.UF, upperAxis, Joint.U);
    refuse(lower.spoke().length() < 1, "L lies on its arm's pivot axis.", Joint.L);
    refuse(upper.spoke().length() < 1, "U lies on its arm's pivot axis.", Joint.U);
    shock = orbit(Joint.LF, lowerAxis, Joint.SL);
    strap = orbit(Joint.LF, lowerAxis, Joint.KL);
    lowerHouse = direction(lowerAxis, Joint.HOUSE_L);
    upperHouse = direction(upperAxis, Joint.HOUSE_U);

    Vec e = u.minus(l);
    Vec f = t.minus(l);
    refuse(e.length() < 1, "L and U are the same point.", Joint.U);
    refuse(e.z() <= 0, "U is not above L: were the two exchanged?", Joint.U);
    refuse(
        e.cross(f).length() < 1 * e.length(),
        "TO lies on the line from L to U, so the tie rod cannot steer.",
        Joint.TO);
    wheel = InKnuckle.of(e, f, joints.get(Joint.W).minus(l));
    spin = InKnuckle.of(e, f, joints.spin());
    lowerBolt = inKnuckle(e, f, Joint.BOLT_L);
    upperBolt = inKnuckle(e, f, Joint.BOLT_U);
    outerStud = inKnuckle(e, f, Joint.STUD_TO);

    upperSquared = upper.spoke().dot(upper.spoke());
    kingpin = e.length();
    toLowerSquared = f.dot(f);
    rodSquared = Math.pow(t.distance(joints.get(Joint.TI)), 2);
    refuse(rodSquared < 1, "TI and TO are the same point.", Joint.TO);
    Vec toUpper = t.minus(u);
    alongKingpin = (toLowerSquared - toUpper.dot(toUpper) + kingpin * kingpin) / (2 * kingpin);

    armSquared = toLowerSquared - alongKingpin * alongKingpin;

    double upperLever = e.dot(upper.ahead()) / (kingpin * upper.spoke().length());
    refuse(
        Math.abs(upperLever) < 1e-6, "The upper arm and the kingpin stand in one line.", Joint.U);
    upperWay = upperLever > 0 ? 1 : -1;
    double tieLever = e.cross(joints.get(Joint.TI).minus(l)).dot(f);
    refuse(
        Math.abs(tieLever) < 1e-6 * kingpin * e.cross(f).length(),
        "The tie rod and its steering arm stand in one line.",
        Joint.TI);
    tieWay = tieLever > 0 ? 1 : -1;
    design = OnGround.of(pose(0, upperWay, tieWay, 0));
  }

  public Joints joints() {
    return joints;
  }

  /** Steered by the rack, or held by a toe link: {@link March} from the design. */
  public Found at(double heightMm, double rackMm) {
    Optional<Pose> start = design(rackMm);
    return start.isPresent() ? March.to(start.get(), heightMm) : heldAtHeight(heightMm, rackMm);
  }

  /**
   * Where the rod does not reach at the design: the wheel there first, then the rack, bit by bit.
   */
  private Found heldAtHeight(double heightMm, double rackMm) {
    Found at = March.to(design(0).orElseThrow(), heightMm);
    for (double on = HELD_STEP_MM; at instanceof Pose near && near.rackMm() != rackMm; ) {
      double next = Math.copySign(Math.min(on, Math.abs(rackMm)), rackMm);
      Pose moved = pose(near.lowerRad(), near.upperWay(), near.tieWay(), next);
      at = moved == null ? null : March.to(moved, heightMm);
      on += HELD_STEP_MM;
    }
    return at instanceof Pose ? at : new StopsAssembling(Double.NaN, rackMm, heightMm < 0);
  }

  /** From a pose near by, at its rack position: the same answer, sooner. */
  public Found at(double heightMm, Pose near) {
    return March.to(near, heightMm);
  }

  /** With the lower arm where it is at the design; at rack 0 the design itself. */
  public Optional<Pose> design(double rackMm) {
    // A rack far out finds the rod on the knuckle's other side, where it cannot have come from.
    for (double on = RACK_STEP_MM; on < Math.abs(rackMm); on += RACK_STEP_MM) {
      if (pose(0, upperWay, tieWay, Math.copySign(on, rackMm)) == null) {
        return Optional.empty();
      }
    }
    return Optional.ofNullable(pose(0, upperWay, tieWay, rackMm));
  }

  /** What the steering alone makes of a pose, the jack under the lower arm left as it is. */
  public Found steered(Pose straight, double rackMm) {
    Pose pose = pose(straight.lowerRad(), straight.upperWay(), straight.tieWay(), rackMm);
    return pose == null ? new StopsAssembling(Double.NaN, rackMm, false) : pose;
  }

  /** With the lower arm as in another corner's pose; null where this one does not assemble so. */
  Pose alike(Pose other) {
    return pose(other.lowerRad(), other.upperWay(), other.tieWay(), other.rackMm());
  }

  /** Null where the upper arm or the tie rod does not reach. */
  Pose pose(double lowerRad, int upperWay, int tieWay, double rackMm) {
    double cos = Math.cos(lowerRad);
    double sin = Math.sin(lowerRad);
    Vec l = lower.at(cos, sin);

    Vec d = l.minus(upper.centre());
    double a = d.dot(upper.spoke());
    double b = d.dot(upper.ahead());
    double c = (d.dot(d) + upperSquared - kingpin * kingpin) / 2;
    double n = a * a + b * b;
    double room = n - c * c;
    if (!(room > 0)) {
      return null;
    }
    double w = upperWay * Math.sqrt(room);
    double upperCos = (a * c - b * w) / n;
    double upperSin = (b * c + a * w) / n;
    Vec u = upper.at(upperCos, upperSin);

    Vec inner = joints.get(Joint.TI);
    Vec toInner = new Vec(inner.x(), inner.y() + rackMm, inner.z()).minus(l);
    Vec e = u.minus(l);
    Vec ex = e.times(1 / kingpin);
    double i = toInner.dot(ex);
    Vec across = toInner.plus(-i, ex);
    double j = across.length();
    double y = ((toLowerSquared + toInner.dot(toInner) - rodSquared) / 2 - alongKingpin * i) / j;
    double zz = armSquared - y * y;
    if (!(zz > 0)) {
      return null;
    }
    double z = tieWay * Math.sqrt(zz);
    Vec f = ex.times(alongKingpin).plus(y / j, across).plus(z / j, ex.cross(across));

    // Velocities for each radian of θ: no link changes its length.
    Vec perL = lower.perRad(cos, sin);
    Vec tangent = upper.perRad(upperCos, upperSin);
    double upperPerRad = e.dot(perL) / e.dot(tangent);
    Vec perU = tangent.times(upperPerRad);
    Vec fromU = f.minus(e);
    Vec rod = f.minus(toInner);
    Vec square = fromU.cross(rod);
    Vec perT =
        square.times(f.dot(perL)).plus(fromU.dot(perU), rod.cross(f)).times(1 / f.dot(square));

    Vec normal = e.cross(f);
    Vec perE = perU.minus(perL);
    Vec perF = perT.minus(perL);
    Vec perNormal = perE.cross(f).plus(e.cross(perF));
    Vec hub = l.plus(wheel.at(e, f, normal));
    Vec perHub = perL.plus(wheel.at(perE, perF, perNormal));
    return new Pose(
        this,
        lowerRad,
        upperWay,
        tieWay,
        rackMm,
        Math.min(room / n, zz / armSquared),
        cos,
        sin,
        upperCos,
        upperSin,
        l,
        e,
        f,
        normal,
        hub,
        perE,
        perF,
        perNormal,
        perHub);
  }

  private Vec axis(Joint front, Joint rear) {
    Vec along = joints.get(rear).minus(joints.get(front));
    refuse(along.length() < 1, front.key + " and " + rear.key + " are the same point.", rear);
    // Named the wrong way round it is the same axis: an arm that hangs turns one way.
    return along.times((along.x() > 0 ? -side : side) / along.length());
  }

  private Orbit orbit(Joint through, Vec axis, Joint point) {
    return joints.has(point) ? Orbit.of(joints.get(through), axis, joints.get(point)) : null;
  }

  private Orbit direction(Vec axis, Joint direction) {
    return joints.has(direction) ? Orbit.of(Vec.NONE, axis, joints.get(direction)) : null;
  }

  private InKnuckle inKnuckle(Vec e, Vec f, Joint direction) {
    return joints.has(direction) ? InKnuckle.of(e, f, joints.get(direction)) : null;
  }

  private static void refuse(boolean when, String sentence, Joint... about) {
    if (when) {
      throw new LinkageRefused(sentence, about);
    }
  }
}
