package spindlebook;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import spindlebook.definition.Layout;
import spindlebook.definition.Starter;
import spindlebook.drivecheck.SignOffCopy;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Histories;
import spindlebook.log.Json;
import spindlebook.measured.AlignedCheck;

/**
 * The demo car: a script of day offsets in db/demo/, played through the real writer into a book of
 * its own, as if its season had just been.
 */
final class DemoCar {
  private static final String SCRIPT = "/db/demo/marmot.jsonl";
  private static final int LAST_DAYS_AGO = 2;

  private DemoCar() {}

  /** Plays the script so that its last day lies two days before {@code now}. */
  static void play(Path folder, Clock now, Consumer<String> tell, BooleanSupplier ended) {
    List<JsonNode> steps = script();
    int last = steps.stream().mapToInt(s -> s.get("day").asInt()).max().orElse(0);
    Clocked clock = new Clocked(now.instant(), ZoneId.systemDefault());
    try (Book book = Book.open(folder, clock, tell)) {
      Histories histories = new Histories(book);
      for (JsonNode step : steps) {
        if (ended.getAsBoolean()) {
          return;
        }
        int ago = step.get("day").asInt() - last - LAST_DAYS_AGO;
        clock.at(now, ago, LocalTime.parse(step.get("time").asText()));
        String kind = step.get("kind").asText();
        Content content =
            kind.equals("sign-off")
                ? signOff(book, histories, step.get("body"))
                : content(kind, step.get("body"));
        book.append(
            Bodies.draft(
                step.get("key").asText(), book.lastN(), step.get("who").asText(), content));
      }
    }
  }

  private static List<JsonNode> script() {
    try (BufferedReader script =
        new BufferedReader(
            new InputStreamReader(
                DemoCar.class.getResourceAsStream(SCRIPT), StandardCharsets.UTF_8))) {
      List<JsonNode> steps = new ArrayList<>();
      for (String line = script.readLine(); line != null; line = script.readLine()) {
        steps.add(Json.read(line.getBytes(StandardCharsets.UTF_8)));
      }
      return steps;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The script says whose and why; the copy is made of the book as it stands by then. */
  private static Content signOff(Book book, Histories histories, JsonNode body) {
    CarBook car = histories.of(body.get("car").asText());
    return SignOffCopy.of(
        car, AlignedCheck.of(car), book.hashAt(car.n()), body.get("why").asText());
  }

  /** A body of the script; the car's tools and a corner's beginnings are those of any new one. */
  private static Content content(String kind, JsonNode body) {
    if (kind.equals("car")) {
      Content.Car car = (Content.Car) Bodies.read(kind, body);
      return new Content.Car(car.details(), Starter.tools());
    }
    if (kind.equals("corner")) {
      Content.Corner corner = (Content.Corner) Bodies.read(kind, body);
      Layout layout = corner.layout();
      return new Content.Corner(
          corner.car(),
          corner.place(),
          layout,
          Starter.watchPoints(layout),
          Starter.adjusters(layout),
          corner.given(),
          Starter.heldBack());
    }
    return Bodies.read(kind, body);
  }

  /** A clock the script sets. */
  private static final class Clocked extends Clock {
    private final ZoneId zone;
    private volatile Instant at;

    Clocked(Instant at, ZoneId zone) {
      this.at = at;
      this.zone = zone;
    }

    void at(Clock now, int day, LocalTime time) {
      at =
          now.instant()
              .atZone(zone)
              .toLocalDate()
              .plusDays(day)
              .atTime(time)
              .atZone(zone)
              .toInstant();
    }

    @Override
    public ZoneId getZone() {
      return zone;
    }

    @Override
    public Clock withZone(ZoneId other) {
      return new Clocked(at, other);
    }

    @Override
    public Instant instant() {
      return at;
    }
  }
}
