package spindlebook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gg.jte.generated.precompiled.StaticTemplates;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import spindlebook.page.Field;
import spindlebook.page.PageFrame;

class MarkupTest {
  private static final String HOSTILE = "<script>alert('x')</script>\"'&";
  private static final Pattern CLASS = Pattern.compile(" class=\"([^\"]*)\"");
  private static final Pattern ID = Pattern.compile(" id=\"([^\"]*)\"");

  private final Map<String, String> hostile = Specimen.pages(HOSTILE);
  private final Map<String, String> plain = Specimen.pages("");

  @Test
  void typed_text_is_never_markup_in_any_slot() {
    hostile.forEach(
        (name, html) -> {
          assertTrue(html.contains("&lt;script&gt;"), name);
          assertFalse(html.contains("<script>"), name);
        });
  }

  @Test
  void hostile_text_adds_no_element_and_no_attribute() {
    plain.forEach(
        (name, html) -> {
          String shape = html.replaceAll(">[^<]*<", "><").replaceAll("=\"[^\"]*\"", "=");
          String attacked =
              hostile.get(name).replaceAll("=\"[^\"]*\"", "=").replaceAll(">[^<]*<", "><");
          assertEquals(elements(shape), elements(attacked), name);
        });
  }

  /** Element names with their attribute names; the wrapped words of a drawing may differ. */
  private static String elements(String html) {
    Set<String> seen = new TreeSet<>();
    Matcher tag = Pattern.compile("<[a-z][^>]*>").matcher(html);
    while (tag.find()) {
      seen.add(tag.group().replaceAll("\\s+", " "));
    }
    return seen.toString();
  }

  @Test
  void a_quote_cannot_leave_its_attribute() {
    String html =
        new StaticTemplates().webField(Field.of("to", "To").typed("\" onfocus=\"x")).render();
    assertFalse(html.contains("\" onfocus"), html);
  }

  @Test
  void nothing_is_inline_so_that_a_strict_content_policy_may_forbid_it() {
    plain.forEach(
        (name, html) -> {
          assertFalse(html.contains(" style="), name);
          assertFalse(html.contains("<style"), name);
          assertFalse(Pattern.compile("<[^>]* on[a-z]+=").matcher(html).find(), name);
          assertFalse(html.contains("javascript:"), name);
        });
  }

  @Test
  void a_module_is_named_by_address_only() {
    String html =
        new StaticTemplates()
            .webPage(PageFrame.of("t", "h").modules("save-as-typed.js"), output -> {})
            .render();
    String address = StaticFiles.href("save-as-typed.js");
    assertTrue(html.contains("<script type=\"module\" src=\"" + address + "\"></script>"), html);
  }

  @Test
  void ids_are_unique_and_everything_referred_to_exists() {
    plain.forEach(
        (name, html) -> {
          Set<String> ids = new TreeSet<>();
          Matcher id = ID.matcher(html);
          while (id.find()) {
            assertTrue(ids.add(id.group(1)), name + ": " + id.group(1) + " twice");
          }
          Matcher refers =
              Pattern.compile(" (?:for|aria-labelledby|aria-describedby)=\"([^\"]*)\"")
                  .matcher(html);
          while (refers.find()) {
            for (String one : refers.group(1).split(" ")) {
              assertTrue(ids.contains(one), name + " refers to " + one);
            }
          }
        });
  }

  @Test
  void a_problem_is_told_in_words_and_tied_to_its_box() {
    String html =
        new StaticTemplates()
            .webField(Field.of("gap", "Gap").typed("81/4").hint("a hint").problem("Which one?"))
            .render();
    assertTrue(html.contains("aria-invalid=\"true\""), html);
    assertTrue(html.contains("aria-describedby=\"f-gap-hint f-gap-problem\""), html);
    assertTrue(html.contains("value=\"81/4\""), html);
  }

  @Test
  void a_field_without_a_problem_claims_none() {
    String html = new StaticTemplates().webField(Field.of("gap", "Gap")).render();
    assertFalse(html.contains("aria-"), html);
    assertFalse(html.contains("autofocus"), html);
  }

  @Test
  void every_class_in_the_markup_is_in_the_stylesheet() throws IOException {
    String css = css();
    Set<String> unknown = new TreeSet<>();
    for (String html : plain.values()) {
      Matcher matcher = CLASS.matcher(html);
      while (matcher.find()) {
        for (String name : matcher.group(1).strip().split("\\s+")) {
          if (!name.isEmpty()
              && !Pattern.compile("\\." + name + "(?![a-z-])").matcher(css).find()) {
            unknown.add(name);
          }
        }
      }
    }
    // These mark a kind that looks as the rest does.
    unknown.removeAll(
        Set.of("notice-note", "keys-4", "label", "f-past-a-limit", "step-at", "step-n"));
    assertEquals(Set.of(), unknown);
  }

  @Test
  void the_stylesheets_as_served_are_small_together_and_undecorated() throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
      gzip.write(Shortened.css(css()).getBytes(StandardCharsets.UTF_8));
    }
    assertTrue(packed.size() < 7 * 1024, packed.size() + " bytes");
    assertFalse(css().contains("gradient("));
    assertFalse(css().contains("shadow"));
    assertFalse(css().contains("url("));
  }

  private static String css() throws IOException {
    return Specimen.css();
  }
}
