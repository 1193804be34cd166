package spindlebook.log;

import java.util.List;
import java.util.concurrent.CompletableFuture;

/** What one sender handed in at one time, and the answer it waits for. */
final class Submission {
  /**
   * One entry to be.
   *
   * @param origin where it stood before, null for a new one
   */
  record Proposed(Draft draft, Origin origin) {}

  final List<Proposed> proposed;
  final CompletableFuture<Accepted> answer = new CompletableFuture<>();

  Submission(List<Proposed> proposed) {
    this.proposed = List.copyOf(proposed);
  }

  static Submission of(List<Draft> drafts) {
    return new Submission(drafts.stream().map(draft -> new Proposed(draft, null)).toList());
  }
}
