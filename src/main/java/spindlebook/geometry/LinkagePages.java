package spindlebook.geometry;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.Days;
import spindlebook.card.IntoBook;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenJoint;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.CornerText;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.LinkageRefused;
import spindlebook.linkage.Pose;
import spindlebook.linkage.Sheet;
import spindlebook.log.Histories;
import spindlebook.log.Json;
import spindlebook.measured.CornerModel;
import spindlebook.measured.JointSwing;
import spindlebook.measured.ModelRange;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.FormKey;
import spindlebook.page.FormPage;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.sums.OnPaperView;
import spindlebook.sums.SumPages;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/** A corner's joints as laid out, and laying one out. */
public record LinkagePages(Histories histories, IntoBook book) {
  private static final String SHEET = "linkage.css";
  private static final int HEIGHTS = 6;

  /** A car is no longer than this: beyond it a length was not meant. */
  private static final double MOST_MM = 10_000;

  public void linkage(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    PageFrame frame =
        CornerBar.page(card, "Align", "Linkage").caution(Cautions.FIGURES).ownSheets(SHEET);
    Optional<Card> mirror =
        histories.mirror(card).filter(m -> m.layout() == card.layout() && !card.joints().isEmpty());
    Html.show(
        ctx,
        Html.TEMPLATES.geometryLinkage(
            frame,
            LinkageView.of(card),
            "/corners/" + card.corner() + "/linkage",
            mirror.map(m -> m.place().words()).orElse(""),
            FormKey.fresh(card.lastChange())));
  }

  /** Whether the joints agree with what was read. */
  public void agree(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    AgreeView view = AgreeView.of(card, model(card), ctx.queryParam("of"), ctx.queryParam("lock"));
    Html.show(
        ctx,
        Html.TEMPLATES.geometryAgree(
            below(card, "Do they agree?").ownSheets("chart.css").modules("curve.js"), view));
  }

  /** Joints moved and rods made longer on paper, and back from what is wanted. */
  public void tried(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = SumPages.asked(ctx, card);
    String linkage = "/corners/" + card.corner() + "/linkage";
    OnPaperView view = new TryPaper(card, model(card), a).view(linkage + "/try");
    PageFrame frame = below(card, "Try it first").caution(Cautions.SETTING);
    SumPages.show(ctx, a, frame, view, linkage);
  }

  /** The corner as it moves. */
  public void moves(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    CornerModel model = model(card);
    ModelRange range = ModelRange.of(card, model);
    List<JointSwing> swings = JointSwing.of(card, histories.mirror(card));
    boolean locks = !card.layout().steered() || range.leftMm().value() != 0;
    String corner = "/corners/" + card.corner();
    Html.show(
        ctx,
        Html.TEMPLATES.geometryMoves(
            below(card, "As it moves").ownSheets(SHEET).modules("linkage.js"),
            Poses.of(card, model, swings),
            Poses.three(card, model),
            Poses.swings(card, range, swings),
            range.racksMm().size() > 1,
            corner + "/linkage",
            locks ? "" : corner + "/given"));
  }

  /** The same, for what follows the thumb. */
  public void poses(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    List<JointSwing> swings = JointSwing.of(card, histories.mirror(card));
    ctx.contentType("application/json")
        .result(Json.MAPPER.valueToTree(Poses.of(card, model(card), swings)).toString());
  }

  /** All that is computed of it, over heights and locks, as the command prints it. */
  public void table(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    CornerModel model = model(card);
    ModelRange range = ModelRange.of(card, model);
    List<Double> heights = range.poses(model.linkage(), 40).stream().map(Pose::heightMm).toList();
    csv(
        ctx,
        card.corner() + "-linkage",
        Sheet.of(model.linkage(), heights, range.racksMm().stream().sorted().toList()).csv());
  }

  private static void csv(Context ctx, String name, String csv) {
    ctx.header("Content-Disposition", "attachment; filename=\"" + name + ".csv\"")
        .contentType("text/csv; charset=utf-8; header=present")
        .result(csv);
  }

  /** The joints as laid out, as the command reads them. */
  public void joints(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Linkage laidOut =
        Optional.ofNullable(CornerJoints.of(card).linkage()).orElseThrow(NotFoundResponse::new);
    csv(ctx, card.corner() + "-joints", CornerText.write(laidOut.joints()));
  }

  /** Takes such a file, pasted or sent: an entry for each joint that it has otherwise. */
  public void file(Context ctx) throws IOException {
    Card card = Addressed.corner(ctx, histories);
    String linkage = "/corners/" + card.corner() + "/linkage";
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    String text = a.text("joints");
    List<UploadedFile> files = ctx.isMultipartFormData() ? ctx.uploadedFiles("file") : List.of();
    for (UploadedFile file : files) {
      try (InputStream in = file.content()) {
        text = file.size() == 0 ? text : new String(in.readAllBytes(), StandardCharsets.UTF_8);
      }
    }
    String problem = "";
    String at = height(a, card, null);
    if (a.ok()) {
      try {
        book.put(ctx, a, JointsFile.changed(card, text, at), linkage);
        return;
      } catch (LinkageRefused e) {
        problem = text.isBlank() ? "Paste its lines, or choose the file." : e.getMessage();
        a.wrong("joints", problem);
      }
    }
    FormPage form = a.page(below(card, "Joints as a file"), linkage + "/file", "Save", linkage);
    a.show(ctx, Html.TEMPLATES.geometryFile(form, text, problem));
  }

  private CornerModel model(Card card) {
    return CornerModel.of(card, histories.mirror(card)).orElseThrow(NotFoundResponse::new);
  }

  private static PageFrame below(Card card, String heading) {
    return CornerBar.page(card, "Align", heading)
        .up("Linkage", "/corners/" + card.corner() + "/linkage")
        .caution(Cautions.FIGURES);
  }

  /** Lays one out; then the next that is missing. */
  public void joint(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Joint joint = Posted.named(ctx.pathParam("joint"), Joint.class, null);
    if (joint == null) {
      throw new NotFoundResponse();
    }
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Content.JointPlace place = ask(a, card, joint);
    String linkage = "/corners/" + card.corner() + "/linkage";
    if (a.ok()) {
      book.put(ctx, a, place);
      Card then = histories.card(card.car(), card.corner());
      Html.next(
          ctx,
          LinkageView.next(then)
              .filter(next -> next.compareTo(joint) > 0)
              .map(next -> LinkageView.href(then, next))
              .orElse(Html.saved(linkage)));
      return;
    }
    PageFrame frame =
        CornerBar.under(card, Capital.of(joint.words), Capital.of(joint.words))
            .up("Linkage", linkage)
            .ownSheets(SHEET, "guide.css", "length-pad.css")
            .modules("length-pad.js");
    a.show(
        ctx,
        Html.TEMPLATES.geometryJoint(
            a.page(frame, LinkageView.href(card, joint), "Save", linkage),
            LinkageView.sketches(card)));
  }

  private static Content.JointPlace ask(Asked a, Card card, Joint joint) {
    SeenJoint was =
        card.joints().stream().filter(j -> j.place().joint() == joint).findFirst().orElse(null);
    Content.JointPlace before = was == null ? null : was.place();
    boolean way = joint.direction();
    if (way) {
      a.said("From one end of it to the other. Straight up is 0, 0, 1; fore and aft 0, 1, 0.");
    }
    TypedLength out =
        length(a, "out", way ? "Outboard" : "Out from the centre line")
            .hint(way ? "" : "To the middle of the bolt or ball. − across the centre line.")
            .was(before == null ? null : before.out())
            .needed(NEEDED);
    TypedLength back =
        length(a, "back", way ? "Rearward" : "Back from the plumb line")
            .hint(way ? "" : "One plumb line ahead of the axle, the same for every joint.")
            .was(before == null ? null : before.back())
            .needed(NEEDED);
    TypedLength up =
        length(a, "up", way ? "Up" : "Up from the floor")
            .was(before == null ? null : before.up())
            .needed(NEEDED);
    if (way && a.ok() && out.mm() == 0 && back.mm() == 0 && up.mm() == 0) {
      a.wrong("up", "It points nowhere: type at least one length other than 0.");
    }
    TypedAngle allows =
        joint.swings() == null
            ? null
            : a.angle("allows", "Hardware allows, each way")
                .hint("From its maker's table, or by a gauge, between the housing and the bolt.")
                .was(before == null ? null : before.allows())
                .check(
                    x -> x.rad() > 0 && x.rad() < Math.PI / 2,
                    "Type how far it swings from the middle, such as 18°.")
                .read();
    String at = height(a, card, before);
    return a.ok() ? new Content.JointPlace(card.corner(), joint, out, back, up, at, allows) : null;
  }

  private static final String NEEDED = "Type a length, such as 12 3/8.";

  private static Asked.Box<TypedLength> length(Asked a, String name, String label) {
    return a.signed(name, label)
        .check(l -> Math.abs(l.mm()) < MOST_MM, "That is longer than a car: type it again.");
  }

  /** At which height read before the wheel stood: the one of the other joints, or the last ride. */
  private static String height(Asked a, Card card, Content.JointPlace before) {
    List<SeenHeight> heights =
        new ArrayList<>(card.heights().stream().filter(SeenHeight::positionCounts).toList());
    String others =
        card.joints().stream()
            .map(j -> j.place().at())
            .filter(at -> at != null && card.height(at).isPresent())
            .reduce((first, last) -> last)
            .orElse(null);
    String ride =
        heights.stream()
            .filter(h -> h.name() == HeightName.RIDE && h.stopCounts())
            .map(SeenHeight::key)
            .reduce((first, last) -> last)
            .orElse(null);
    String first = before != null ? before.at() : others != null ? others : ride;
    List<SeenHeight> shown = heights.subList(Math.max(0, heights.size() - HEIGHTS), heights.size());
    return a.aside(
        "Where the wheel stands",
        () -> {
          Asked.Keys<String> keys =
              a.<String>one("at", "At this height")
                  .hint("All joints of a corner at one height, wheels straight ahead.");
          heights.stream()
              .filter(h -> shown.contains(h) || h.key().equals(first))
              .forEach(h -> keys.option(h.key(), h.words(), Days.day(h.at())));
          return keys.option("", null, "at none of them", "")
              .firstKey(first == null ? "" : first)
              .read();
        });
  }

  /** The same joints on the other side of the car: outboard is outboard there too. */
  public void mirror(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Card other =
        histories
            .mirror(card)
            .filter(m -> m.layout() == card.layout())
            .orElseThrow(NotFoundResponse::new);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Map<String, Content.JointPlace> places = new LinkedHashMap<>();
    for (SeenJoint seen : card.joints()) {
      if (seen.stands().counts()) {
        Content.JointPlace place = seen.place();
        places.put(
            Posted.word(place.joint()),
            new Content.JointPlace(
                other.corner(),
                place.joint(),
                place.out(),
                place.back(),
                place.up(),
                sameHeight(card, other, place.at()),
                place.allows()));
      }
    }
    book.put(ctx, a, places, "/corners/" + other.corner() + "/linkage");
  }

  /** The last height of the other corner at the place of the same name. */
  private static String sameHeight(Card card, Card other, String at) {
    Optional<HeightName> name =
        at == null ? Optional.empty() : card.height(at).map(SeenHeight::name);
    return other.heights().stream()
        .filter(
            h ->
                h.stopCounts()
                    && h.name().onePlace()
                    && name.filter(n -> n == h.name()).isPresent())
        .map(SeenHeight::key)
        .reduce((first, last) -> last)
        .orElse(null);
  }
}
