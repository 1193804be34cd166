package spindlebook.web;

import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.eclipse.jetty.io.EofException;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.Server;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import spindlebook.page.Html;

/** What holds of every request, whatever page it is for: bounds, forms only, and what is said. */
public final class Manners {
  private static final Logger LOG = LoggerFactory.getLogger(Manners.class);
  private static final int MOST_CONNECTIONS = 200;

  /** How long an idle connection may stay once there are so many. */
  private static final long CROWDED_IDLE_MILLIS = 1000;

  private static final long MOST_BYTES = 256 * 1024;
  private static final long MOST_READ_ON_BYTES = 4 * 1024 * 1024;

  /** The one address that takes a file. */
  private static final Pattern WITH_FILES = Pattern.compile("/corners/[^/]+/(photos|linkage/file)");

  /** As browsers send them; another alphabet is not asked for by any page. */
  private static final Pattern FORM =
      Pattern.compile("(?i)application/x-www-form-urlencoded\\s*(;\\s*charset=\"?utf-8\"?\\s*)?");

  private static final Pattern FILES = Pattern.compile("(?i)multipart/form-data\\b(?!.*charset).*");

  private static final int MOST_PHOTO_MB = 12;
  private static final long MOST_PHOTO_BYTES = MOST_PHOTO_MB * 1024 * 1024 + MOST_BYTES;
  private static final long MOST_PHOTO_READ_ON_BYTES = 48 * 1024 * 1024;

  /** A round of all that a corner of many watch points needs has some 100 bytes for each. */
  private static final int MOST_ADDRESS_BYTES = 32 << 10;

  private Manners() {}

  /**
   * @param outermost lets requests in while the program is not stopping
   */
  public static void of(
      JavalinConfig config, Listening listening, Hosts hosts, Handler.Wrapper outermost) {
    config.startup.showJavalinBanner = false;
    config.jetty.host = listening.bind();
    config.jetty.port = listening.port();
    config.jetty.timeoutStatus = 408;
    config.jetty.modifyServer(jetty -> guard(jetty, hosts, outermost));
    config.jetty.modifyServletContextHandler(context -> context.setErrorHandler(new ErrorPages()));
    config.jetty.modifyHttpConfiguration(
        http -> {
          http.setSendServerVersion(false);
          http.setRequestHeaderSize(MOST_ADDRESS_BYTES);
        });
    config.http.maxRequestSize = MOST_BYTES;
    config.jetty.multipartConfig.maxFileSize(MOST_PHOTO_MB, SizeUnit.MB);
    config.jetty.multipartConfig.maxTotalRequestSize(MOST_PHOTO_MB + 1, SizeUnit.MB);
    config.jetty.multipartConfig.maxInMemoryFileSize(64, SizeUnit.KB);
    config.http.prefer405over404 = true;
  }

  /** A page of ours for whatever no page has answered. */
  public static void answers(RoutesConfig routes) {
    routes.exception(HttpResponseException.class, (e, ctx) -> show(ctx, e.getStatus()));
    // Whoever sent it hung up half way.
    routes.exception(EofException.class, (e, ctx) -> show(ctx, 400));
    routes.exception(Exception.class, Manners::broken);
    for (int status : List.of(400, 403, 404, 405, 408, 413, 415)) {
      routes.error(status, ctx -> show(ctx, status));
    }
  }

  private static void guard(Server jetty, Hosts hosts, Handler.Wrapper outermost) {
    jetty.setErrorHandler(new ErrorPages());
    NetworkConnectionLimit connections = new NetworkConnectionLimit(MOST_CONNECTIONS, jetty);
    connections.setEndPointIdleTimeout(CROWDED_IDLE_MILLIS);
    jetty.addBean(connections);
    Guard guard = new Guard(hosts);
    guard.setHandler(new SlowSender());
    outermost.setHandler(guard);
    jetty.setHandler(outermost);
  }

  /** What is sent comes from a form of ours; anything else is refused before it is read. */
  public static void onlyForms(Context ctx) {
    if (!ctx.method().equals(HandlerType.POST)) {
      return;
    }
    String type = Objects.requireNonNullElse(ctx.header("Content-Type"), "");
    boolean photo = takesFiles(ctx) && FILES.matcher(type).matches();
    if (!photo && !FORM.matcher(type).matches()) {
      throw new HttpResponseException(415, "");
    }
    if (ctx.req().getContentLengthLong() > (photo ? MOST_PHOTO_BYTES : MOST_BYTES)) {
      throw new HttpResponseException(413, "");
    }
  }

  private static boolean takesFiles(Context ctx) {
    return WITH_FILES.matcher(ctx.path()).matches();
  }

  private static void show(Context ctx, int status) {
    if (status == 413) {
      readOn(ctx);
    }
    Html.problem(ctx, Problems.of(status));
  }

  /**
   * Reads on what is still being sent, up to a bound, and throws it away. A browser sends its whole
   * form before it reads the answer: hung up on while it sends, it shows a broken connection and
   * not the page that says what is wrong.
   */
  private static void readOn(Context ctx) {
    byte[] away = new byte[8192];
    try {
      InputStream sent = ctx.req().getInputStream();
      long read = 0;
      int some = 0;
      long most = takesFiles(ctx) ? MOST_PHOTO_READ_ON_BYTES : MOST_READ_ON_BYTES;
      while (some >= 0 && read < most) {
        some = sent.read(away);
        read += some;
      }
    } catch (IOException gone) {
      LOG.debug("nobody is there any more to be told that it was too much", gone);
    }
  }

  private static void broken(Exception e, Context ctx) {
    // The route and not the path, which may hold a one-time code.
    LOG.error("{} {} failed{}", ctx.method(), ctx.endpoint().path, where(e));
    Html.problem(ctx, Problems.of(500));
  }

  /** What failed and where, without messages: they may hold what somebody typed. */
  public static String where(Throwable e) {
    StringBuilder where = new StringBuilder();
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      where.append("\n").append(cause.getClass().getName());
      for (StackTraceElement at : cause.getStackTrace()) {
        where.append("\n\tat ").append(at);
      }
    }
    return where.toString();
  }
}
