package spindlebook.figures;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import spindlebook.card.Addressed;
import spindlebook.fold.CarBook;
import spindlebook.log.Histories;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;

/** A car's tables, to be taken away. */
public record TablePages(Histories histories) {
  /** A table of the list, and how long it is: {@code 574 rows}. */
  public record Row(String name, String href, String lines) {}

  public void list(Context ctx) {
    CarBook book = Addressed.car(ctx, histories);
    String name = book.details().orElseThrow().name();
    String car = "/cars/" + book.car().orElseThrow();
    List<Row> rows =
        Tables.of(book).stream()
            .map(t -> new Row(t.name(), car + "/tables/" + t.name(), lines(t.rows().size())))
            .toList();
    PageFrame frame =
        PageFrame.of("Tables · Spindlebook", "Tables").sub(name).up("The book", car + "/book");
    Html.show(ctx, Html.TEMPLATES.figuresTables(frame, rows));
  }

  private static String lines(int rows) {
    return rows == 1 ? "1 row" : rows + " rows";
  }

  public void table(Context ctx) {
    CarBook book = Addressed.car(ctx, histories);
    Table table =
        Tables.of(book).stream()
            .filter(t -> t.name().equals(ctx.pathParam("table")))
            .findFirst()
            .orElseThrow(NotFoundResponse::new);
    String file = book.car().orElseThrow() + "-" + table.name() + ".csv";
    ctx.header("Content-Disposition", "attachment; filename=\"" + file + "\"")
        .contentType("text/csv; charset=utf-8; header=present")
        .result(table.csv());
  }
}
