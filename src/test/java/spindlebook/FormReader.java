package spindlebook;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a form would send if its first button were pressed with nothing touched. */
final class FormReader {
  private static final Pattern FIELD =
      Pattern.compile("<(input|select|option)\\b((?:\"[^\"]*\"|[^\">])*)>");

  private FormReader() {}

  static Map<String, String> values(String inForm) {
    Map<String, String> values = new LinkedHashMap<>();
    String select = "";
    Matcher found = FIELD.matcher(inForm);
    while (found.find()) {
      Map<String, String> a = Page.attributes(found.group(2));
      if (found.group(1).equals("select")) {
        select = a.get("name");
      } else if (found.group(1).equals("option")) {
        if (a.containsKey("selected") || !values.containsKey(select)) {
          values.put(select, a.getOrDefault("value", ""));
        }
      } else if (!List.of("radio", "checkbox").contains(a.getOrDefault("type", ""))
          || a.containsKey("checked")) {
        values.put(a.get("name"), a.getOrDefault("value", ""));
      }
    }
    return values;
  }
}
