package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.net.http.HttpHeaders;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One answer of the server, read as a person or a browser reads it. */
record Page(Browser browser, String path, int status, HttpHeaders headers, String html) {
  private static final Pattern TAG = Pattern.compile("<(?:\"[^\"]*\"|[^\">])*>");
  private static final Pattern FORM =
      Pattern.compile("<form\\b([^>]*)>(.*?)</form>", Pattern.DOTALL);
  private static final Pattern ATTRIBUTE = Pattern.compile("([a-zA-Z-]+)(?:=\"([^\"]*)\")?");
  private static final Pattern ENTITY = Pattern.compile("&(#x?[0-9a-fA-F]+|[a-z]+);");
  private static final Map<String, String> NAMED =
      Map.of("lt", "<", "gt", ">", "amp", "&", "quot", "\"", "apos", "'");

  /** The text a person sees, in one line. */
  String text() {
    return seen(html);
  }

  static String seen(String html) {
    return decoded(TAG.matcher(html).replaceAll(" ")).replaceAll("[\\s\u00a0]+", " ").strip();
  }

  String location() {
    return headers.firstValue("Location").orElseThrow(() -> new AssertionError(text()));
  }

  /** Says what the page says when it is not the status that was expected. */
  Page is(int expected) {
    assertEquals(expected, status, () -> path + " says: " + text());
    return this;
  }

  /** The pairing link a page shows, below the book's address. */
  String linkIn() {
    Matcher found = Pattern.compile("/pair/[A-Za-z0-9_-]+").matcher(text());
    if (!found.find()) {
      throw new AssertionError("no link on " + text());
    }
    return found.group();
  }

  List<Form> forms() {
    List<Form> forms = new ArrayList<>();
    Matcher found = FORM.matcher(html);
    while (found.find()) {
      Map<String, String> form = attributes(found.group(1));
      if (!form.getOrDefault("method", "get").equals("post")) {
        continue; // It only asks for another page; nothing is sent.
      }
      forms.add(
          new Form(
              browser,
              form.get("action"),
              form.getOrDefault("id", ""),
              FormReader.values(found.group(2))));
    }
    return forms;
  }

  /** The form that is sent to an address. */
  Form form(String action) {
    return forms().stream()
        .filter(f -> f.action().equals(action))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no form for " + action + " on " + text()));
  }

  Form formWithId(String id) {
    return forms().stream()
        .filter(f -> f.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no form " + id + " on " + text()));
  }

  /** The pieces of the page that a tag encloses, tags taken out. */
  List<String> each(String tag) {
    List<String> pieces = new ArrayList<>();
    Matcher found =
        Pattern.compile("<" + tag + "\\b[^>]*>(.*?)</" + tag + ">", Pattern.DOTALL).matcher(html);
    while (found.find()) {
      pieces.add(seen(found.group(1)));
    }
    return pieces;
  }

  static Map<String, String> attributes(String inTag) {
    Map<String, String> attributes = new TreeMap<>();
    Matcher found = ATTRIBUTE.matcher(inTag);
    while (found.find()) {
      attributes.put(
          found.group(1), found.group(2) == null ? found.group(1) : decoded(found.group(2)));
    }
    return attributes;
  }

  static String decoded(String text) {
    return ENTITY
        .matcher(text)
        .replaceAll(
            m -> {
              String name = m.group(1);
              if (!name.startsWith("#")) {
                return Matcher.quoteReplacement(NAMED.getOrDefault(name, m.group()));
              }
              int code =
                  name.startsWith("#x")
                      ? Integer.parseInt(name.substring(2), 16)
                      : Integer.parseInt(name.substring(1));
              return Matcher.quoteReplacement(Character.toString(code));
            });
  }
}
