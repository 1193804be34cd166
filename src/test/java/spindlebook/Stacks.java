package spindlebook;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.util.List;
import org.slf4j.LoggerFactory;

/** What the program's own log says of failures, while this is open. */
final class Stacks implements AutoCloseable {
  private final Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
  private final ListAppender<ILoggingEvent> log = new ListAppender<>();

  Stacks() {
    log.start();
    root.addAppender(log);
  }

  /** One line for each failure that was logged with where it came from. */
  List<String> seen() {
    return log.list.stream()
        .filter(e -> e.getThrowableProxy() != null)
        .map(
            e ->
                e.getFormattedMessage()
                    + ": "
                    + e.getThrowableProxy().getClassName()
                    + " "
                    + e.getThrowableProxy().getMessage())
        .distinct()
        .toList();
  }

  @Override
  public void close() {
    root.detachAppender(log);
  }
}
