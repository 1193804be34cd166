package spindlebook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;

/**
 * The network between one phone and the book, as bad as a seed makes it: what the outbox sends is
 * dropped, delayed, sent twice, held back until later ones are through, or loses its answer after
 * the book has it. Pages come through as they are.
 */
final class BadLink implements AutoCloseable {
  /** One request in so many gets no answer and no hang-up either. */
  private static final int SILENT = 120;

  private final ServerSocket door;
  private final ExecutorService each = Executors.newCachedThreadPool();
  private final Random random;
  private final List<Held> held = new ArrayList<>();
  private volatile int book;
  private volatile boolean bad;
  private volatile boolean loseAnswers;

  final AtomicInteger sent = new AtomicInteger();
  final AtomicInteger dropped = new AtomicInteger();
  final AtomicInteger delayed = new AtomicInteger();
  final AtomicInteger doubled = new AtomicInteger();
  final AtomicInteger reordered = new AtomicInteger();
  final AtomicInteger lost = new AtomicInteger();

  /** Waits until this many later ones are through. */
  private record Held(String head, byte[] body, int after) {}

  private record Asked(String head, byte[] body) {
    boolean ofOutbox() {
      return head.startsWith("POST /rounds/") && head.split(" ", 3)[1].endsWith("/sent");
    }
  }

  BadLink(long seed, int book) throws IOException {
    this.random = new Random(seed);
    this.book = book;
    this.door = new ServerSocket(0, 200, InetAddress.getLoopbackAddress());
    each.execute(this::open);
  }

  int port() {
    return door.getLocalPort();
  }

  /** Where the book listens now. */
  void leadsTo(int port) {
    book = port;
  }

  void bad(boolean now) {
    bad = now;
  }

  /** Whether the book gets all the outbox sends and the phone no answer. */
  void loseAnswers(boolean now) {
    loseAnswers = now;
  }

  private void open() {
    while (!door.isClosed()) {
      try {
        Socket phone = door.accept();
        each.execute(() -> serve(phone));
      } catch (IOException closed) {
        return;
      }
    }
  }

  private void serve(Socket phone) {
    try (phone) {
      Asked asked = read(phone.getInputStream());
      if (asked == null) {
        return;
      }
      if (loseAnswers && asked.ofOutbox()) {
        forward(asked.head, asked.body);
        return;
      }
      byte[] answer = bad && asked.ofOutbox() ? badly(asked) : forward(asked.head, asked.body);
      phone.getOutputStream().write(answer);
      phone.getOutputStream().flush();
    } catch (IOException gone) {
      // The book is down or the phone has hung up; the phone sees a broken connection.
    }
  }

  /** The answer for the phone; an exception hangs up on it. */
  private byte[] badly(Asked asked) throws IOException {
    double fate;
    long waitMillis;
    synchronized (random) {
      fate = random.nextDouble();
      waitMillis = 30 + random.nextInt(250);
    }
    if (sent.incrementAndGet() % SILENT == SILENT / 2) {
      lost.incrementAndGet();
      forward(asked.head, asked.body);
      sleep(9000);
      throw new IOException("silent");
    }
    if (fate < 0.05) {
      dropped.incrementAndGet();
      throw new IOException("dropped");
    }
    if (fate < 0.10) {
      synchronized (held) {
        held.add(new Held(asked.head, asked.body, sent.get() + 2));
      }
      throw new IOException("held back");
    }
    if (fate < 0.15) {
      lost.incrementAndGet();
      forward(asked.head, asked.body);
      throw new IOException("its answer was lost");
    }
    if (fate < 0.21) {
      doubled.incrementAndGet();
      each.execute(() -> late(asked.head, asked.body));
    } else if (fate < 0.31) {
      delayed.incrementAndGet();
      sleep(waitMillis);
    }
    byte[] answer = forward(asked.head, asked.body);
    release(sent.get());
    return answer;
  }

  private void release(int now) {
    List<Held> due = new ArrayList<>();
    synchronized (held) {
      for (Iterator<Held> all = held.iterator(); all.hasNext(); ) {
        Held one = all.next();
        if (one.after <= now) {
          due.add(one);
          all.remove();
        }
      }
    }
    for (Held one : due) {
      reordered.incrementAndGet();
      late(one.head, one.body);
    }
  }

  /** Brings what is still held back to the book, last of all. */
  void releaseAll() {
    release(Integer.MAX_VALUE);
  }

  private void late(String head, byte[] body) {
    try {
      forward(head, body);
    } catch (IOException down) {
      // As if it had been dropped.
    }
  }

  private byte[] forward(String head, byte[] body) throws IOException {
    String here = "127.0.0.1:" + book;
    String there =
        head.replaceFirst("(?im)^Host:.*$", "Host: " + here)
            .replaceFirst("(?im)^Origin:.*$", "Origin: http://" + here)
            .replaceFirst("(?im)^Connection:.*$", "Connection: close");
    try (Socket server = new Socket(InetAddress.getLoopbackAddress(), book)) {
      server.setSoTimeout((int) Duration.ofSeconds(20).toMillis());
      server.getOutputStream().write(there.getBytes(StandardCharsets.ISO_8859_1));
      server.getOutputStream().write(body);
      server.getOutputStream().flush();
      byte[] answer = server.getInputStream().readAllBytes();
      if (answer.length == 0) {
        throw new IOException("the book said nothing");
      }
      return answer;
    }
  }

  /** A request whole, or null when the phone only opened a connection. */
  private static Asked read(InputStream in) throws IOException {
    ByteArrayOutputStream head = new ByteArrayOutputStream();
    int end = 0;
    while (end < 4) {
      int b = in.read();
      if (b < 0) {
        return null;
      }
      head.write(b);
      boolean next = end % 2 == 0 ? b == '\r' : b == '\n';
      end = next ? end + 1 : b == '\r' ? 1 : 0;
    }
    String text = head.toString(StandardCharsets.ISO_8859_1);
    int length =
        text.lines()
            .filter(l -> l.toLowerCase(java.util.Locale.ROOT).startsWith("content-length:"))
            .mapToInt(l -> Integer.parseInt(l.substring(l.indexOf(':') + 1).strip()))
            .findFirst()
            .orElse(0);
    byte[] body = in.readNBytes(length);
    return body.length < length ? null : new Asked(text, body);
  }

  private static void sleep(long millis) {
    LockSupport.parkNanos(Duration.ofMillis(millis).toNanos());
  }

  @Override
  public void close() throws IOException {
    door.close();
    each.shutdownNow();
  }
}
