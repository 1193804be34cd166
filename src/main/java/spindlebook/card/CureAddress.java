package spindlebook.card;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import spindlebook.corner.Card;
import spindlebook.corner.InForce;
import spindlebook.corner.Setting;
import spindlebook.travel.Cure;

/** Where a cure is prepared: the page of its adjuster. */
public final class CureAddress {
  private CureAddress() {}

  /** With the new setting typed in; where the present one was never said, with what is known. */
  public static String of(Card card, Cure cure) {
    String address = "/corners/" + card.corner() + "/adjustments/" + cure.adjuster();
    if (cure.to() == null) {
      return address;
    }
    boolean said = card.adjuster(cure.adjuster()).map(a -> a.setting() != null).orElse(false);
    String to = "?to=" + encoded(cure.to());
    return address + to + (said ? "" : "&from=" + encoded(cure.from()));
  }

  /** Where an adjuster is set, with nothing typed yet. */
  public static String adjuster(Card card, InForce inForce) {
    return "/corners/" + card.corner() + "/adjustments/" + inForce.adjuster().adjuster();
  }

  private static String encoded(Setting setting) {
    return URLEncoder.encode(setting.typed(), StandardCharsets.UTF_8);
  }
}
