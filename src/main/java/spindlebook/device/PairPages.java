package spindlebook.device;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.Optional;
import spindlebook.page.Asked;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.ProblemPage;
import spindlebook.units.LengthUnit;
import spindlebook.web.Hosts;
import spindlebook.web.RateLimit;

/** How a device gets its place: a code, a name, a button. */
public final class PairPages {
  private static final int A_YEAR_SECONDS = 365 * 24 * 3600;

  /** Tries at the short code: a few at once for a slip, then one in ten seconds. */
  private static final int TRIES = 6;

  private static final double TRIES_A_SECOND = 0.1;

  /** All addresses together, for those who take many. */
  private static final int ALL_TRIES = 60;

  private static final double ALL_TRIES_A_SECOND = 0.5;

  private static final ProblemPage TOO_MANY_TRIES =
      new ProblemPage(
          429,
          "Too many codes tried",
          "Wait a minute before the next one, or open the link with the square code instead.");

  private final Devices devices;
  private final Codes codes;
  private final Hosts hosts;
  private final RateLimit tries;
  private final RateLimit allTries;

  public PairPages(Devices devices, Codes codes, Hosts hosts, Clock clock) {
    this.devices = devices;
    this.codes = codes;
    this.hosts = hosts;
    this.tries = new RateLimit(TRIES, TRIES_A_SECOND, clock);
    this.allTries = new RateLimit(ALL_TRIES, ALL_TRIES_A_SECOND, clock);
  }

  /** The short code leads to the same page as the link; that page pairs. */
  public void ask(Context ctx) {
    Asked a = Asked.of(ctx, LengthUnit.INCH, 0);
    if (a.sent() && (!tries.take(ctx.req().getRemoteAddr()) || !allTries.take("all"))) {
      Html.problem(ctx, TOO_MANY_TRIES);
      return;
    }
    Code code =
        a.typed("code", "The code", text -> codes.typed(text).orElse(null))
            .hint("Eight letters and figures; capitals or not.")
            .focused()
            .needed(
                "No code that is open reads like this; each is good for five minutes and once.");
    if (a.ok()) {
      Html.next(ctx, code.path());
      return;
    }
    PageFrame frame = PageFrame.of("Pair this device · Spindlebook", "Pair this device");
    a.show(ctx, Html.TEMPLATES.deviceCode(frame, a.parts()));
  }

  private void showOffered(Context ctx, Code code, Asked a) {
    PageFrame frame =
        PageFrame.of("Pair this device · Spindlebook", "Pair this device")
            .sub(
                code.keeps()
                    ? "It will keep the book: read and write it, and pair others."
                    : "It may only look: read the book and write nothing.");
    ctx.header("Cache-Control", "no-store");
    Paired own = Door.device(ctx);
    String warning =
        own == null || !own.keeps() || code.keeps()
            ? ""
            : "This device keeps the book now. Pair it here and it may only look. "
                + DevicePages.ifLast(devices, own);
    a.show(ctx, Html.TEMPLATES.devicePair(frame, code.path(), a.parts(), warning.strip()));
  }

  private static String usual(String userAgent) {
    return userAgent != null && userAgent.contains("Mobile") ? "phone" : "computer";
  }

  /** Showing it only asks: what opens links by itself, to see what is there, uses nothing up. */
  public void pair(Context ctx) {
    String link = ctx.pathParam("code");
    Asked a = Asked.of(ctx, LengthUnit.INCH, 0);
    String name =
        DeviceName.ask(a, "So that you know it in the list of devices.", usual(ctx.userAgent()));
    Optional<Code> shown = codes.ofLink(link);
    if (shown.isPresent() && !a.ok()) {
      showOffered(ctx, shown.get(), a);
      return;
    }
    Optional<Code> code = a.ok() ? codes.take(link) : Optional.empty();
    if (code.isEmpty()) {
      gone(ctx);
      return;
    }
    setCookie(ctx, pair(code.get(), name));
    Paired before = Door.device(ctx);
    if (before != null) {
      devices.revoke(before.id());
    }
    Html.next(ctx, "/");
  }

  private String pair(Code code, String name) {
    try {
      return devices.pair(name, code.keeps());
    } catch (DevicesRefused refused) {
      codes.putBack(code);
      throw refused;
    }
  }

  /** By seconds and not by a date: a phone whose own clock is wrong keeps it all the same. */
  private void setCookie(Context ctx, String token) {
    String secure = hosts.secure(ctx.header("Host")) ? "; Secure" : "";
    ctx.res()
        .addHeader(
            "Set-Cookie",
            Door.COOKIE
                + "="
                + token
                + "; Path=/; Max-Age="
                + A_YEAR_SECONDS
                + "; HttpOnly; SameSite=Strict"
                + secure);
  }

  private static void gone(Context ctx) {
    Html.show(ctx.status(410), Html.TEMPLATES.deviceUnpaired(Unpaired.NO_SUCH_CODE));
  }
}
