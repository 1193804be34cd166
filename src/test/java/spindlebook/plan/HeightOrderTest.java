package spindlebook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static spindlebook.entry.HeightName.IN_BETWEEN;
import static spindlebook.entry.HeightName.ON_THE_STRAP;
import static spindlebook.entry.HeightName.RIDE;
import static spindlebook.entry.HeightName.STOP_OUT;
import static spindlebook.entry.HeightName.STOP_TOUCH;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Steering;

/** Common practice on the stands, no source. */
class HeightOrderTest {
  @Test
  void with_the_spring_out_the_wheel_goes_from_the_strap_to_the_stop_and_never_to_ride() {
    assertEquals(
        List.of(ON_THE_STRAP, IN_BETWEEN, IN_BETWEEN, STOP_TOUCH),
        HeightOrder.of(round(false, true, false)));
  }

  @Test
  void with_the_stop_out_too_it_goes_on_past_where_the_stop_would_be_solid() {
    assertEquals(
        List.of(ON_THE_STRAP, IN_BETWEEN, IN_BETWEEN, STOP_OUT),
        HeightOrder.of(round(false, false, false)));
  }

  @Test
  void with_the_spring_in_it_stands_on_its_tyres_or_hangs() {
    assertEquals(List.of(RIDE), HeightOrder.of(round(true, true, true)));
    assertEquals(List.of(ON_THE_STRAP), HeightOrder.of(round(true, true, false)));
  }

  @Test
  void what_it_set_out_to_read_decides_alone_from_droop_to_bump() {
    assertEquals(
        List.of(ON_THE_STRAP, RIDE),
        HeightOrder.of(
            round(false, true, false, read(RIDE), read(ON_THE_STRAP), read(ON_THE_STRAP))));
  }

  private static Content.ToRead read(HeightName name) {
    return new Content.ToRead(name, null, Steering.STRAIGHT, null, null);
  }

  private static Content.Round round(
      boolean springIn, boolean stopIn, boolean onTyres, Content.ToRead... toRead) {
    return new Content.Round(
        "lf",
        springIn,
        stopIn,
        true,
        onTyres,
        true,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        List.of(toRead),
        null,
        null);
  }
}
