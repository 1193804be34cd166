package spindlebook.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;

/**
 * The heights a round on a solid axle goes through: first both ends together from droop to bump,
 * then crossed, each end down in its turn while the other is up. As with {@link HeightOrder} any
 * other height can be read at any time, and what a round set out to read decides alone.
 *
 * @param name where the end stands that the round names
 * @param otherEnd where the other one stands; the same both together
 */
public record AxleOrder(HeightName name, Pairing pairing, HeightName otherEnd) {

  public static List<AxleOrder> of(Content.Round round) {
    if (!round.toRead().isEmpty()) {
      return round.toRead().stream()
          .map(t -> t.pairing() == null ? together(t.name()) : crossed(t.name(), round))
          .distinct()
          .sorted(Comparator.comparing(AxleOrder::pairing).thenComparing(AxleOrder::name))
          .toList();
    }
    List<AxleOrder> order =
        new ArrayList<>(HeightOrder.of(round).stream().map(AxleOrder::together).toList());
    if (!round.springIn()) {
      order.add(crossed(HeightName.ON_THE_STRAP, round));
      order.add(crossed(up(round), round));
    }
    return List.copyOf(order);
  }

  public static AxleOrder together(HeightName name) {
    return new AxleOrder(name, Pairing.BOTH_TOGETHER, name);
  }

  /** With the other end as far the other way as it goes. */
  public static AxleOrder crossed(HeightName name, Content.Round round) {
    return new AxleOrder(name, Pairing.CROSSED, opposite(name, round));
  }

  private static HeightName opposite(HeightName name, Content.Round round) {
    return switch (name) {
      case STRAP_OFF, ON_THE_STRAP -> up(round);
      case STOP_TOUCH, FULL_BUMP, STOP_OUT -> HeightName.ON_THE_STRAP;
      case IN_BETWEEN, RIDE -> HeightName.IN_BETWEEN;
    };
  }

  /** With the stop out nothing is touched: the wheel goes on past it. */
  private static HeightName up(Content.Round round) {
    return round.bumpStopIn() ? HeightName.STOP_TOUCH : HeightName.STOP_OUT;
  }
}
