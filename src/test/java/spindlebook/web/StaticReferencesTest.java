package spindlebook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class StaticReferencesTest {
  private static StaticFiles files(String inB) {
    Map<String, byte[]> files = new TreeMap<>();
    files.put(
        "a.js", bytes("import {x} from './b.js';\nimport \"/static/icons/c.svg\";\n'./d.js'"));
    files.put("b.js", bytes("import './a.js';" + inB));
    files.put("look.css", bytes("p { background: url(./icons/c.svg) } a { color: red }"));
    files.put("icons/c.svg", bytes("<svg/>"));
    return new StaticFiles(files);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String served(StaticFiles files, String plain) {
    return new String(files.served(files.named(plain)), StandardCharsets.UTF_8);
  }

  @Test
  void modules_and_stylesheet_name_each_other_by_the_names_they_are_served_under() {
    StaticFiles files = files("");
    String hash = files.named("a.js").split("\\.")[1];
    assertEquals(
        "import {x} from './b."
            + hash
            + ".js';\nimport \"/static/icons/c."
            + hash
            + ".svg\";\n'./d.js'",
        served(files, "a.js"));
    assertEquals("import './a." + hash + ".js';", served(files, "b.js"));
    assertEquals(
        "p{background:url(./icons/c." + hash + ".svg)}a{color:red}", served(files, "look.css"));
  }

  @Test
  void a_changed_file_changes_its_own_name_and_that_of_who_imports_it() {
    assertNotEquals(files("").named("b.js"), files(" ").named("b.js"));
    assertNotEquals(files("").named("a.js"), files(" ").named("a.js"));
    assertEquals(files("").named("a.js"), files("").named("a.js"));
  }
}
