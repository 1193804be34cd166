package spindlebook.card;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Dates as the pages show them, in the server's own time zone. */
public final class Days {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm", Locale.ENGLISH);

  private Days() {}

  public static String day(Instant at) {
    return at == null ? "" : DAY.format(at.atZone(ZoneId.systemDefault()));
  }

  public static String minute(Instant at) {
    return at == null ? "" : MINUTE.format(at.atZone(ZoneId.systemDefault()));
  }
}
