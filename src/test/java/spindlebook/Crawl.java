package spindlebook;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** Follows every link from the start page, each address once. */
final class Crawl {
  private static final Pattern LINK = Pattern.compile("(?:href|src)=\"([^\"#]*)(#[^\"]*)?\"");

  /** The book's filters come in every combination; one at a time is enough. */
  private static final Pattern TWO_FILTERS = Pattern.compile("[^?]*\\?[^=]*=.*=.*=.*");

  /** The same page for every reading and change, or for every entry of the book. */
  private static final Pattern OF_ANY =
      Pattern.compile("(?:\\?of=entry\\.|(?<=/compare)\\?one=|(?<=/put-back)\\?at=).*");

  /** So that links which never end fail instead of going on for ever. */
  private static final int MOST = 4000;

  private final Map<String, Page> pages = new LinkedHashMap<>();
  private final Set<String> ofAny = new HashSet<>();

  private Crawl() {}

  static Collection<Page> from(Browser browser, String... starts) {
    Crawl crawl = new Crawl();
    Deque<String> open = new ArrayDeque<>(List.of(starts));
    while (!open.isEmpty()) {
      String path = open.poll();
      if (crawl.pages.containsKey(path) || TWO_FILTERS.matcher(path).matches()) {
        continue;
      }
      String form = OF_ANY.matcher(path).replaceFirst("");
      if (!form.equals(path) && !crawl.ofAny.add(form)) {
        continue;
      }
      if (crawl.pages.size() == MOST) {
        throw new AssertionError("more than " + MOST + " pages, the last one " + path);
      }
      Page page = browser.get(path);
      crawl.pages.put(path, page);
      if (page.status() == 302) {
        open.add(page.location());
      }
      LINK.matcher(page.html()).results().map(m -> Page.decoded(m.group(1))).forEach(open::add);
    }
    return crawl.pages.values();
  }
}
