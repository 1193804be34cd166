package spindlebook.page;

import gg.jte.generated.precompiled.StaticTemplates;
import gg.jte.generated.precompiled.Templates;
import gg.jte.models.runtime.JteModel;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.util.regex.Pattern;

/** Pages out, forms in. */
public final class Html {
  public static final Templates TEMPLATES = new StaticTemplates();

  public static final String TYPE = "text/html; charset=utf-8";

  private static final String SAVED = "yes";
  private static final String STARTS = "spellcheck=\"false\" autofocus";
  private static final Pattern FIRST_WRONG =
      Pattern.compile("<p class=\"problem\"|(?= aria-invalid=\"true\")");

  private static final String MAIN = "<main id=\"main\" tabindex=\"-1\">";

  private Html() {}

  /** The address of a page that says above all else that what a form asked is in the book. */
  public static String saved(String address) {
    return address + (address.contains("?") ? "&" : "?") + "saved=" + SAVED;
  }

  public static void show(Context ctx, JteModel page) {
    String text = page.render();
    if (SAVED.equals(ctx.queryParam("saved"))) {
      String said = TEMPLATES.webNotice(new Notice(Notice.Kind.BOOK, "Saved.")).render();
      text = text.replace(MAIN, MAIN + said);
    }
    ctx.result(text).contentType(TYPE);
  }

  /** A page with a form, which may have come back with what was typed and what is wrong with it. */
  public static void show(Context ctx, Posted posted, JteModel page) {
    if (posted.ok()) {
      show(ctx, page);
      return;
    }
    // It may lie screens down: one starts in the first wrong box, or at what is said of a choice.
    String text = page.render().replace(STARTS, STARTS.replace(" autofocus", ""));
    ctx.status(HttpStatus.UNPROCESSABLE_CONTENT)
        .result(FIRST_WRONG.matcher(text).replaceFirst("$0 autofocus"))
        .contentType(TYPE);
  }

  /** Done; the browser asks for the next page itself, so that reloading sends nothing again. */
  public static void next(Context ctx, String address) {
    ctx.redirect(address, HttpStatus.SEE_OTHER);
  }

  public static Posted posted(Context ctx) {
    if (!ctx.isMultipartFormData()) {
      return new Posted(ctx.formParamMap());
    }
    // What is larger than a file may be was not taken in, and is told as that.
    try {
      return new Posted(ctx.formParamMap());
    } catch (Exception notTakenIn) { // The server throws checked ones that nobody declares.
      boolean tooMuch = false;
      for (Throwable why = notTakenIn; why != null; why = why.getCause()) {
        tooMuch |= String.valueOf(why.getMessage()).contains("exceed");
      }
      throw new HttpResponseException(tooMuch ? 413 : 400, "");
    }
  }

  public static void problem(Context ctx, ProblemPage problem) {
    ctx.status(problem.status()).result(page(problem)).contentType(TYPE);
  }

  public static String page(ProblemPage problem) {
    PageFrame frame = PageFrame.of(problem.heading() + " · Spindlebook", problem.heading());
    return TEMPLATES.webProblempage(frame, problem).render();
  }
}
