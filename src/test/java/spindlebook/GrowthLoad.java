package spindlebook;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import spindlebook.figures.Figures;
import spindlebook.fold.CarBook;
import spindlebook.log.BookFile;
import spindlebook.log.CarsOfFile;
import spindlebook.measured.AlignedCheck;

/**
 * How the time of everything grows with the book: at n entries, at 8 n, and how many times that is.
 * Not a test: how to run it stands in docs/benchmarks.md.
 */
final class GrowthLoad {
  private static final String CAR = "/cars/marmot";
  private static final String CORNER = "/corners/marmot-lf";
  private static final List<String> PAGES =
      List.of(
          CAR,
          CORNER,
          CORNER + "/limits",
          CORNER + "/life",
          CORNER + "/curves",
          CORNER + "/curves?of=toe",
          CORNER + "/alignment",
          CORNER + "/rounds",
          CORNER + "/print",
          CORNER + "/adjustments/limit-strap",
          CORNER + "/trial",
          "/rounds/lf-1",
          "/rounds/lf-1/guide",
          "/heights/lf-1-off",
          CAR + "/book",
          CAR + "/drive-check",
          CAR + "/sides",
          CAR + "/fasteners",
          CAR + "/settings",
          CAR + "/re-check",
          CAR + "/sign-offs",
          CAR + "/compare",
          CAR + "/put-back",
          "/sign-offs/sign-off-1/since",
          "/entries/lf-1-off");

  private static final OperatingSystemMXBean MACHINE =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private final Map<String, Double> millis = new LinkedHashMap<>();

  private GrowthLoad() {}

  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory(Path.of(arguments[0]), "growth");
    int n = Integer.parseInt(arguments[1]);
    int times = Integer.parseInt(arguments[2]);
    SeasonsBook seasons = new SeasonsBook(folder.resolve("season"));
    // Once for the compiler, so that the small book is not measured cold.
    new GrowthLoad().run(folder.resolve("warm"), seasons, n);
    GrowthLoad small = new GrowthLoad();
    GrowthLoad large = new GrowthLoad();
    small.run(folder.resolve("small"), seasons, n);
    large.run(folder.resolve("large"), seasons, n * times);
    System.out.printf(Locale.ROOT, "| ms | %d | %d | times |%n|---|---|---|---|%n", n, n * times);
    small.millis.forEach(
        (what, ms) ->
            System.out.printf(
                Locale.ROOT,
                "| %s | %.1f | %.1f | %.1f |%n",
                what,
                ms,
                large.millis.get(what),
                large.millis.get(what) / Math.max(ms, 10)));
  }

  private void run(Path folder, SeasonsBook seasons, int entries) throws Exception {
    seasons.write(folder, entries);
    Path log = folder.resolve("book.jsonl");
    List<BookFile.Contents> read = new ArrayList<>();
    time("read the file", () -> read.add(BookFile.read(log)));
    List<CarBook> cars = new ArrayList<>();
    time("car's book", () -> cars.addAll(CarsOfFile.of(read.get(0)).values()));
    CarBook car = cars.get(0);
    time("fold, four corners", () -> car.corners().stream().map(car::card).toList());
    time("findings", () -> AlignedCheck.of(car));
    time("figures", () -> Figures.of(log, told -> {}));
    time("index built anew", () -> rebuilt(folder));
    read.clear();
    List<Shop> open = new ArrayList<>();
    time("start", () -> open.add(new Shop(folder)));
    try (Shop shop = open.get(0)) {
      for (String page : PAGES) {
        time(
            page + (page.equals(PAGES.get(0)) ? ", the first after a start" : ""),
            () -> get(shop, page));
        if (again(page)) {
          time(page + ", unchanged", () -> get(shop, page));
        }
      }
      String round =
          Marmot.send(shop.get(CORNER + "/rounds/new"), CORNER + "/rounds", Map.of("who", "Sam"))
              .location()
              .replaceAll("^/rounds/|/guide$", "");
      sent(shop.browser, round, "warm", 160);
      millis.put("a save from an outbox, p50", sent(shop.browser, round, "one", 161));
      time("car after 321 saves", () -> get(shop, CAR));
      time("life after 161 saves", () -> get(shop, CORNER + "/life"));
      sent(shop.browser, round, "more", 1);
      time("life after a save", () -> get(shop, CORNER + "/life"));
      sent(shop.browser, round, "last", 1);
      time("car after a save", () -> get(shop, CAR));
      millis.put("raw forced append, p50", raw(folder.resolve("raw")));
      millis.put("eight phones, for each save of all", phones(shop, round, 8));
      millis.put("one phone, for each save", phones(shop, round, 1));
      time("the round of all that", () -> get(shop, "/rounds/" + round));
    }
    System.gc();
    Runtime memory = Runtime.getRuntime();
    System.err.printf(
        "%d entries: %d MB%n", entries, memory.totalMemory() - memory.freeMemory() >> 20);
  }

  private static boolean again(String page) {
    return page.equals(CAR)
        || page.startsWith(CORNER)
        || page.contains("drive-check")
        || page.endsWith("/book");
  }

  private static Object rebuilt(Path folder) {
    App.rebuild(folder, 0, told -> {});
    return "";
  }

  private static Object get(Shop shop, String page) {
    return shop.get(page).is(200);
  }

  /** Milliseconds for each save of phones that send at the same time. */
  private static double phones(Shop shop, String round, int phones) throws Exception {
    int each = 80;
    List<Browser> browsers = new ArrayList<>();
    for (int i = 0; i < phones; i++) {
      browsers.add(shop.as("phone " + i));
    }
    List<Thread> senders = new ArrayList<>();
    long start = System.nanoTime();
    for (int i = 0; i < phones; i++) {
      String of = phones + "-" + i;
      Browser browser = browsers.get(i);
      Thread sender = new Thread(() -> sent(browser, round, of, each));
      sender.start();
      senders.add(sender);
    }
    for (Thread sender : senders) {
      sender.join();
    }
    return (System.nanoTime() - start) / 1e6 / phones / each;
  }

  private static double sent(Browser browser, String round, String prefix, int many) {
    double[] each = new double[many];
    for (int i = 0; i < many; i++) {
      Map<String, String> body = new LinkedHashMap<>();
      body.put("after", "0");
      body.put("key", round + "-" + prefix + "-" + i);
      if (i % 8 == 0) {
        body.putAll(Map.of("what", "height", "name", "in-between", "label", "at " + i));
        body.putAll(Map.of("spindle", (15 + i / 8) + " 1/4", "mark", "30 1/4"));
      } else {
        body.putAll(Map.of("what", "reading", "height", round + "-" + prefix + "-" + i / 8 * 8));
        body.putAll(Map.of("steering", "straight", "row", "p-tie-rod-upper-arm", "value", "5/8"));
      }
      long start = System.nanoTime();
      browser.post("/rounds/" + round + "/sent", body).is(200);
      each[i] = (System.nanoTime() - start) / 1e6;
    }
    Arrays.sort(each);
    return each[many / 2];
  }

  private static double raw(Path file) throws IOException {
    double[] each = new double[41];
    try (FileChannel out =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      for (int i = 0; i < each.length; i++) {
        long start = System.nanoTime();
        out.write(java.nio.ByteBuffer.allocate(300));
        out.force(false);
        each[i] = (System.nanoTime() - start) / 1e6;
      }
    }
    Arrays.sort(each);
    return each[each.length / 2];
  }

  /** Processor time of all threads: what else the machine does hardly shows in it. */
  private void time(String what, Callable<?> work) throws Exception {
    long start = MACHINE.getProcessCpuTime();
    work.call();
    double ms = (MACHINE.getProcessCpuTime() - start) / 1e6;
    millis.put(what, ms);
    System.err.printf(Locale.ROOT, "  %s: %.0f ms%n", what, ms);
  }
}
