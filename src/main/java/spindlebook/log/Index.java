package spindlebook.log;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;

/**
 * The index of the book in H2, for lists, filters and uniqueness. It holds nothing that is not in
 * the book, and is used only if it can be shown to be what the book would give; else it is built
 * anew.
 */
final class Index implements AutoCloseable {
  static final String FILE = "index.mv.db";

  private static final int ENTRIES_AT_ONCE = 1000;
  private static final int TRY_AGAIN_SECONDS = 2;

  /** SQL states that no statement of ours can cause: general errors, and H2's own of its files. */
  private static final Pattern OF_THE_DATABASE = Pattern.compile("HY|08|90");

  private final Path folder;
  private final LogFile log;
  private final Belonging belonging;
  private final Consumer<String> tell;
  private final String[] migrations;
  private final List<Entry> notYet = new ArrayList<>();
  private final Set<String> movedNotYet = new HashSet<>();
  private Connection first;
  private HikariDataSource source;
  private Jdbi jdbi;
  private boolean doubtful;
  private volatile boolean open;
  private volatile long lastMove;
  private volatile Runnable onLost = () -> {};
  private long tryAgainAt;

  private Index(
      Path folder, LogFile log, Belonging belonging, Consumer<String> tell, String... migrations) {
    this.folder = folder;
    this.log = log;
    this.belonging = belonging;
    this.tell = tell;
    this.migrations = migrations;
  }

  static Index open(
      Path folder, LogFile log, Belonging belonging, Consumer<String> tell, String... migrations) {
    Index index = new Index(folder, log, belonging, tell, migrations);
    try {
      String why = index.whyNotAsItIs();
      if (why != null) {
        index.buildAnew(why);
      }
      index.open = true;
      return index;
    } catch (IOException | RuntimeException trouble) {
      index.closeSource();
      throw BookRefused.book(
          trouble,
          "The index of the book cannot be built in %s: %s.",
          folder,
          trouble instanceof IOException io
              ? LogFile.said(io)
              : "its database does not open there");
    }
  }

  Jdbi jdbi() {
    return jdbi;
  }

  boolean isOpen() {
    return open;
  }

  /** Calls when the index is found closed, so that {@link #mend} is called soon. */
  void onLost(Runnable listener) {
    onLost = listener;
  }

  /** Asks the index; one that is lost is said in words, and is built anew by itself. */
  <T> T read(HandleCallback<T, RuntimeException> question) {
    if (open) {
      try {
        return jdbi.withHandle(question);
      } catch (JdbiException trouble) {
        if (open && !isLost(trouble)) {
          throw trouble;
        }
        lose(trouble);
      }
    }
    throw BookRefused.disk(
        null,
        "The index is being built anew, as after a full disk; the book is whole. Make room on the"
            + " disk; what you typed is kept, and this page comes back by itself.");
  }

  /**
   * Whether the database is gone, and not one statement wrong: H2 shuts a database that it cannot
   * write, and what it had not written yet is lost with it.
   */
  private static boolean isLost(Throwable trouble) {
    for (Throwable cause = trouble; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLTransientConnectionException) {
        // Without a cause all connections are only busy.
        return cause.getCause() != null;
      }
      if (cause instanceof SQLException sql && sql.getSQLState() != null) {
        return OF_THE_DATABASE.matcher(sql.getSQLState()).lookingAt();
      }
    }
    return false;
  }

  /** What went wrong, without the words of an entry that its message may hold. */
  private static String kind(Throwable trouble) {
    Throwable root = root(trouble);
    return root.getClass().getSimpleName()
        + (root instanceof SQLException sql ? ", SQL state " + sql.getSQLState() : "");
  }

  private static Throwable root(Throwable trouble) {
    Throwable root = trouble;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    return root;
  }

  private synchronized void lose(Throwable trouble) {
    if (open) {
      tryAgainAt = System.nanoTime();
      open = false;
      tell.accept(
          "The index of the book was lost ("
              + kind(trouble)
              + "); the book is whole. The index is built anew as soon as the disk has room.");
      onLost.run();
    }
  }

  /**
   * Builds a lost index anew, once there is room for it; the thread that writes calls it.
   *
   * @return whether it was
   */
  boolean mend() {
    if (open || System.nanoTime() - tryAgainAt < 0) {
      return false;
    }
    try {
      closeSource();
      deleteFiles();
      if (log.room().enough()) {
        buildAnew(null);
        caughtUp();
        doubtful = false;
        open = true;
        tell.accept("The index is built anew.");
        return true;
      }
    } catch (IOException | RuntimeException stillFull) {
      // Told when it was lost; it is tried again.
      closeSource();
    }
    tryAgainAt = System.nanoTime() + TimeUnit.SECONDS.toNanos(TRY_AGAIN_SECONDS);
    return false;
  }

  /** Opens the index that is there; if it cannot be used, says why not. */
  private String whyNotAsItIs() throws IOException {
    Optional<CleanMark> mark = CleanMark.pickUp(folder);
    Path file = folder.resolve(FILE);
    if (!Files.exists(file)) {
      return "there is none";
    }
    if (mark.isEmpty()) {
      return "it was not closed in order";
    }
    if (mark.get().n() != log.lastN()) {
      return String.format("it ends at entry %d and the book at %d", mark.get().n(), log.lastN());
    }
    if (!mark.get().hash().equals(log.lastHash())) {
      return "the book's last line is another than when it was closed";
    }
    if (!mark.get().sha256().equals(Sha256.hex(file))) {
      return "its file was changed or damaged";
    }
    return openAsItIs();
  }

  private String openAsItIs() {
    try {
      connect();
      if (flyway().info().pending().length > 0
          || !flyway().validateWithResult().validationSuccessful) {
        closeSource();
        return "this version keeps it differently";
      }
      if (!agreesWithLog()) {
        closeSource();
        return "it does not agree with the book";
      }
      return null;
    } catch (RuntimeException damaged) {
      closeSource();
      return "it cannot be opened";
    }
  }

  private void buildAnew(String why) throws IOException {
    deleteFiles();
    connect();
    flyway().migrate();
    long all = log.lastN();
    if (all > 0 && why != null) {
      tell.accept(String.format("Building the index of the book anew (%s): %d entries.", why, all));
    }
    long[] told = {System.nanoTime()};
    List<Entry> some = new ArrayList<>();
    log.each(
        1,
        all,
        entry -> {
          some.add(entry);
          if (some.size() == ENTRIES_AT_ONCE || entry.n() == all) {
            inOneTransaction(some, Set.of());
            some.clear();
            if (System.nanoTime() - told[0] > TimeUnit.SECONDS.toNanos(2)) {
              told[0] = System.nanoTime();
              tell.accept(String.format("%d %% of the index is built.", 100 * entry.n() / all));
            }
          }
        });
    if (all == 0) {
      inOneTransaction(List.of(), Set.of());
    }
  }

  /**
   * Brings the index up to entries that are in the book for good. It never fails: what cannot be
   * applied now is tried again with the next entries, and the index is built anew at the next
   * start.
   */
  void apply(List<Entry> entries) {
    entries.forEach(entry -> movedNotYet.addAll(belonging.add(entry)));
    if (!open) {
      return;
    }
    boolean wasBehind = !notYet.isEmpty();
    notYet.addAll(entries);
    try {
      inOneTransaction(notYet, movedNotYet);
      caughtUp();
      // Whoever asked meanwhile was answered without some of them.
      lastMove = wasBehind ? log.lastN() : lastMove;
    } catch (RuntimeException | Error trouble) {
      doubtful = true;
      if (isLost(trouble)) {
        lose(trouble);
      } else if (!wasBehind) {
        tell.accept(
            "The entry is in the book, but the index could not follow ("
                + kind(trouble)
                + "); lists may lack it until Spindlebook is started again.");
      }
    }
  }

  private void caughtUp() {
    if (!movedNotYet.isEmpty()) {
      lastMove = log.lastN();
    }
    notYet.clear();
    movedNotYet.clear();
  }

  /** How far the book went when earlier entries were last found to belong elsewhere; 0 at first. */
  long lastMove() {
    return lastMove;
  }

  private void inOneTransaction(List<Entry> entries, Set<String> moved) {
    jdbi.useTransaction(
        handle -> {
          EntryRows.add(handle, entries, belonging);
          EntryRows.move(handle, moved, belonging);
          long n = entries.isEmpty() ? 0 : entries.get(entries.size() - 1).n();
          handle
              .createUpdate(
                  """
                  merge into meta (id, entries, n, hash)
                  values (1, :n, :n, :hash)
                  """)
              .bind("n", n)
              .bind("hash", log.hashAt(n))
              .execute();
        });
  }

  private record Meta(long entries, long n, String hash) {}

  private Meta meta() {
    return jdbi.withHandle(
        handle ->
            handle
                .createQuery("select (select count(*) from entry), n, hash from meta")
                .map((row, context) -> new Meta(row.getLong(1), row.getLong(2), row.getString(3)))
                .one());
  }

  private boolean agreesWithLog() {
    try {
      return meta().equals(new Meta(log.lastN(), log.lastN(), log.lastHash()));
    } catch (RuntimeException damaged) {
      return false;
    }
  }

  private void connect() {
    // async: an interrupted reader must not close the file under everybody.
    String url =
        "jdbc:h2:async:"
            + folder.toAbsolutePath().resolve("index")
            + ";DB_CLOSE_ON_EXIT=FALSE;NON_KEYWORDS=KEY;TRACE_LEVEL_FILE=0";
    try {
      first = DriverManager.getConnection(url, "sa", "");
      WholeFile.ownersOnly(folder.resolve(FILE));
      try (Statement statement = first.createStatement()) {
        statement.execute("create global temporary table if not exists opened (once int)");
      }
    } catch (SQLException trouble) {
      throw new ConnectionException(trouble);
    }
    HikariConfig config = new HikariConfig();
    config.setJdbcUrl(url);
    config.setUsername("sa");
    config.setPassword("");
    // A database that was shut is opened again by the next connection, without what was not written
    // yet; it then lacks this table, and is known to be lost.
    config.setConnectionInitSql("select once from opened");
    config.setConnectionTimeout(TimeUnit.SECONDS.toMillis(10));
    config.setPoolName("index");
    config.setMaximumPoolSize(6);
    config.setMinimumIdle(1);
    source = new HikariDataSource(config);
    jdbi = Jdbi.create(source);
  }

  private Flyway flyway() {
    // Of a later version, which fills other tables, is another index as well.
    return Flyway.configure()
        .dataSource(source)
        .locations(migrations)
        .ignoreMigrationPatterns(new String[0])
        .load();
  }

  private void deleteFiles() throws IOException {
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "index.*.db*")) {
      for (Path file : files) {
        Files.delete(file);
      }
    }
  }

  private void closeSource() {
    if (source != null) {
      source.close();
      source = null;
    }
    if (first != null) {
      try {
        first.close();
      } catch (SQLException shut) {
        // It was lost, and is closed already.
      }
      first = null;
    }
  }

  /** Closes the index; only one that is known to agree with the book is marked as clean. */
  @Override
  public void close() {
    boolean agrees = open && !doubtful && notYet.isEmpty() && agreesWithLog();
    // H2 closes its file with the last connection.
    closeSource();
    try {
      if (agrees) {
        String sha256 = Sha256.hex(folder.resolve(FILE));
        new CleanMark(log.lastN(), log.lastHash(), sha256).leave(folder);
      }
    } catch (IOException trouble) {
      tell.accept("The index could not be marked as closed; it will be built anew.");
    }
  }
}
