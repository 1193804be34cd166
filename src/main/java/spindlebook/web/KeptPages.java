package spindlebook.web;

import io.javalin.http.Handler;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Supplier;
import spindlebook.page.FormKey;
import spindlebook.page.Html;

/**
 * Pages as they were last written. A page is made of the book, its address and who writes, as the
 * browser last said, so it holds until something is written; only the keys of its forms are made
 * anew each time.
 */
public final class KeptPages {
  private static final int MOST_LETTERS = 4 << 20;

  private final Supplier<?> state;
  private final Map<String, Kept> pages = new LinkedHashMap<>(64, 0.75f, true);
  private int letters;

  /**
   * @param between what stands before, between and after the keys
   * @param keys which key comes after each of them but the last, counted as they were drawn
   */
  private record Kept(Object state, List<String> between, List<Integer> keys) {
    int letters() {
      return between.stream().mapToInt(String::length).sum();
    }

    String again() {
      StringBuilder page = new StringBuilder(letters() + keys.size() * FormKey.LENGTH);
      List<String> fresh = new ArrayList<>();
      for (int i = 0; i < keys.size(); i++) {
        while (fresh.size() <= keys.get(i)) {
          fresh.add(FormKey.fresh(0).key());
        }
        page.append(between.get(i)).append(fresh.get(keys.get(i)));
      }
      return page.append(between.get(keys.size())).toString();
    }
  }

  /**
   * @param state of all that these pages are made of besides their address: equal while it is the
   *     same
   */
  public KeptPages(Supplier<?> state) {
    this.state = state;
  }

  /** A page that depends on nothing else: not on the clock, and not on the device that asks. */
  public Handler page(Handler page) {
    return ctx -> {
      String address =
          Who.of(ctx) + ' ' + ctx.path() + '?' + Objects.requireNonNullElse(ctx.queryString(), "");
      Object now = state.get();
      Kept kept = kept(address);
      if (kept != null && kept.state().equals(now)) {
        ctx.result(kept.again()).contentType(Html.TYPE);
        return;
      }
      List<String> drawn = new ArrayList<>();
      FormKey.noteIn(drawn);
      try {
        page.handle(ctx);
      } finally {
        FormKey.noteIn(null);
      }
      if (ctx.statusCode() == 200) {
        keep(address, split(now, ctx.result(), drawn));
      }
    };
  }

  private static Kept split(Object now, String page, List<String> drawn) {
    // Where each key stands, in the page's order; one that was drawn and not shown stands nowhere.
    NavigableMap<Integer, Integer> places = new TreeMap<>();
    for (int i = 0; i < drawn.size(); i++) {
      String key = drawn.get(i);
      for (int at = page.indexOf(key); at >= 0; at = page.indexOf(key, at + key.length())) {
        places.put(at, i);
      }
    }
    List<String> between = new ArrayList<>();
    int from = 0;
    for (int at : places.keySet()) {
      between.add(page.substring(from, at));
      from = at + FormKey.LENGTH;
    }
    between.add(page.substring(from));
    return new Kept(now, between, List.copyOf(places.values()));
  }

  private synchronized Kept kept(String address) {
    return pages.get(address);
  }

  private synchronized void keep(String address, Kept page) {
    Kept before = pages.put(address, page);
    letters += page.letters() - (before == null ? 0 : before.letters());
    var oldest = pages.values().iterator();
    while (letters > MOST_LETTERS) {
      letters -= oldest.next().letters();
      oldest.remove();
    }
  }
}
