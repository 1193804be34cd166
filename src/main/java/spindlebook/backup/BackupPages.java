package spindlebook.backup;

import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import spindlebook.device.Door;
import spindlebook.log.BookFile;
import spindlebook.page.Html;
import spindlebook.page.Notice;
import spindlebook.page.PageFrame;

/**
 * Where the backups are and how they stand. Who may only look sees that; the whole book in one file
 * is handed to devices that keep it.
 */
public record BackupPages(Backups backups, Path data, Clock clock) {
  private static final Logger LOG = LoggerFactory.getLogger(BackupPages.class);
  private static final String LIST = "/backups";

  public void list(Context ctx) {
    List<Notice> notices = new ArrayList<>();
    backups.warning().ifPresent(w -> notices.add(new Notice(Notice.Kind.PROBLEM, w)));
    String doing = backups.doing().orElse("");
    if (!doing.isEmpty()) {
      notices.add(new Notice(Notice.Kind.NOTE, doing + " …"));
      ctx.header("Refresh", "2");
    }
    PageFrame frame =
        PageFrame.of("Backups · Spindlebook", "Backups")
            .sub("Made by itself, ten quiet minutes after a change.")
            .up("all cars", "/cars")
            .notices(notices);
    ctx.header("Cache-Control", "no-store");
    Html.show(
        ctx,
        Html.TEMPLATES.backupBackups(
            frame, backups.standings(), backups.book().lastN(), LIST, Door.keeps(ctx)));
  }

  public void now(Context ctx) {
    backups.askNow();
    Html.next(ctx, LIST);
  }

  /** The book and its photos as one zip, sent while it is made. */
  public void download(Context ctx) {
    if (!Door.keeps(ctx)) {
      throw new ForbiddenResponse();
    }
    BookFile.Extent extent = backups.book().extent();
    BookZip zip = new BookZip(data, extent);
    String name = "spindlebook-" + BookCopy.time(clock.instant()) + "-n" + extent.n() + ".zip";
    ctx.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
    ctx.header("Cache-Control", "no-store");
    ctx.contentType("application/zip");
    try {
      zip.write(ctx.outputStream());
    } catch (IOException gone) {
      // What was sent has no end, and no zip reader takes it for whole.
      LOG.warn("a download broke off: {}", gone.toString());
    }
  }
}
