package spindlebook.device;

import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.web.Field;
import spindlebook.web.Hosts;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.ProblemPage;
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

  public void ask(Context ctx) {
    showAsk(ctx, new Posted(Map.of()));
  }

  private static void showAsk(Context ctx, Posted posted) {
    Field field =
        Field.of("code", "The code").hint("Eight letters and figures; capitals or not.").focused();
    PageFrame frame = PageFrame.of("Pair this device · Spindlebook", "Pair this device");
    ctx.status(posted.ok() ? 200 : 422);
    Html.show(ctx, Html.TEMPLATES.deviceCode(frame, posted.fill(field)));
  }

  /** The short code leads to the same page as the link; that page pairs. */
  public void typed(Context ctx) {
    if (!tries.take(ctx.req().getRemoteAddr()) || !allTries.take("all")) {
      Html.problem(ctx, TOO_MANY_TRIES);
      return;
    }
    Posted posted = Html.posted(ctx);
    Optional<Code> code = codes.typed(posted.text("code"));
    if (code.isPresent()) {
      Html.next(ctx, code.get().path());
      return;
    }
    posted.wrong(
        "code", "No code that is open reads like this; each is good for five minutes and once.");
    showAsk(ctx, posted);
  }

  /** Only asks: what opens links by itself, to show what is behind them, uses nothing up. */
  public void offered(Context ctx) {
    Optional<Code> code = codes.ofLink(ctx.pathParam("code"));
    if (code.isPresent()) {
      String name = usual(ctx.userAgent());
      showOffered(ctx, code.get(), new Posted(Map.of("name", List.of(name))));
    } else {
      gone(ctx);
    }
  }

  private void showOffered(Context ctx, Code code, Posted posted) {
    PageFrame frame =
        PageFrame.of("Pair this device · Spindlebook", "Pair this device")
            .sub(
                code.keeps()
                    ? "It will keep the book: read and write it, and pair others."
                    : "It may only look: read the book and write nothing.");
    Field field = Field.of("name", "Called").hint("So that you know it in the list of devices.");
    ctx.header("Cache-Control", "no-store");
    ctx.status(posted.ok() ? 200 : 422);
    Paired own = Door.device(ctx);
    String warning =
        own == null || !own.keeps() || code.keeps()
            ? ""
            : "This device keeps the book now. Pair it here and it may only look. "
                + DevicePages.ifLast(devices, own);
    Html.show(
        ctx, Html.TEMPLATES.devicePair(frame, code.path(), posted.fill(field), warning.strip()));
  }

  private static String usual(String userAgent) {
    return userAgent != null && userAgent.contains("Mobile") ? "phone" : "computer";
  }

  public void pair(Context ctx) {
    String link = ctx.pathParam("code");
    Posted posted = Html.posted(ctx);
    String name = DeviceName.read(posted);
    Optional<Code> shown = codes.ofLink(link);
    if (shown.isPresent() && name == null) {
      showOffered(ctx, shown.get(), posted);
      return;
    }
    Optional<Code> code = codes.take(link);
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
