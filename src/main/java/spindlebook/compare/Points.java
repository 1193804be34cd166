package spindlebook.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.words.EntryWords;

/** The points of a car's book that can be picked without knowing a number, newest first. */
record Points(CarBook book) {
  private static final int MOST = 40;
  private static final int LONGEST = 70;

  /** Now, sign-offs, changes; and the chosen one, whatever it is. */
  PointSelect select(String name, String label, Point chosen) {
    List<PointSelect.Option> first = new ArrayList<>();
    first.add(new PointSelect.Option(Point.NOW, "Now", chosen.isNow()));
    PointSelect.Group signed =
        group("Sign-offs", chosen, e -> e.content() instanceof Content.SignOff && counts(e));
    PointSelect.Group changes = group("After a change", chosen, this::change);
    boolean there =
        List.of(signed, changes).stream()
            .flatMap(g -> g.options().stream())
            .anyMatch(PointSelect.Option::chosen);
    if (!chosen.isNow() && !there) {
      first.add(new PointSelect.Option(chosen.at(), Capital.of(chosen.words()), true));
    }
    return new PointSelect(
        name,
        label,
        first,
        List.of(signed, changes).stream().filter(g -> !g.options().isEmpty()).toList());
  }

  /** The last sign-off, else before the last change, else the first entry. */
  Point usual() {
    List<Noted> entries = book.entries();
    return book.lastSignOff()
        .map(s -> Point.read(book, Long.toString(s.n())).orElseThrow())
        .orElseGet(
            () -> {
              for (int i = entries.size() - 1; i > 0; i--) {
                if (change(entries.get(i))) {
                  return Point.of(entries.get(i - 1));
                }
              }
              return Point.of(entries.get(0));
            });
  }

  private PointSelect.Group group(String title, Point chosen, Predicate<Noted> in) {
    EntryWords words = new EntryWords(book);
    List<PointSelect.Option> options = new ArrayList<>();
    for (int i = book.entries().size() - 1; i >= 0 && options.size() < MOST; i--) {
      Noted e = book.entries().get(i);
      if (in.test(e)) {
        String at = Long.toString(e.n());
        options.add(
            new PointSelect.Option(
                at,
                Days.day(e.at())
                    + " · "
                    + (e.content() instanceof Content.SignOff
                        ? "signed off by " + e.who()
                        : shortened(words.of(e.content()))),
                at.equals(chosen.at())));
      }
    }
    return new PointSelect.Group(title, options);
  }

  private static String shortened(String words) {
    return words.length() <= LONGEST ? words : words.substring(0, LONGEST - 1).strip() + "…";
  }

  private boolean counts(Noted e) {
    return !book.takenBack(e.key());
  }

  private boolean change(Noted e) {
    return (e.content() instanceof Content.Adjustment || e.content() instanceof Content.Happening)
        && counts(e);
  }
}
