package spindlebook.linkage;

import java.util.function.ToDoubleFunction;

/**
 * What can be read of a corner and modelled, mm or rad, with its exact rate for each mm of height.
 */
public enum Quantity {
  CAMBER(Pose::camberRad, Pose::camberPerMm),
  TOE(Pose::toeRad, Pose::toePerMm),
  CASTER(Pose::casterRad, Pose::casterPerMm),
  KPI(Pose::kpiRad, Pose::kpiPerMm),
  HALF_TRACK(Pose::halfTrackMm, Pose::halfTrackPerMm),
  SHOCK(Pose::shockMm, pose -> -pose.shockRatio()),
  STRAP(Pose::strapMm, pose -> -pose.strapRatio());

  private final ToDoubleFunction<Pose> value;
  private final ToDoubleFunction<Pose> perMm;

  Quantity(ToDoubleFunction<Pose> value, ToDoubleFunction<Pose> perMm) {
    this.value = value;
    this.perMm = perMm;
  }

  public double of(Pose pose) {
    return value.applyAsDouble(pose);
  }

  /** At a fixed rack. */
  public double perMm(Pose pose) {
    return perMm.applyAsDouble(pose);
  }
}
