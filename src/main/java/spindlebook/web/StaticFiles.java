package spindlebook.web;

import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;

/**
 * The stylesheet, modules and icons, held in memory under names that change with them, so that a
 * browser keeps each for a year and still never shows an old one. All share one hash, of all their
 * contents: then two modules may import each other.
 */
public final class StaticFiles {
  private static final String FOLDER = "/static/";
  private static final String A_YEAR = "public, max-age=31536000, immutable";

  /** {@code './x.js'} or {@code '/static/x.js'}, in quotes or in a stylesheet's brackets. */
  private static final Pattern REFERENCE =
      Pattern.compile("(?<=[\"'(])(\\./|/static/)([A-Za-z0-9_./-]+)(?=[\"')])");

  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "json", "application/json; charset=utf-8",
          "svg", "image/svg+xml; charset=utf-8",
          "webmanifest", "application/manifest+json; charset=utf-8",
          "png", "image/png",
          "woff2", "font/woff2");

  private static final StaticFiles HELD = new StaticFiles(read());

  /**
   * @param zipped the same, gzipped; null where that would not make it smaller
   */
  private record Held(String type, byte[] bytes, byte[] zipped) {}

  private final Map<String, String> hrefs = new HashMap<>();
  private final Map<String, Held> held = new HashMap<>();

  StaticFiles(Map<String, byte[]> files) {
    String hash = hash(files).substring(0, 8);
    for (String name : files.keySet()) {
      int dot = name.lastIndexOf('.');
      hrefs.put(name, name.substring(0, dot) + "." + hash + name.substring(dot));
    }
    files.forEach((name, bytes) -> held.put(hrefs.get(name), hold(name, bytes)));
  }

  private Held hold(String name, byte[] bytes) {
    String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
    if (type == null) {
      throw new IllegalStateException("no media type is known for " + name);
    }
    byte[] served = type.contains("charset") ? withReferences(shortened(name, bytes)) : bytes;
    byte[] zipped = zip(served);
    return new Held(type, served, zipped.length < served.length ? zipped : null);
  }

  private static byte[] shortened(String name, byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    String less =
        name.endsWith(".css")
            ? Shortened.css(text)
            : name.endsWith(".js") ? Shortened.js(text) : text;
    return less.getBytes(StandardCharsets.UTF_8);
  }

  /** References to files of ours get the names these are served under; others stay. */
  private byte[] withReferences(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    return REFERENCE
        .matcher(text)
        .replaceAll(
            m -> Matcher.quoteReplacement(m.group(1) + hrefs.getOrDefault(m.group(2), m.group(2))))
        .getBytes(StandardCharsets.UTF_8);
  }

  /**
   * The address of a file, by its name below {@code static/}.
   *
   * @throws IllegalArgumentException when there is no such file
   */
  public static String href(String name) {
    String plain = name.startsWith(FOLDER) ? name.substring(FOLDER.length()) : name;
    return FOLDER + HELD.named(plain);
  }

  /** The name a file is served under. */
  String named(String plain) {
    String named = hrefs.get(plain);
    if (named == null) {
      throw new IllegalArgumentException("no file " + plain + " is served");
    }
    return named;
  }

  /** What is served under such a name. */
  byte[] served(String named) {
    return held.get(named).bytes();
  }

  /** Answers with a file; the plain name leads to the one it is served under. */
  public static void serve(Context ctx) {
    String name = ctx.pathParam("file");
    if (HELD.hrefs.containsKey(name)) {
      ctx.header("Cache-Control", "no-cache");
      ctx.redirect(href(name));
      return;
    }
    Held file = HELD.held.get(name);
    if (file == null) {
      throw new HttpResponseException(404, "");
    }
    ctx.header("Cache-Control", A_YEAR);
    ctx.contentType(file.type());
    ctx.disableCompression();
    boolean zipped = file.zipped() != null && takesGzip(ctx.header("Accept-Encoding"));
    if (zipped) {
      ctx.header("Content-Encoding", "gzip");
    }
    ctx.result(zipped ? file.zipped() : file.bytes());
  }

  private static boolean takesGzip(String accepted) {
    return accepted != null && Pattern.compile("\\bgzip\\b(?! *; *q=0)").matcher(accepted).find();
  }

  private static Map<String, byte[]> read() {
    try {
      URI folder = StaticFiles.class.getResource(FOLDER).toURI();
      if (folder.getScheme().equals("jar")) {
        try (FileSystem jar = FileSystems.newFileSystem(folder, Map.of())) {
          return read(jar.getPath(FOLDER));
        }
      }
      return read(Path.of(folder));
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Map<String, byte[]> read(Path folder) throws IOException {
    Map<String, byte[]> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(folder.relativize(file).toString().replace('\\', '/'), Files.readAllBytes(file));
      }
    }
    return files;
  }

  private static String hash(Map<String, byte[]> files) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      files.forEach(
          (name, bytes) -> {
            digest.update((name + "\n" + bytes.length + "\n").getBytes(StandardCharsets.UTF_8));
            digest.update(bytes);
          });
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException missing) {
      throw new IllegalStateException("every Java has SHA-256", missing);
    }
  }

  private static byte[] zip(byte[] bytes) {
    ByteArrayOutputStream zipped = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(zipped)) {
      gzip.write(bytes);
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
    return zipped.toByteArray();
  }
}
