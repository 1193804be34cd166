package spindlebook.card;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import spindlebook.definition.Setting;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.travel.Cure;

/** Where a change of a setting is prepared: the page of its adjuster, filled in. */
public final class CureAddress {
  private CureAddress() {}

  /** With the new setting typed in; where the present one was never said, with what is known. */
  public static String of(Card card, Cure cure) {
    String address = adjuster(card.corner(), cure.adjuster());
    if (cure.to() == null) {
      return address;
    }
    boolean said = card.adjuster(cure.adjuster()).map(a -> a.setting() != null).orElse(false);
    String to = "?to=" + encoded(cure.to().typed());
    return address + to + (said ? "" : "&from=" + encoded(cure.from().typed()));
  }

  /** With what it is to be set to typed in. */
  public static String of(String corner, String adjuster, Setting to) {
    return adjuster(corner, adjuster) + "?to=" + encoded(to.typed());
  }

  /** The same, and why. */
  public static String of(String corner, String adjuster, Setting to, String why) {
    return of(corner, adjuster, to) + "&why=" + encoded(why);
  }

  /** Where an adjuster is set, with nothing typed yet. */
  public static String adjuster(Card card, InForce inForce) {
    return adjuster(card.corner(), inForce.adjuster().adjuster());
  }

  private static String adjuster(String corner, String adjuster) {
    return "/corners/" + corner + "/adjustments/" + adjuster;
  }

  private static String encoded(String words) {
    return URLEncoder.encode(words, StandardCharsets.UTF_8);
  }
}
