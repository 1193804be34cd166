package spindlebook;

import java.util.LinkedHashMap;
import java.util.Map;

/** A form as shown; filled and sent, with the key it was shown with. */
record Form(Browser browser, String action, String id, Map<String, String> values) {
  Form with(String name, String value) {
    Map<String, String> filled = new LinkedHashMap<>(values);
    filled.put(name, value);
    return new Form(browser, action, id, filled);
  }

  String value(String name) {
    return values.getOrDefault(name, "");
  }

  String key() {
    return value("key");
  }

  Page send() {
    return browser.post(action, values);
  }

  /** Sends it and expects it to be kept. */
  Page keep() {
    return send().is(303);
  }

  /** The same form pressed in another browser. */
  Form in(Browser other) {
    return new Form(other, action, id, values);
  }
}
