package spindlebook.fold;

import java.util.List;
import java.util.Optional;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignedThing;
import spindlebook.entry.Content;

/**
 * Alignment of one corner as the book knows it: what was measured, of both wheels where it belongs
 * to the axle, and the owner's targets in force.
 */
public record Aligned(List<SeenAlignment> read, List<Written<Content.Target>> targets) {
  public Aligned {
    read = List.copyOf(read);
    targets = List.copyOf(targets);
  }

  public Optional<Written<Content.Target>> target(AlignedFigure figure) {
    return targets.stream().filter(t -> t.content().figure() == figure).findFirst();
  }

  public Optional<SeenAlignment> read(String key) {
    return read.stream().filter(r -> r.key().equals(key)).findFirst();
  }

  /**
   * What a thing is known by: the last measurement that counts with its repeats, the newest first;
   * else the last one that no longer does. Empty when it was never measured.
   */
  public List<SeenAlignment> of(AlignedThing thing) {
    List<SeenAlignment> all =
        read.stream()
            .filter(r -> r.thing() == thing && r.stands() != Standing.REPLACED)
            .sorted((a, b) -> Long.compare(b.n(), a.n()))
            .toList();
    Optional<SeenAlignment> last = all.stream().filter(SeenAlignment::counts).findFirst();
    return last.isPresent()
        ? all.stream().filter(r -> r.counts() && r.repeats(last.get())).toList()
        : all.stream().limit(1).toList();
  }
}
