package spindlebook.drivecheck;

import spindlebook.advice.DriveCheck;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.page.FormKey;

/** Sign-offs, into the book. */
public record SignOffStore(Book book) {
  /** Keeps a copy of what was looked at. What comes in between counts as what came since. */
  void sign(CarBook seen, DriveCheck check, String why, FormKey form, String who) {
    Content.SignOff copy = SignOffCopy.of(seen, check, book.hashAt(seen.n()), why);
    book.append(Bodies.draft(form.key(), seen.n(), who, copy));
  }

  /** Whether entry n of this book is still the one that a copy was made at. */
  boolean sameChain(Content.SignOff signOff) {
    return signOff.n() <= book.lastN() && book.hashAt(signOff.n()).equals(signOff.hash());
  }
}
