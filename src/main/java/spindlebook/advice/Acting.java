package spindlebook.advice;

import java.util.Objects;
import spindlebook.travel.Limit;

/**
 * A limit with the condition in which it acts, where steering does not say it.
 *
 * @param condition a word for it, as 'crossed' on an axle with one wheel up and one down; empty
 *     when it acts in any
 */
public record Acting(Limit limit, String condition) {
  public Acting {
    Objects.requireNonNull(limit, "limit");
    Objects.requireNonNull(condition, "condition");
  }

  static Acting of(Limit limit) {
    return new Acting(limit, limit.condition());
  }
}
