package spindlebook.car;

import java.util.Set;
import org.jdbi.v3.core.Handle;
import spindlebook.corner.Content;
import spindlebook.log.Applier;
import spindlebook.log.Bodies;
import spindlebook.log.Entry;

/** Keeps each car's name as it is now: as entered, defined anew, or corrected. */
public final class CarList implements Applier {
  @Override
  public Set<String> kinds() {
    return Set.of("car", "definition", "correction");
  }

  @Override
  public void apply(Handle handle, Entry entry) {
    Content content = Bodies.read(entry);
    if (content instanceof Content.Car car) {
      handle
          .createUpdate(
              """
              insert into car (key, name, n) values (:key, :name, :n)
              """)
          .bind("key", entry.key())
          .bind("name", car.details().name())
          .bind("n", entry.n())
          .execute();
    } else if (content instanceof Content.Definition d && d.details() != null) {
      rename(handle, d.car(), d.details().name());
    } else if (content instanceof Content.Correction c && c.body() instanceof Content.Car car) {
      rename(handle, c.target(), car.details().name());
    }
  }

  private static void rename(Handle handle, String car, String name) {
    handle
        .createUpdate(
            """
            update car set name = :name where key = :key
            """)
        .bind("key", car)
        .bind("name", name)
        .execute();
  }
}
