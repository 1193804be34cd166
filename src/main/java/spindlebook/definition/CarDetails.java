package spindlebook.definition;

import java.util.Objects;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;

/** What is said of the car as a whole; everything but the name may be left for later (null). */
public record CarDetails(
    String name,
    LengthUnit unit,
    TypedLength wheelbase,
    TypedLength frontTrack,
    TypedLength rearTrack,
    RackSide rack,
    String note)
    implements Defined {
  @Override
  public String inWords() {
    return "details of " + name;
  }

  @Override
  public boolean ofCar() {
    return true;
  }

  public CarDetails {
    Objects.requireNonNull(name, "name");
    unit = unit == null ? LengthUnit.INCH : unit;
  }
}
