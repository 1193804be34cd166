package spindlebook.uncertainty;

import java.util.Objects;

/**
 * One cause of doubt. The same id is the same unknown error wherever it enters: there it adds or
 * cancels. Different ids know nothing of each other.
 *
 * @param id names the error, not its size; a reading's own errors carry the reading's id
 * @param kind what would make it smaller
 */
public record Source(String id, SourceKind kind) {
  public Source {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(kind, "kind");
  }

  /** From what a string remembers of itself: figures ask for it more than for anything else. */
  @Override
  public int hashCode() {
    return 31 * id.hashCode() + kind.ordinal();
  }
}
