package spindlebook.device;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;
import spindlebook.log.Sender;
import spindlebook.page.Html;
import spindlebook.page.ProblemPage;
import spindlebook.web.RateLimit;

/**
 * Lets paired devices in, and those that may only look no further than that. The machine the book
 * runs on is no exception: its browser is paired like any other.
 */
public final class Door {
  static final String COOKIE = "device";
  private static final String DEVICE = "device";

  /** A page with all it loads is a dozen, an outbox that empties itself twenty a second. */
  private static final int AT_ONCE = 400;

  private static final double A_SECOND = 40;

  private static final long PATIENCE_SECONDS = 5;

  private final Devices devices;
  private final Map<String, Lock> atWork = new ConcurrentHashMap<>();
  private final RateLimit requests;
  private final ThreadLocal<Sender> sender = ThreadLocal.withInitial(() -> Sender.ITSELF);

  public Door(Devices devices, Clock clock) {
    this.devices = devices;
    this.requests = new RateLimit(AT_ONCE, A_SECOND, clock);
  }

  /** Before every request: afterwards it is known whose it is, or it has been answered. */
  public void before(Context ctx) {
    Paired device = Optional.ofNullable(ctx.cookie(COOKIE)).flatMap(devices::byToken).orElse(null);
    sender.set(device == null ? NOBODY : device.sender());
    ctx.attribute(DEVICE, device);
    String caller = device == null ? "from " + ctx.req().getRemoteAddr() : device.id();
    if (!requests.take(caller)) {
      ctx.header("Retry-After", "1");
      answer(
          ctx,
          new ProblemPage(
              429, "Too many at once", "Too much was asked for in a moment; wait a little."));
    } else if (!open(ctx)) {
      mayEnter(ctx, device);
    }
  }

  private void mayEnter(Context ctx, Paired device) {
    if (device == null) {
      Html.show(ctx.status(401), Html.TEMPLATES.deviceUnpaired(Unpaired.PAGE));
      ctx.skipRemainingHandlers();
      return;
    }
    devices.here(device);
    boolean looks = ctx.method().equals(HandlerType.GET) || ctx.method().equals(HandlerType.HEAD);
    if (!looks && !device.keeps()) {
      answer(ctx, ONLY_LOOKS);
    }
  }

  /** A page that may take its time: of those a device gets one after the other. */
  public Handler oneAtATime(Handler page) {
    return ctx -> {
      Lock turn = atWork.computeIfAbsent(device(ctx).id(), id -> new ReentrantLock());
      if (!turn.tryLock(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        ctx.header("Retry-After", String.valueOf(PATIENCE_SECONDS));
        Html.problem(ctx, ONE_AT_A_TIME);
        return;
      }
      try {
        page.handle(ctx);
      } finally {
        turn.unlock();
      }
    };
  }

  private static final ProblemPage ONE_AT_A_TIME =
      new ProblemPage(
          429,
          "One at a time",
          "A page like this is still being worked out for this device; ask again in a moment.");

  private static final Sender NOBODY = new Sender(null, false);

  private static final ProblemPage ONLY_LOOKS =
      new ProblemPage(
          403,
          "This device may only look",
          "Nothing was written; use a device that keeps the book, or pair this one anew.");

  private static void answer(Context ctx, ProblemPage problem) {
    Html.problem(ctx, problem);
    ctx.skipRemainingHandlers();
  }

  private static boolean open(Context ctx) {
    String path = ctx.path();
    return path.equals("/pair")
        || path.startsWith("/pair/")
        || path.startsWith("/static/")
        || path.equals("/healthz") && here(ctx.req().getRemoteAddr());
  }

  /** Whether a caller is on the machine the book runs on. */
  static boolean here(String address) {
    try {
      return InetAddress.getByName(address).isLoopbackAddress();
    } catch (UnknownHostException nowhere) {
      return false;
    }
  }

  /** The device a request comes from; null where none is needed and there is none. */
  static Paired device(Context ctx) {
    return ctx.attribute(DEVICE);
  }

  /** Whether it keeps the book, or may only look. */
  public static boolean keeps(Context ctx) {
    return device(ctx).keeps();
  }

  /** Whose request this thread answers. */
  public Sender sender() {
    return sender.get();
  }
}
