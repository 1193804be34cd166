package spindlebook.log;

import java.util.List;
import java.util.concurrent.CompletableFuture;

/** What one sender handed in at one time, and the answer it waits for. */
final class Submission {
  final List<Draft> drafts;
  final CompletableFuture<Accepted> answer = new CompletableFuture<>();

  Submission(List<Draft> drafts) {
    this.drafts = List.copyOf(drafts);
  }
}
