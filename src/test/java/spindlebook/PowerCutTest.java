package spindlebook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.backup.Commands;
import spindlebook.device.Devices;
import spindlebook.log.Book;
import spindlebook.log.Draft;
import spindlebook.log.Json;

/**
 * The power goes while the program works, at any moment, and the disk keeps what it was told to
 * keep and any part of the rest. {@code -Dcuts=1200} tries so many moments.
 */
class PowerCutTest {
  private static final int CUTS = Integer.getInteger("cuts", 16);
  private static final String DATA = "garage/data";
  private static final String INDEX = DATA + "/index.mv.db";

  @TempDir Path temp;
  private WatchedDisk disk;
  private Shop shop;
  private String left;
  private final Random random = new Random(Long.getLong("seed", 11));
  private int made;
  private long answers;

  static byte[] jpeg(Color colour) throws IOException {
    BufferedImage image = new BufferedImage(64, 48, BufferedImage.TYPE_INT_RGB);
    image.setRGB(1, 1, colour.getRGB());
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "jpeg", bytes);
    return bytes.toByteArray();
  }

  private Path data() {
    return disk.root().resolve(DATA);
  }

  static Draft note(String key) {
    return new Draft(
        key,
        "note",
        1,
        0,
        "Sam",
        null,
        null,
        Json.MAPPER.createObjectNode().put("text", key).put("fill", "x".repeat(700)));
  }

  /** One sender at a time: all that is in the book now was answered for. */
  private void answered() throws IOException {
    disk.told("book " + Files.size(data().resolve("book.jsonl")));
    disk.noteIndex(data().resolve("index.mv.db"));
  }

  private void open() throws IOException {
    shop = new Shop(data());
    disk.told("device Sam's phone");
    disk.told("generation " + shop.app().bookFile.generation());
    answered();
  }

  private void photo(Color colour) throws IOException {
    String photos = "/corners/" + left + "/photos";
    Form form = shop.get(photos).is(200).form(photos);
    PhotosTest.send(shop.browser, photos, form, jpeg(colour)).is(303);
    answered();
  }

  /** Three at once, so that some share a force; each is in the book once it was told so. */
  private void threeSenders(String name) throws Exception {
    List<Thread> senders = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      String sender = name + "-" + i + "-";
      senders.add(
          new Thread(
              () -> {
                for (int n = 0; n < 4; n++) {
                  shop.app().bookFile.append(List.of(note(sender + n), note(sender + n + "-too")));
                  disk.told("key " + sender + n);
                }
              }));
    }
    senders.forEach(Thread::start);
    for (Thread sender : senders) {
      sender.join();
    }
    answered();
  }

  private void backup() throws IOException {
    assertEquals(0, Commands.backup(data(), null, Clock.systemUTC(), told -> {}));
    disk.told("backup");
  }

  /** From a folder that is not there yet to a book that was closed, opened and written on. */
  private void evening() throws Exception {
    open();
    Marmot marmot = new Marmot(shop);
    left = marmot.left;
    answered();
    marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    answered();
    photo(Color.RED);
    threeSenders("early");
    backup();
    shop.as("Kim");
    disk.told("device Kim's phone");
    shop.close();
    answered();
    open();
    String kim =
        shop.get("/devices")
            .is(200)
            .html()
            .replaceFirst("(?s).*\"/devices/(d-[a-z0-9]+)\">Kim.*", "$1");
    disk.told("leaving Kim's phone");
    shop.get("/devices/" + kim).is(200).form("/devices/" + kim + "/revoke").send().is(303);
    disk.told("gone Kim's phone");
    photo(Color.GREEN);
    threeSenders("late");
    backup();
    shop.close();
  }

  @Test
  void nothing_that_was_answered_is_lost_wherever_the_power_goes() throws Exception {
    disk = new WatchedDisk(Files.createDirectory(temp.resolve("disk")));
    evening();
    Path lived = disk.realRoot;
    List<WatchedDisk.Op> ops = disk.ops();
    cutInEach(ops, 0, CUTS / 2, bytes());
    // The program is killed first, and goes on with what was never waited for.
    int lives = Math.max(1, CUTS / 40);
    for (int life = 0; life < lives; life++) {
      int at = killedAt(ops);
      Path folder = Files.createDirectory(temp.resolve("life-" + life));
      AfterCut.makeKilled(ops.subList(0, at), folder);
      disk = new WatchedDisk(folder);
      disk.takeIn(ops.subList(0, at));
      anotherLife();
      cutInEach(disk.ops(), at, CUTS / 4 / lives, bytes());
      clear(folder);
    }
    restored(lived, CUTS / 4);
    broughtIn(lived, Math.max(4, CUTS / 8));
    System.out.printf("power cuts: %d tried, %d answers held, lost 0, corrupt 0%n", made, answers);
  }

  private byte[] bytes() throws IOException {
    return Files.readAllBytes(data().resolve("book.jsonl"));
  }

  private void cutInEach(List<WatchedDisk.Op> ops, int from, int cuts, byte[] whole)
      throws IOException {
    for (int i = 0; i < cuts; i++) {
      int at = from + random.nextInt(ops.size() + 1 - from);
      long seed = random.nextLong();
      cut(ops.subList(0, at), seed, data -> comesBack(data, ops.subList(0, at), whole));
    }
  }

  /** Mostly where something was about to be waited for. */
  private int killedAt(List<WatchedDisk.Op> ops) {
    List<Integer> before = new ArrayList<>();
    for (int i = 0; i < ops.size(); i++) {
      if (ops.get(i) instanceof WatchedDisk.ForceFolder
          || ops.get(i) instanceof WatchedDisk.Force) {
        before.add(i);
      }
    }
    return before.get(random.nextInt(before.size()));
  }

  /** What was on its way when it was killed is sent again. */
  private void anotherLife() throws Exception {
    open();
    if (shop.app().bookFile.byKey(left).isPresent()) {
      photo(Color.RED);
      photo(Color.GREEN);
    }
    threeSenders("early");
    threeSenders("late");
    shop.close();
  }

  /** An older copy is put back; at any moment there is the one book or the other. */
  private void restored(Path lived, int cuts) throws Exception {
    Path data = lived.resolve(DATA);
    Path copy;
    try (Stream<Path> copies = Files.list(data.resolve("backups/books"))) {
      copy = copies.sorted().findFirst().orElseThrow();
    }
    byte[] older = Files.readAllBytes(copy);
    byte[] newer = Files.readAllBytes(data.resolve("book.jsonl"));
    assertTrue(older.length < newer.length);
    String generation;
    try (Book book = Book.open(data, Clock.systemUTC(), told -> {})) {
      generation = book.generation();
    }
    // One photo is gone, and one is damaged: both come back.
    List<Path> photos;
    try (Stream<Path> all = Files.list(data.resolve("photos"))) {
      photos = all.filter(f -> !f.toString().contains("small")).sorted().toList();
    }
    Files.delete(photos.get(0));
    disk = new WatchedDisk(lived);
    disk.takeIn();
    int before = disk.ops().size();
    Path from = data().resolve(data.relativize(copy).toString());
    assertEquals(0, Commands.restore(data(), from, false, Clock.systemUTC(), told -> {}));
    List<WatchedDisk.Op> ops = disk.ops();
    for (int i = 0; i < cuts; i++) {
      int at = before + random.nextInt(ops.size() + 1 - before);
      boolean done = at == ops.size();
      cut(
          ops.subList(0, at),
          random.nextLong(),
          folder -> {
            try (Book book = Book.open(folder, Clock.systemUTC(), told -> {})) {
              byte[] now = Files.readAllBytes(folder.resolve("book.jsonl"));
              boolean back = now.length == older.length;
              assertTrue(back || !done, "it was said to be back");
              assertArrayEquals(back ? older : newer, now);
              if (back) {
                assertNotEquals(generation, book.generation());
              }
            }
            List<String> wrong = wrong(folder);
            wrong.removeIf(said -> !done && said.contains("hoto"));
            assertEquals(List.of(), wrong);
          });
    }
  }

  /** Another book is brought in; cut off, it is brought in again, and each entry is there once. */
  private void broughtIn(Path lived, int cuts) throws Exception {
    Path other = temp.resolve("other");
    List<String> keys = new ArrayList<>();
    try (Shop theirs = new Shop(other)) {
      Marmot marmot = new Marmot(theirs);
      String photos = "/corners/" + marmot.left + "/photos";
      Form form = theirs.get(photos).is(200).form(photos);
      PhotosTest.send(theirs.browser, photos, form, jpeg(Color.BLUE)).is(303);
      theirs.app().bookFile.entries(1).forEach(entry -> keys.add(entry.key()));
    }
    byte[] before = Files.readAllBytes(lived.resolve(DATA).resolve("book.jsonl"));
    disk = new WatchedDisk(lived);
    disk.takeIn();
    int from = disk.ops().size();
    assertEquals(0, Commands.bringIn(data(), other, null, Clock.systemUTC(), told -> {}));
    List<WatchedDisk.Op> ops = disk.ops();
    for (int i = 0; i < cuts; i++) {
      int at = i == 0 ? ops.size() : from + random.nextInt(ops.size() + 1 - from);
      cut(
          ops.subList(0, at),
          random.nextLong(),
          folder -> {
            try (Book book = Book.open(folder, Clock.systemUTC(), told -> {})) {
              byte[] now = Files.readAllBytes(folder.resolve("book.jsonl"));
              assertArrayEquals(before, Arrays.copyOf(now, before.length));
              if (at == ops.size()) {
                assertTrue(keys.stream().allMatch(key -> book.byKey(key).isPresent()));
              }
            }
            assertEquals(List.of(), wrong(folder));
            Commands.bringIn(folder, other, null, Clock.systemUTC(), told -> {});
            List<String> all = Files.readAllLines(folder.resolve("book.jsonl"));
            for (String key : keys) {
              String named = "\"key\":\"" + key + "\"";
              assertEquals(1, all.stream().filter(line -> line.contains(named)).count(), key);
            }
            assertEquals(List.of(), wrong(folder));
          });
    }
  }

  /** What is wrong with a book that was put back: its last backup goes further, as it should. */
  private static List<String> wrong(Path folder) {
    List<String> verified = new ArrayList<>();
    Commands.verify(folder, verified::add);
    verified.removeIf(said -> !said.startsWith("Wrong") || said.contains("the last backup"));
    return verified;
  }

  /** What has to hold in a folder that is left. */
  private interface Left {
    void holds(Path data) throws IOException;
  }

  private void cut(List<WatchedDisk.Op> ops, long seed, Left left) throws IOException {
    Path folder = Files.createDirectory(temp.resolve("cut-" + made++));
    AfterCut.make(ops, seed, folder, INDEX);
    try {
      left.holds(folder.resolve(DATA));
    } catch (Throwable wrong) {
      throw new AssertionError("cut " + made + " after " + ops.size() + ": " + last(ops), wrong);
    }
    clear(folder);
  }

  private static List<WatchedDisk.Op> last(List<WatchedDisk.Op> ops) {
    return ops.subList(Math.max(0, ops.size() - 6), ops.size());
  }

  static void clear(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
    }
  }

  /** Opens what is left as the program does, and holds it against what was answered. */
  private void comesBack(Path data, List<WatchedDisk.Op> ops, byte[] whole) throws IOException {
    String all = new String(whole, StandardCharsets.UTF_8);
    long answered = 0;
    String generation = null;
    Set<String> devices = new HashSet<>();
    String gone = null;
    boolean backedUp = false;
    for (WatchedDisk.Op op : ops) {
      if (op instanceof WatchedDisk.Told told) {
        answers++;
        String[] words = told.what().split(" ", 2);
        switch (words[0]) {
          case "book" -> answered = Math.max(answered, Long.parseLong(words[1]));
          case "key" -> {
            int line = all.indexOf("\"key\":\"" + words[1] + "-too\"");
            answered = Math.max(answered, all.indexOf('\n', line) + 1);
          }
          case "generation" -> generation = words[1];
          case "device" -> devices.add(words[1]);
          case "leaving" -> devices.remove(words[1]);
          case "gone" -> gone = words[1];
          case "backup" -> backedUp = true;
          default -> throw new AssertionError(told);
        }
      }
    }
    List<String> told = new ArrayList<>();
    try (Book book = Book.open(data, Clock.systemUTC(), told::add)) {
      byte[] now = Files.readAllBytes(data.resolve("book.jsonl"));
      assertTrue(now.length >= answered, now.length + " of " + answered + " bytes, " + told);
      if (answered > 0) {
        assertArrayEquals(Arrays.copyOf(whole, now.length), now);
        assertEquals('\n', now[now.length - 1]);
      }
      if (generation != null) {
        assertEquals(generation, book.generation());
      }
    }
    new Devices(data, Clock.systemUTC());
    for (String device : devices) {
      assertTrue(Files.readString(data.resolve("devices.json")).contains(device), device);
    }
    if (gone != null) {
      assertFalse(Files.readString(data.resolve("devices.json")).contains(gone), gone);
    }
    List<String> verified = new ArrayList<>();
    assertEquals(0, Commands.verify(data, verified::add), verified.toString());
    long copies = 0;
    if (Files.isDirectory(data.resolve("backups/books"))) {
      try (Stream<Path> files = Files.list(data.resolve("backups/books"))) {
        for (Path copy : files.filter(f -> f.toString().endsWith(".jsonl")).toList()) {
          byte[] bytes = Files.readAllBytes(copy);
          assertArrayEquals(Arrays.copyOf(whole, bytes.length), bytes);
          copies++;
        }
      }
    }
    assertTrue(copies > 0 || !backedUp, "the backup is gone");
  }
}
