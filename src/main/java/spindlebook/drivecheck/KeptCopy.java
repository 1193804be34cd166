package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.corner.CarBook;
import spindlebook.corner.Content;
import spindlebook.corner.SeenSignOff;
import spindlebook.corner.SignedCorner;
import spindlebook.units.LengthUnit;
import spindlebook.web.State;

/** Lays out a copy as it was kept, and holds it against what the same entries give today. */
final class KeptCopy {
  private KeptCopy() {}

  /**
   * @param sameChain whether entry n of this book is the one it was signed at
   * @param asked the corner to show; else the first
   */
  static SignOffView view(
      CarBook history, SeenSignOff seen, boolean sameChain, Optional<String> asked) {
    Content.SignOff kept = seen.signOff();
    String address = "/sign-offs/" + seen.key();
    Optional<SignedCorner> shown =
        kept.corners().stream()
            .filter(c -> asked.filter(c.corner()::equals).isPresent())
            .findFirst()
            .or(() -> kept.corners().stream().findFirst());
    CopyChanges again = again(history, kept, sameChain);
    return new SignOffView(
        seen.key(),
        "/cars/" + kept.car() + "/compare?one=" + seen.n(),
        "/cars/" + kept.car() + "/put-back?at=" + seen.n(),
        Capital.of(SignOffList.outcome(kept.open().size())),
        kept.why() == null ? "" : kept.why(),
        Counted.of(seen.since(history).size(), "entry", "entries") + " since",
        sentence(kept, again),
        again == null ? List.of() : all(again),
        kept.open().stream()
            .map(
                o ->
                    new SignOffView.Open(
                        Capital.of(o.why()),
                        o.place() == null ? "the whole car" : o.place().words(),
                        o.words()))
            .toList(),
        kept.corners().stream()
            .map(
                c ->
                    new SignOffView.Tab(
                        c.place().words(),
                        address + "?corner=" + c.corner(),
                        shown.filter(c::equals).isPresent()))
            .toList(),
        shown.map(c -> corner(c, kept.unit())).orElse(null),
        kept.hash());
  }

  /** Null where it cannot be computed anew: entry n is not what it was. */
  private static CopyChanges again(CarBook history, Content.SignOff kept, boolean sameChain) {
    if (!sameChain) {
      return null;
    }
    List<SignedCorner> today = SignOffCopy.anew(history, kept);
    return today.equals(kept.corners())
        ? CopyChanges.NONE
        : CopyChanges.between(kept.corners(), today, kept.unit(), kept.unit());
  }

  private static String sentence(Content.SignOff kept, CopyChanges again) {
    if (again == null) {
      return "Entry "
          + kept.n()
          + " of this book is not the one it was signed at, so it cannot be computed anew here.";
    }
    return again.none()
        ? "Computed anew from entries 1 to " + kept.n() + " today: the same."
        : "Computed anew from entries 1 to " + kept.n() + " today, this is different:";
  }

  private static List<SignOffView.CopyRow> all(CopyChanges changes) {
    List<SignOffView.CopyRow> all = new ArrayList<>();
    all.addAll(SignOffView.CopyRow.of(changes.turned()));
    all.addAll(SignOffView.CopyRow.of(changes.figures()));
    all.addAll(SignOffView.CopyRow.of(changes.alignment()));
    all.addAll(SignOffView.CopyRow.of(changes.settings()));
    all.addAll(SignOffView.CopyRow.of(changes.rules()));
    return all;
  }

  private static SignOffView.Corner corner(SignedCorner kept, LengthUnit unit) {
    SignedWords words = new SignedWords(kept, unit);
    return new SignOffView.Corner(
        Capital.of(kept.place().words()),
        SignedWords.state(kept.outcome()),
        SignedWords.state(kept.outcome()) == State.NOT_MEASURED ? kept.outcome() : "",
        "Positions are " + kept.zero() + ", + towards bump.",
        kept.figures().stream()
            .map(f -> new SignOffView.Row(Capital.of(f.name()), f.atLeast(), words.figure(f)))
            .toList(),
        kept.alignment() == null
            ? null
            : kept.alignment().stream()
                .map(
                    a ->
                        new SignOffView.AlignedRow(
                            Capital.of(a.figure().words()),
                            a.target() == null ? "" : "target " + a.target(),
                            words.figure(a),
                            SignedWords.state(a)))
                .toList(),
        kept.settings().stream()
            .map(
                s ->
                    new SignOffView.Text(
                        Capital.of(s.name()), s.to() == null ? "not said" : s.to()))
            .toList(),
        kept.rules().stream()
            .map(r -> new SignOffView.Text(Capital.of(r.name()), r.says()))
            .toList(),
        kept.limits().stream()
            .map(
                l ->
                    new SignOffView.LimitRow(
                        Capital.of(l.end()) + ": " + l.what(),
                        SignedWords.state(l.outcome()),
                        words.position(l),
                        words.room(l)))
            .toList());
  }
}
