package spindlebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;

/** Asks the real server for pages and sends its forms, one request at a time, as a browser does. */
final class Browser {
  static final String FORM = "application/x-www-form-urlencoded";

  private final HttpClient http = HttpClient.newHttpClient();
  private final int port;
  private final String who;
  private String device = "";

  /** One that was paired by a link, under the name of who holds it. */
  static Browser paired(App app, String who) {
    Browser browser = new Browser(app.port(), who);
    browser.pair(app.code().path(), who + "'s phone");
    return browser;
  }

  Browser(int port, String who) {
    this.port = port;
    this.who = who;
  }

  /** The same browser with its cookies, where the program listens now. */
  Browser at(int otherPort) {
    Browser same = new Browser(otherPort, who);
    same.device = device;
    return same;
  }

  /** Opens a pairing link, gives a name and presses the button. */
  void pair(String link, String name) {
    Page done = get(link).is(200).form(link).with("name", name).keep();
    device = done.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
  }

  String cookie() {
    return device;
  }

  Page get(String path) {
    return ask("GET", path, null, BodyPublishers.noBody());
  }

  /** Follows a page's redirect. */
  Page follow(Page redirect) {
    return get(redirect.location());
  }

  Page post(String path, Map<String, String> fields) {
    return post(path, encoded(fields));
  }

  static String encoded(Map<String, String> fields) {
    return fields.entrySet().stream()
        .map(f -> encoded(f.getKey()) + "=" + encoded(f.getValue()))
        .collect(Collectors.joining("&"));
  }

  Page post(String path, String encodedBody) {
    return ask("POST", path, FORM, BodyPublishers.ofString(encodedBody));
  }

  Page ask(String method, String path, String type, HttpRequest.BodyPublisher body) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
            .header("Cookie", "who=" + encoded(who) + "; " + device)
            .method(method, body);
    if (!method.equals("GET")) {
      request.header("Origin", "http://127.0.0.1:" + port);
    }
    if (type != null) {
      request.header("Content-Type", type);
    }
    try {
      HttpResponse<byte[]> answer = http.send(request.build(), BodyHandlers.ofByteArray());
      return new Page(
          this,
          path,
          answer.statusCode(),
          answer.headers(),
          new String(answer.body(), StandardCharsets.UTF_8));
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
