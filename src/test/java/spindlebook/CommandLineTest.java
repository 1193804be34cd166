package spindlebook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.log.BookFile;
import spindlebook.log.BookRefused;

/** Books that cannot be opened, and commands, as they are told on a terminal. */
class CommandLineTest {
  /** What a run of the program came to. */
  private record Ran(int exit, String out, String err) {
    void refusedInOneSentence() {
      assertNotEquals(0, exit, err);
      assertEquals(1, err.strip().lines().count(), err);
      assertTrue(err.strip().endsWith("."), err);
      assertFalse(err.contains("Exception") || err.contains("\tat "), err);
    }
  }

  @TempDir Path folder;

  /** The command as the program runs it, here; what it prints is kept from the terminal. */
  private static Ran run(String... words) throws InterruptedException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream terminalOut = System.out;
    PrintStream terminalErr = System.err;
    AtomicInteger exit = new AtomicInteger(-1);
    Thread program = new Thread(() -> exit.set(Main.run(words)), "command");
    program.setDaemon(true);
    System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
    System.setErr(new PrintStream(err, true, StandardCharsets.UTF_8));
    try {
      program.start();
      program.join(60_000);
      assertFalse(program.isAlive(), "it went on: " + err);
    } finally {
      System.setOut(terminalOut);
      System.setErr(terminalErr);
    }
    return new Ran(
        exit.get(), out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** The same by a program of its own, on its own terminal. */
  private Ran aside(String... words) throws IOException, InterruptedException {
    return aside(List.of(), words);
  }

  private Ran aside(List<String> before, String... words) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(before);
    command.addAll(ServedBook.command(words));
    Path out = Files.createTempFile("out", ".txt");
    Path err = Files.createTempFile("err", ".txt");
    try {
      Process program =
          new ProcessBuilder(command)
              .redirectOutput(out.toFile())
              .redirectError(err.toFile())
              .start();
      try {
        assertTrue(program.waitFor(60, TimeUnit.SECONDS), "it went on: " + Files.readString(err));
      } finally {
        program.destroyForcibly();
      }
      return new Ran(program.exitValue(), Files.readString(out), Files.readString(err));
    } finally {
      Files.delete(out);
      Files.delete(err);
    }
  }

  private byte[] aBook() throws IOException {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    }
    return Files.readAllBytes(log());
  }

  private Path log() {
    return folder.resolve("book.jsonl");
  }

  @Test
  void a_book_that_another_program_has_open_is_left_alone() throws Exception {
    byte[] book = aBook();
    try (Shop shop = new Shop(folder)) {
      Ran second = aside("--data", folder.toString(), "--port", "0");
      second.refusedInOneSentence();
      assertTrue(second.err().contains("in use"), second.err());
      aside("rebuild", "--data", folder.toString()).refusedInOneSentence();
      shop.get("/cars").is(200);
    }
    assertArrayEquals(book, Files.readAllBytes(log()));
  }

  @Test
  void a_book_of_a_newer_version_is_left_alone() throws Exception {
    String book = new String(aBook(), StandardCharsets.UTF_8);
    String header = book.lines().findFirst().orElseThrow();
    String newer = header.replaceFirst("(\"(?:format|v|version)\":)1\\b", "$199");
    assertNotEquals(header, newer, header);
    refuses(book.replace(header, newer).getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void a_book_damaged_in_the_middle_is_left_alone() throws Exception {
    byte[] book = aBook();
    book[book.length / 3] ^= 1;
    refuses(book);
  }

  @Test
  void an_older_copy_put_back_is_told_and_goes_on_when_somebody_says_so() throws Exception {
    byte[] older;
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      older = Files.readAllBytes(log());
      marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    }
    Files.write(log(), older);
    long entries = new String(older, StandardCharsets.UTF_8).lines().count() - 1;
    Ran ran = run("--data", folder.toString(), "--port", "0");
    ran.refusedInOneSentence();
    assertTrue(ran.err().contains("it now holds " + entries + ":"), ran.err());
    assertTrue(ran.err().contains("start once with --restored " + entries + "."), ran.err());
    assertArrayEquals(older, Files.readAllBytes(log()));
    run("rebuild", "--data", folder.toString()).refusedInOneSentence();
    Ran said = run("rebuild", "--data", folder.toString(), "--restored", String.valueOf(entries));
    assertEquals(0, said.exit(), said.err());
    try (Shop shop = new Shop(folder)) {
      assertEquals(List.of(), shop.told);
      assertEquals(entries, shop.entries());
    }
  }

  private void refuses(byte[] book) throws Exception {
    Files.write(log(), book);
    run("--data", folder.toString(), "--port", "0").refusedInOneSentence();
    assertArrayEquals(book, Files.readAllBytes(log()));
  }

  @Test
  void a_line_that_is_no_json_is_said_in_the_books_own_words() throws Exception {
    byte[] book = aBook();
    for (String line : List.of("nonsense", "{\"n\":1,\"n\":2}", "[1", "{'a':1}", "{\"a\":01}")) {
      for (boolean first : List.of(true, false)) {
        String whole = new String(book, StandardCharsets.UTF_8);
        int end = first ? 0 : whole.indexOf('\n') + 1;
        Path spoilt = folder.resolve("spoilt.jsonl");
        Files.writeString(spoilt, whole.substring(0, end) + line + "\n" + whole.substring(end));
        BookRefused refused = assertThrows(BookRefused.class, () -> BookFile.read(spoilt), line);
        assertFalse(
            refused
                .getMessage()
                .matches(
                    "(?s).*(token|Unexpected|Unrecognized|expecting|Duplicate|START_|VALUE_|(?i:leading"
                        + " zero)|code \\d|\n"
                        + ").*"),
            refused.getMessage());
      }
    }
  }

  @Test
  void the_demo_leaves_no_folder_behind_however_it_ends() throws Exception {
    Path temp = Files.createDirectory(folder.resolve("temp"));
    for (int writing : new int[] {-1, 0, 50, 200, 700}) {
      Path err = temp.resolveSibling("demo-err.txt");
      List<String> command = ServedBook.command("demo", "--listen", "here", "--port", "0");
      command.add(1, "-Djava.io.tmpdir=" + temp);
      Process demo =
          new ProcessBuilder(command)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectError(err.toFile())
              .start();
      try {
        for (int i = 0; i < 1200 && demo.isAlive(); i++) {
          boolean begun = !names(temp).isEmpty();
          if (writing >= 0 ? begun : Files.readString(err).contains("It pairs one device.")) {
            break;
          }
          LockSupport.parkNanos(50_000_000);
        }
        assertFalse(names(temp).isEmpty(), Files.readString(err));
        LockSupport.parkNanos(writing * 1_000_000L);
        demo.destroy();
        assertTrue(demo.waitFor(60, TimeUnit.SECONDS));
      } finally {
        demo.destroyForcibly();
      }
      assertEquals(List.of(), names(temp), Files.readString(err));
      assertFalse(Files.readString(err).contains("Exception"), Files.readString(err));
    }
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(f -> f.getFileName().toString())
          .filter(f -> !f.startsWith("hsperf"))
          .toList();
    }
  }

  @Test
  void a_folder_that_is_no_folder_is_refused() throws Exception {
    Path file = Files.writeString(folder.resolve("a-file"), "not a folder");
    run("--data", file.toString(), "--port", "0").refusedInOneSentence();
    run("--data", file.resolve("in-it").toString(), "--port", "0").refusedInOneSentence();
    assertEquals("not a folder", Files.readString(file));
  }

  @Test
  void a_folder_that_cannot_be_written_is_refused() throws Exception {
    byte[] book = aBook();
    assertTrue(folder.toFile().setWritable(false));
    assertTrue(log().toFile().setWritable(false));
    try {
      Ran ran = aside(NoPrivilege.over(folder), "--data", folder.toString(), "--port", "0");
      ran.refusedInOneSentence();
      assertTrue(ran.err().contains("no permission"), ran.err());
    } finally {
      assertTrue(folder.toFile().setWritable(true) && log().toFile().setWritable(true));
    }
    assertArrayEquals(book, Files.readAllBytes(log()));
  }

  @Test
  void a_port_that_is_taken_is_said_in_one_sentence(@TempDir Path other) throws Exception {
    try (Shop shop = new Shop(folder)) {
      Ran second = run("--data", other.toString(), "--port", String.valueOf(shop.port()));
      assertEquals(2, second.exit(), second.err());
      assertTrue(second.err().strip().endsWith("choose another with --port."), second.err());
      assertFalse(second.err().contains("\tat "), second.err());
    }
  }

  @Test
  void a_damaged_list_of_devices_is_left_alone() throws Exception {
    aBook();
    Path devices = folder.resolve("devices.json");
    String whole = Files.readString(devices);
    assertTrue(whole.contains("token-sha256"), whole);
    for (String damaged :
        List.of(
            "",
            "{",
            "[]",
            "null",
            whole.substring(0, whole.length() / 2),
            whole.replace("\"keep\"", "\"perhaps\""),
            whole.replaceFirst("\"token-sha256\" : \"..", "\"token-sha256\" : \""),
            whole.replaceFirst("\"added\" : \"2", "\"added\" : \"x"),
            whole.replace("\"v\" : 1", "\"v\" : 2"))) {
      assertNotEquals(whole, damaged);
      Files.writeString(devices, damaged);
      Ran ran = run("--data", folder.toString(), "--port", "0", "--listen", "here");
      ran.refusedInOneSentence();
      assertTrue(ran.err().contains("paired devices"), ran.err());
      assertEquals(damaged, Files.readString(devices));
    }
    Files.writeString(devices, whole);
    try (Shop shop = new Shop(folder)) {
      assertEquals(List.of(), shop.told);
    }
  }

  @Test
  void an_address_that_cannot_be_listened_on_is_said_in_one_sentence() throws Exception {
    for (String[] words :
        new String[][] {
          {"--listen", "everywhere"},
          {"--listen", "300.1.1.1"},
          {"--listen", "here", "--name", "two words"},
          {"--listen", "here", "--public-address", "http://book.example.org"}
        }) {
      List<String> all = new ArrayList<>(List.of("--data", folder.toString(), "--port", "0"));
      all.addAll(List.of(words));
      run(all.toArray(String[]::new)).refusedInOneSentence();
    }
  }

  @Test
  void the_terminal_shows_addresses_a_link_a_short_code_and_a_square_one() throws Exception {
    Path err = Files.createTempFile("err", ".txt");
    Process program =
        new ProcessBuilder(ServedBook.command("--data", folder.toString(), "--port", "0"))
            .redirectError(err.toFile())
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      String said = "";
      for (int i = 0; i < 600 && !said.contains("It pairs one device."); i++) {
        java.util.concurrent.locks.LockSupport.parkNanos(50_000_000);
        said = Files.readString(err);
      }
      java.util.regex.Matcher link =
          java.util.regex.Pattern.compile("http://127\\.0\\.0\\.1:(\\d+)(/pair/\\S+)")
              .matcher(said);
      assertTrue(link.find(), said);
      assertTrue(
          java.util.regex.Pattern.compile("type the code [A-Z2-9]{4}-[A-Z2-9]{4} ")
              .matcher(said)
              .find(),
          said);
      assertTrue(said.lines().filter(l -> l.startsWith("██")).count() > 10, said);
      Browser browser = new Browser(Integer.parseInt(link.group(1)), "Sam");
      browser.pair(link.group(2), "phone");
      browser.get("/cars").is(200);
    } finally {
      program.destroy();
      assertTrue(program.waitFor(30, TimeUnit.SECONDS));
      Files.delete(err);
    }
  }

  @Test
  void a_torn_last_line_is_set_aside_and_told() throws Exception {
    byte[] book = aBook();
    byte[] torn = "{\"n\":99,\"at\":\"2031".getBytes(StandardCharsets.UTF_8);
    byte[] both = java.util.Arrays.copyOf(book, book.length + torn.length);
    System.arraycopy(torn, 0, both, book.length, torn.length);
    Files.write(log(), both);
    try (Shop shop = new Shop(folder)) {
      assertTrue(shop.told.stream().anyMatch(t -> t.contains("set aside")), shop.told.toString());
      assertTrue(shop.get("/cars").is(200).text().contains("Marmot"));
    }
    assertArrayEquals(book, Files.readAllBytes(log()));
    try (var files = Files.list(folder)) {
      Path aside =
          files.filter(f -> f.getFileName().toString().contains("torn")).findFirst().orElseThrow();
      assertArrayEquals(torn, Files.readAllBytes(aside));
    }
  }

  @Test
  void an_index_that_is_missing_or_damaged_is_built_anew_and_told() throws Exception {
    aBook();
    Path index = folder.resolve("index.mv.db");
    String cars;
    try (Shop shop = new Shop(folder)) {
      assertEquals(List.of(), shop.told);
      cars = shop.get("/cars").is(200).text();
    }
    Files.delete(index);
    try (Shop shop = new Shop(folder)) {
      assertEquals(1, shop.told.size(), shop.told.toString());
      assertEquals(cars, shop.get("/cars").is(200).text());
    }
    Files.write(index, new byte[] {1, 2, 3});
    try (Shop shop = new Shop(folder)) {
      assertEquals(1, shop.told.size(), shop.told.toString());
      assertEquals(cars, shop.get("/cars").is(200).text());
    }
  }

  private List<Path> copies(Path place) throws IOException {
    try (Stream<Path> files = Files.list(place.resolve("books"))) {
      return files.sorted().toList();
    }
  }

  @Test
  void a_backup_is_made_while_the_program_runs_beside_the_book_or_on_a_stick() throws Exception {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      Ran ran = aside("backup", "--data", folder.toString());
      assertEquals(0, ran.exit(), ran.err());
      Path copy = copies(folder.resolve("backups")).get(0);
      assertArrayEquals(Files.readAllBytes(log()), Files.readAllBytes(copy));
      assertEquals(
          "Copied to " + copy + " and checked: " + shop.entries() + " entries, 0 photos.",
          ran.out().strip());

      marmot.adjust(marmot.left, "limit-strap", "18 3/8");
      Path stick = folder.resolve("stick");
      run("backup", stick.resolve("mine").toString(), "--data", folder.toString())
          .refusedInOneSentence();
      assertFalse(Files.exists(stick), "an unplugged stick is no folder to be made");
      assertEquals(0, run("backup", stick.toString(), "--data", folder.toString()).exit());
      assertArrayEquals(Files.readAllBytes(log()), Files.readAllBytes(copies(stick).get(0)));
      assertEquals(1, copies(folder.resolve("backups")).size());
      shop.get("/cars").is(200);
      assertEquals(List.of(), shop.told);
    }
  }

  @Test
  void a_book_is_tried_out_put_back_and_looked_through_from_the_command_line() throws Exception {
    Path stick = Files.createDirectory(folder.resolve("stick"));
    byte[] older;
    String data = folder.toString();
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      older = Files.readAllBytes(log());
      assertEquals(0, run("backup", stick.toString(), "--data", data).exit());
      marmot.adjust(marmot.left, "limit-strap", "18 3/8");
      byte[] now = Files.readAllBytes(log());

      Ran running = aside("restore", stick.toString(), "--data", data);
      running.refusedInOneSentence();
      assertTrue(running.err().contains("stop that one first"), running.err());
      Ran dry = aside("restore", "--dry-run", stick.toString(), "--data", data);
      assertEquals(0, dry.exit(), dry.err());
      assertTrue(dry.out().contains("leave the book: 1 adjustment."), dry.out());
      assertEquals(0, aside("verify", data).exit());
      assertArrayEquals(now, Files.readAllBytes(log()));
      shop.get("/cars").is(200);
    }
    assertEquals(0, run("verify", log().toString()).exit());
    Ran back = run("restore", stick.toString(), "--data", data);
    assertEquals(0, back.exit(), back.err());
    assertArrayEquals(older, Files.readAllBytes(log()));
    try (Shop shop = new Shop(folder)) {
      assertEquals(1, shop.told.size(), "the index is built anew");
      shop.browser = Browser.paired(shop.app(), "Sam");
      assertTrue(shop.get("/cars").is(200).text().contains("Marmot"));
    }
    byte[] spoilt = older.clone();
    spoilt[spoilt.length / 2] ^= 1;
    Files.write(log(), spoilt);
    Ran wrong = run("verify", data);
    assertEquals(1, wrong.exit());
    assertTrue(wrong.out().startsWith("Wrong: Line "), wrong.out());
    run("restore", log().toString(), "--data", folder.resolve("new").toString())
        .refusedInOneSentence();
    assertFalse(Files.exists(folder.resolve("new")));
    assertEquals(1, run("verify", folder.resolve("none").toString()).exit());
  }

  @Test
  void figures_of_a_broken_book_are_one_sentence_and_exit_2() throws Exception {
    byte[] book = aBook();
    Ran whole = aside("figures", log().toString());
    assertEquals(0, whole.exit(), whole.err());
    assertEquals("", whole.err());
    try (Shop shop = new Shop(folder)) {
      assertEquals(spindlebook.figures.Figures.of(log(), t -> {}).strip(), whole.out().strip());
      assertEquals(List.of(), shop.told);
    }
    book[book.length / 3] ^= 1;
    Path broken = Files.write(folder.resolve("broken.jsonl"), book);
    for (Path file : List.of(broken, folder.resolve("none.jsonl"), folder)) {
      Ran ran = run("figures", file.toString());
      ran.refusedInOneSentence();
      assertEquals(2, ran.exit(), ran.err());
      assertEquals("", ran.out());
    }
  }

  @Test
  void a_linkage_is_a_table_and_a_bad_line_of_it_one_sentence_and_exit_2() throws Exception {
    String doc = Files.readString(Path.of("docs", "format-linkage.md"));
    String example = doc.substring(doc.indexOf("```csv") + 7, doc.indexOf("```\n\n## What a line"));
    Path corner = Files.writeString(folder.resolve("corner.csv"), example);
    Ran whole = aside("linkage", corner.toString());
    assertEquals(0, whole.exit(), whole.err());
    assertEquals("", whole.err());
    assertEquals(16, whole.out().lines().count());
    Path broken = Files.writeString(folder.resolve("broken.csv"), example.replace("790", "79o"));
    for (Path file : List.of(broken, folder.resolve("none.csv"), folder)) {
      Ran ran = run("linkage", file.toString());
      ran.refusedInOneSentence();
      assertEquals(2, ran.exit(), ran.err());
      assertEquals("", ran.out());
    }
    assertTrue(run("linkage", broken.toString()).err().startsWith("Line 5: \"79o\" is no number"));
  }
}
