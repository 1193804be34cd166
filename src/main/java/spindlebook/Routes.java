package spindlebook;

import io.javalin.config.RoutesConfig;
import spindlebook.web.StaticFiles;

/** Every address of the program, in one table. */
final class Routes {
  private Routes() {}

  static void add(RoutesConfig r, App app) {
    r.get("/static/<file>", StaticFiles::serve);
    r.get("/healthz", app::health);
    r.get("/pair", app.pairing::ask);
    r.post("/pair", app.pairing::ask);
    r.get("/pair/{code}", app.pairing::pair);
    r.post("/pair/{code}", app.pairing::pair);
    r.get("/devices", app.devices::list);
    r.get("/devices/new-link", app.devices::newLink);
    r.post("/devices/new-link", app.devices::makeLink);
    r.get("/devices/{device}", app.devices::device);
    r.post("/devices/{device}", app.devices::device);
    r.post("/devices/{device}/revoke", app.devices::revoke);

    r.get("/backups", app.backups::list);
    r.post("/backups", app.backups::now);
    r.get("/backups/book.zip", app.backups::download);

    r.get("/", app.cars::home);
    r.get("/cars", app.cars::list);
    r.post("/cars", app.cars::create);
    r.get("/cars/new", app.cars::create);
    r.get("/cars/{car}", app.kept.page(app.cars::car));
    r.get("/cars/{car}/more", app.cars::more);
    r.get("/cars/{car}/details", app.cars::details);
    r.post("/cars/{car}/details", app.cars::details);
    r.post("/cars/{car}/corners", app.cars::addCorners);
    r.get("/cars/{car}/corners/new", app.cars::addCorners);
    r.get("/cars/{car}/settings", app.kept.page(app.adjustments::ofCar));
    r.get("/cars/{car}/happenings/new", app.happenings::happened);
    r.post("/cars/{car}/happenings", app.happenings::happened);
    r.get("/cars/{car}/tools", app.tools::list);
    r.get("/cars/{car}/tools/{tool}", app.tools::tool);
    r.post("/cars/{car}/tools/{tool}", app.tools::tool);
    r.post("/cars/{car}/tools/{tool}/retire", app.tools::retire);
    r.get("/cars/{car}/book", app.kept.page(app.book::book));
    r.get("/cars/{car}/tables", app.door.oneAtATime(app.tables::list));
    r.get("/cars/{car}/tables/{table}", app.door.oneAtATime(app.tables::table));

    r.get("/corners/{corner}", app.kept.page(app.corners::corner));
    r.get("/corners/{corner}/gaps", app.kept.page(app.corners::gaps));
    r.get("/corners/{corner}/life", app.kept.page(app.door.oneAtATime(app.life::life)));
    r.get("/corners/{corner}/limits", app.kept.page(app.limits::limits));
    r.get("/corners/{corner}/curves", app.kept.page(app.door.oneAtATime(app.align::curves)));
    r.get("/corners/{corner}/bump-steer", app.kept.page(app.door.oneAtATime(app.align::bumpSteer)));
    r.get("/corners/{corner}/rod-ends", app.kept.page(app.align::rodEnds));
    r.get("/corners/{corner}/alignment", app.kept.page(app.alignment::figures));
    r.post("/corners/{corner}/alignment", app.alignment::measure);
    r.get("/corners/{corner}/alignment/new", app.alignment::measure);
    r.get("/corners/{corner}/alignment/targets", app.alignment::targets);
    r.post("/corners/{corner}/alignment/targets", app.alignment::targets);
    r.get("/alignments/{alignment}/correct", app.alignment::correct);
    r.post("/alignments/{alignment}/correct", app.alignment::correct);
    r.get("/corners/{corner}/wheel", app.kept.page(app.align::wheel));
    r.get("/corners/{corner}/given", app.given::given);
    r.post("/corners/{corner}/given", app.given::given);
    r.get("/corners/{corner}/watch-points", app.kept.page(app.watchPoints::list));
    r.post("/corners/{corner}/watch-points", app.watchPoints::create);
    r.get("/corners/{corner}/watch-points/new", app.watchPoints::create);
    r.get("/corners/{corner}/watch-points/copy", app.copies::copy);
    r.post("/corners/{corner}/watch-points/copy", app.copies::copy);
    r.get("/corners/{corner}/watch-points/{point}", app.watchPoints::point);
    r.post("/corners/{corner}/watch-points/{point}", app.watchPoints::point);
    r.post("/corners/{corner}/watch-points/{point}/retire", app.watchPoints::retire);
    r.post("/corners/{corner}/adjusters", app.adjusters::create);
    r.get("/corners/{corner}/adjusters/new", app.adjusters::create);
    r.get("/corners/{corner}/adjusters/{adjuster}", app.adjusters::adjuster);
    r.post("/corners/{corner}/adjusters/{adjuster}", app.adjusters::adjuster);
    r.post("/corners/{corner}/adjusters/{adjuster}/retire", app.adjusters::retire);
    r.get("/corners/{corner}/adjustments", app.kept.page(app.adjustments::ofCorner));
    r.get("/corners/{corner}/adjustments/{adjuster}", app.adjustments::adjuster);
    r.post("/corners/{corner}/adjustments/{adjuster}", app.adjustments::adjust);
    r.post("/corners/{corner}/adjustments/{adjuster}/would-move", app.adjustments::wouldMove);
    r.get("/corners/{corner}/trial", app.kept.page(app.door.oneAtATime(app.trials::trial)));
    r.get("/corners/{corner}/rounds", app.kept.page(app.rounds::ofCorner));
    r.post("/corners/{corner}/rounds", app.rounds::start);
    r.get("/corners/{corner}/rounds/new", app.rounds::start);
    r.get("/corners/{corner}/paper", app.papers::ofCorner);

    r.get("/rounds/{round}", app.kept.page(app.rounds::round));
    r.get("/waiting", app.guide::waiting);
    r.get("/rounds/{round}/guide", app.guide::guide);
    r.post("/rounds/{round}/guide", app.guide::keep);
    r.post("/rounds/{round}/sent", app.guide::sent);
    r.get("/rounds/{round}/news", app.guide::news);
    r.post("/rounds/{round}/other-side", app.rounds::otherSide);
    r.post("/rounds/{round}/gap-tool", app.rounds::gapTool);
    r.get("/rounds/{round}/paper", app.papers::ofRound);
    r.get("/rounds/{round}/sheet", app.sheets::sheet);
    r.post("/rounds/{round}/sheet", app.sheets::read);
    r.get("/rounds/{round}/heights/new", app.heights::create);
    r.post("/rounds/{round}/heights", app.heights::create);

    r.get("/heights/{height}", app.heights::height);
    r.post("/heights/{height}/readings", app.heights::read);
    r.get("/heights/{height}/correct", app.corrections::height);
    r.post("/heights/{height}/correct", app.corrections::height);
    r.get("/readings/{reading}/correct", app.corrections::reading);
    r.post("/readings/{reading}/correct", app.corrections::reading);

    r.get("/cars/{car}/use", app.kept.page(app.uses::driven));
    r.post("/cars/{car}/use", app.uses::driven);
    r.get("/cars/{car}/to-do", app.kept.page(app.toDos::list));
    r.post("/cars/{car}/to-do", app.toDos::list);
    r.post("/to-do/{todo}/done", app.toDos::done);
    r.get("/cars/{car}/fasteners", app.kept.page(app.fasteners::ofCar));
    r.get("/corners/{corner}/fasteners", app.kept.page(app.fasteners::ofCorner));
    r.get("/corners/{corner}/fasteners/{adjuster}", app.fasteners::fastener);
    r.post("/corners/{corner}/fasteners/{adjuster}", app.fasteners::fastener);
    r.get("/corners/{corner}/telltales", app.kept.page(app.telltales::list));
    r.post("/corners/{corner}/telltales", app.telltales::list);
    r.get("/cars/{car}/re-check", app.kept.page(app.reChecks::reCheck));
    r.get("/cars/{car}/drive-check", app.kept.page(app.driveChecks::check));
    r.get("/cars/{car}/sides", app.kept.page(app.door.oneAtATime(app.comparing::sides)));
    r.get("/cars/{car}/compare", app.kept.page(app.door.oneAtATime(app.comparing::compare)));
    r.get("/cars/{car}/put-back", app.kept.page(app.door.oneAtATime(app.puttingBack::putBack)));
    r.get("/corners/{corner}/print", app.kept.page(app.driveChecks::print));
    r.get("/cars/{car}/sign-offs", app.kept.page(app.signOffs::list));
    r.post("/cars/{car}/sign-offs", app.signOffs::sign);
    r.get("/cars/{car}/sign-offs/new", app.signOffs::sign);
    r.get("/sign-offs/{signoff}", app.kept.page(app.signOffs::signOff));
    r.get("/sign-offs/{signoff}/since", app.kept.page(app.door.oneAtATime(app.signOffs::since)));
    r.get("/corners/{corner}/photos", app.photos::list);
    r.post("/corners/{corner}/photos", app.photos::add);
    r.get("/photos/{file}", app.photos::file);

    r.get("/entries/{entry}", app.entries::entry);
    r.post("/entries/{entry}/answer", app.entries::answer);
    r.post("/entries/{entry}/take-back", app.entries::takeBack);
    r.post("/entries/{entry}/counts", app.corrections::counts);
  }
}
