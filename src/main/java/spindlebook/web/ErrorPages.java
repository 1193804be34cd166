package spindlebook.web;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import spindlebook.page.Html;

/** Our page for what goes wrong before a page of ours is reached. */
final class ErrorPages extends ErrorHandler {
  @Override
  public boolean handle(Request request, Response response, Callback done) {
    Guard.headers(response.getHeaders());
    response.getHeaders().put("Content-Type", Html.TYPE);
    String page =
        request.getMethod().equals("HEAD") ? "" : Html.page(Problems.of(response.getStatus()));
    Content.Sink.write(response, true, page, done);
    return true;
  }

  /** For what could not even be read as a request. */
  @Override
  public ByteBuffer badMessageError(int status, String reason, HttpFields.Mutable headers) {
    Guard.headers(headers);
    headers.put("Content-Type", Html.TYPE);
    return ByteBuffer.wrap(Html.page(Problems.of(status)).getBytes(StandardCharsets.UTF_8));
  }
}
