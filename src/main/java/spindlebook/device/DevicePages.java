package spindlebook.device;

import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import spindlebook.card.Days;
import spindlebook.page.Asked;
import spindlebook.page.Choice;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.units.LengthUnit;
import spindlebook.web.Hosts;

/** The paired devices: who they are, renaming, revoking, and a code for the next one. */
public record DevicePages(Devices devices, Codes codes, Hosts hosts) {
  private static final String LIST = "/devices";
  private static final String NEW_LINK = LIST + "/new-link";

  /**
   * One device in the list.
   *
   * @param href its own page; null for a reader who may not change it
   */
  public record OnList(
      String name, String href, boolean own, String may, String added, String seen) {}

  public void list(Context ctx) {
    Paired own = Door.device(ctx);
    List<OnList> lines =
        devices.all().stream()
            .map(
                d ->
                    new OnList(
                        d.name(),
                        own.keeps() ? LIST + "/" + d.id() : null,
                        d.id().equals(own.id()),
                        d.may(),
                        Days.day(d.added()),
                        Days.minute(d.seen())))
            .toList();
    PageFrame frame =
        PageFrame.of("Devices · Spindlebook", "Paired devices").up("all cars", "/cars");
    Html.show(ctx, Html.TEMPLATES.deviceList(frame, lines, own.keeps() ? NEW_LINK : null));
  }

  /** One device, and its name changed. */
  public void device(Context ctx) {
    Paired device = named(ctx);
    Asked a = Asked.of(ctx, LengthUnit.INCH, 0);
    String name = DeviceName.ask(a, "", device.name());
    if (a.ok()) {
      devices.rename(device.id(), name);
      Html.next(ctx, LIST);
      return;
    }
    String warning =
        (device.id().equals(Door.device(ctx).id())
                ? "This is the device in your hand: the book closes on it at once. "
                : "")
            + ifLast(devices, device);
    a.show(
        ctx,
        Html.TEMPLATES.deviceDevice(
            frame(device.name()).sub(device.may() + " · paired " + Days.day(device.added())),
            LIST + "/" + device.id(),
            a.parts(),
            warning.strip()));
  }

  /** What it means that no other device keeps the book; empty when one does. */
  static String ifLast(Devices devices, Paired device) {
    return device.keeps() && devices.all().stream().filter(Paired::keeps).count() == 1
        ? "No other device keeps the book: to pair one afterwards, start the program again and use"
            + " the code it prints."
        : "";
  }

  private static PageFrame frame(String heading) {
    return PageFrame.of(heading + " · Spindlebook", heading).up("devices", LIST);
  }

  public void revoke(Context ctx) {
    devices.revoke(named(ctx).id());
    // One of them may be in the hands of whoever holds the device that is out now.
    codes.endAll();
    Html.next(ctx, LIST);
  }

  /** Asks what the next device may do; looking at the page makes no code. */
  public void newLink(Context ctx) {
    keeper(ctx);
    Choice may =
        new Choice(
            "may",
            "The next device",
            "",
            "",
            List.of(
                new Choice.Option("look", "may only look", "writes nothing", true),
                new Choice.Option("keep", "keeps the book", "reads, writes, pairs others", false)));
    Html.show(ctx, Html.TEMPLATES.deviceNewlink(frame("Pair another device"), NEW_LINK, may, LIST));
  }

  /** A fresh code, as link, square code and short code. */
  public void makeLink(Context ctx) {
    keeper(ctx);
    Code code = codes.fresh(Html.posted(ctx).text("may").equals("keep"));
    List<String> links = hosts.shown().stream().map(address -> address + code.path()).toList();
    ctx.header("Cache-Control", "no-store");
    Html.show(
        ctx,
        Html.TEMPLATES.deviceLink(
            frame("Pair another device")
                .sub((code.keeps() ? "It will keep the book." : "It may only look.")),
            new Qr(links.get(0)),
            links,
            code.spoken()));
  }

  private Paired named(Context ctx) {
    keeper(ctx);
    return devices.byId(ctx.pathParam("device")).orElseThrow(NotFoundResponse::new);
  }

  private static void keeper(Context ctx) {
    if (!Door.device(ctx).keeps()) {
      throw new ForbiddenResponse();
    }
  }
}
