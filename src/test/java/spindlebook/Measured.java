package spindlebook;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How large a page is on a phone of 390 × 664, folds closed: its height, the words that can be seen
 * (a figure is one), the sizes of its text and the spaces around and within its blocks, in px.
 */
record Measured(String page, long height, long words, List<String> sizes, List<String> spaces) {
  private static final String SCRIPT =
      """
      const sizes = new Set(), spaces = new Set();
      let words = 0;
      const seen = e => e.checkVisibility({ checkVisibilityCSS: true }) && !e.closest('.vh, [hidden], script, style');
      for (const e of document.body.querySelectorAll('*')) {
        if (!seen(e)) continue;
        const style = getComputedStyle(e);
        let own = '';
        for (const c of e.childNodes) if (c.nodeType === 3) own += c.data;
        if (own.trim()) {
          sizes.add(style.fontSize);
          words += own.split(/\\s+/).filter(w => /[\\p{L}]/u.test(w)).length;
        }
        if (!e.closest('svg')) {
          for (const side of ['marginTop', 'marginBottom', 'paddingTop', 'paddingBottom', 'rowGap']) {
            const px = parseFloat(style[side]);
            if (px > 0) spaces.add(Math.round(px * 10) / 10 + 'px');
          }
        }
      }
      const by = (a, b) => parseFloat(a) - parseFloat(b);
      return { height: document.documentElement.scrollHeight, words,
        sizes: [...sizes].sort(by), spaces: [...spaces].sort(by) };
      """;

  @SuppressWarnings("unchecked")
  static Measured of(Screen screen, String page) {
    screen.size(390, 664);
    Map<String, Object> found = (Map<String, Object>) screen.ask(SCRIPT);
    return new Measured(
        page,
        (Long) found.get("height"),
        (Long) found.get("words"),
        (List<String>) found.get("sizes"),
        (List<String>) found.get("spaces"));
  }

  double screens() {
    return height / 664.0;
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%-64s %5d px %4.1f screens %4d words, text %s, spaces %s",
        page,
        height,
        screens(),
        words,
        String.join(" ", sizes),
        String.join(" ", spaces));
  }
}
