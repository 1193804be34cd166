package spindlebook.web;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** Who writes, as this browser last said; it describes and proves nothing. */
public final class Who {
  private static final String COOKIE = "who";
  private static final int A_YEAR_SECONDS = 365 * 24 * 3600;
  public static final String NOBODY_SAID = "owner";
  public static final int LONGEST = 40;

  private Who() {}

  public static String of(Context ctx) {
    String cookie = ctx.cookie(COOKIE);
    if (cookie == null || cookie.isBlank()) {
      return NOBODY_SAID;
    }
    try {
      String who = URLDecoder.decode(cookie, StandardCharsets.UTF_8).strip();
      return who.isEmpty() || who.length() > LONGEST ? NOBODY_SAID : who;
    } catch (IllegalArgumentException e) {
      return NOBODY_SAID;
    }
  }

  public static void remember(Context ctx, String who) {
    Cookie cookie = new Cookie(COOKIE, URLEncoder.encode(who, StandardCharsets.UTF_8));
    cookie.setMaxAge(A_YEAR_SECONDS);
    cookie.setHttpOnly(true);
    cookie.setSameSite(io.javalin.http.SameSite.STRICT);
    ctx.cookie(cookie);
  }
}
