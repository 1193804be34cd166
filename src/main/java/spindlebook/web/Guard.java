package spindlebook.web;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpURI;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import spindlebook.page.Html;
import spindlebook.page.ProblemPage;

/**
 * Stands before everything else: turns away what was asked under a foreign name or sent from a
 * foreign page, and says on every answer what a page of ours may load and who may show it.
 */
public final class Guard extends Handler.Wrapper {
  private static final List<HttpField> ON_EVERY_ANSWER =
      List.of(
          new HttpField(
              "Content-Security-Policy",
              "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:;"
                  + " connect-src 'self'; form-action 'self'; frame-ancestors 'none';"
                  + " base-uri 'none'"),
          new HttpField("X-Content-Type-Options", "nosniff"),
          // 'no-referrer' would take the Origin off our own forms.
          new HttpField("Referrer-Policy", "same-origin"),
          new HttpField("Cross-Origin-Opener-Policy", "same-origin"),
          new HttpField("Cross-Origin-Resource-Policy", "same-origin"),
          new HttpField("Vary", "Accept-Encoding"),
          new HttpField("Cache-Control", "private, no-cache"));

  private static final List<String> OTHER_METHOD =
      List.of("X-HTTP-Method-Override", "X-HTTP-Method", "X-Method-Override");

  private static final ProblemPage FOREIGN_NAME =
      new ProblemPage(
          421,
          "Not under this name",
          "Open the book under an address that it printed when it was started; another name is let"
              + " in with --name.");
  private static final ProblemPage FOREIGN_PAGE =
      new ProblemPage(
          403,
          "Sent from another page",
          "What was sent does not come from a page of this book; open the page here and send it"
              + " again.");

  private static final ProblemPage NO_ADDRESS =
      new ProblemPage(400, "No such address", "An address of this book has no such letters in it.");

  /** No letter in two figures: some readers take it for another one, some for none. */
  private static final Pattern UNREADABLE = Pattern.compile("%(?![0-9a-fA-F]{2})");

  private final Hosts hosts;

  public Guard(Hosts hosts) {
    this.hosts = hosts;
  }

  public static void headers(HttpFields.Mutable answer) {
    ON_EVERY_ANSWER.forEach(answer::put);
  }

  @Override
  public boolean handle(Request request, Response response, Callback done) throws Exception {
    headers(response.getHeaders());
    Optional<String> origin = host(request).flatMap(hosts::origin);
    if (origin.isEmpty()) {
      return turnAway(request, response, done, FOREIGN_NAME);
    }
    if (UNREADABLE.matcher(request.getHttpURI().getPath()).find()) {
      return turnAway(request, response, done, NO_ADDRESS);
    }
    boolean looks = request.getMethod().equals("GET") || request.getMethod().equals("HEAD");
    if (!looks && !fromOurs(request.getHeaders(), origin.get())) {
      return turnAway(request, response, done, FOREIGN_PAGE);
    }
    return super.handle(new AsItsFirstLineSays(request), response, done);
  }

  /**
   * A request is what its first line says: a header that names another method is not handed on, so
   * that all that stand behind this one take it for the same thing.
   */
  private static final class AsItsFirstLineSays extends Request.Wrapper {
    private final HttpFields headers;

    AsItsFirstLineSays(Request request) {
      super(request);
      HttpFields.Mutable kept = HttpFields.build(request.getHeaders());
      OTHER_METHOD.forEach(kept::remove);
      if (!request.getMethod().equals("POST")) {
        // What sends no form has no alphabet that could be an unknown one.
        kept.remove("Content-Type");
      }
      this.headers = kept;
    }

    @Override
    public HttpFields getHeaders() {
      return headers;
    }
  }

  /** The one Host of a request, where an absolute address in its first line says the same. */
  private static Optional<String> host(Request request) {
    List<String> said = request.getHeaders().getValuesList("Host");
    if (said.size() != 1) {
      return Optional.empty();
    }
    HttpURI asked = request.getHttpURI();
    boolean same =
        asked.getAuthority() == null
            || Authority.of(asked.getAuthority()).equals(Authority.of(said.get(0)));
    return same ? Optional.of(said.get(0)) : Optional.empty();
  }

  private static boolean fromOurs(HttpFields sent, String origin) {
    List<String> from = sent.getValuesList("Origin");
    return from.size() == 1
        && from.get(0).equalsIgnoreCase(origin)
        && !"cross-site".equalsIgnoreCase(sent.get("Sec-Fetch-Site"));
  }

  private static boolean turnAway(
      Request request, Response response, Callback done, ProblemPage why) {
    response.setStatus(why.status());
    response.getHeaders().put("Content-Type", Html.TYPE);
    String page = request.getMethod().equals("HEAD") ? "" : Html.page(why);
    Content.Sink.write(response, true, page, done);
    return true;
  }
}
