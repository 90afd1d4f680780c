package org.runbend.export.data;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.runbend.catalog.product.Packing;
import org.runbend.catalog.product.PressureTest;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.bare.BareFloor;
import org.runbend.optimizer.bare.Remedy;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.packing.Parcel;
import org.runbend.optimizer.plan.HoleTurn;
import org.runbend.optimizer.plan.KeptPipe;
import org.runbend.optimizer.plan.KitChange;
import org.runbend.optimizer.plan.KitHeat;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.KitWork;
import org.runbend.optimizer.plan.PlaceValue;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.PlateOptions;
import org.runbend.optimizer.plan.PortHole;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.plan.SawWork;
import org.runbend.optimizer.plates.PlateCut;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.quote.Offer;

/**
 * The whole plan for programs: JSON, UTF-8, keys in a fixed order. Lengths in mm, angles in degrees, money in minor units,
 * indices from 0. A bound that is not proved is left out.
 */
public final class KitJson {
    /** The rules of holes, clearances and verdicts that a plan of ours keeps. */
    static final int CONTRACT = 2;

    /** The plan as JSON; {@code files} are the names of all files written with it, this one too. */
    public byte[] bytes(KitPlan plan, List<String> files) {
        return bytes(plan, Optional.empty(), files);
    }

    /** The same, with what becomes of a kit that was cut before. */
    public byte[] bytes(KitPlan plan, Optional<KitChange> change, List<String> files) {
        return bytes(plan, change, Optional.empty(), files);
    }

    /** The same, with what a customer is asked for it. */
    public byte[] bytes(KitPlan plan, Optional<KitChange> change, Optional<Offer> offer, List<String> files) {
        try {
            JsonOut out = new JsonOut().open();
            out.whole("contract", CONTRACT);
            head(out, plan);
            FloorJson.write(out, plan.job(), plan.tape());
            port(out, plan);
            pipe(out, plan);
            if (plan.isOnLattice()) {
                lattice(out, plan);
            }
            out.list("loops", plan.loops(), loop -> loop(out, plan, loop));
            kept(out, plan);
            SetOutJson.write(out, plan.setOut());
            plates(out, plan);
            coils(out, plan);
            channel(out, plan);
            if (plan.boards().isPresent()) {
                BoardsJson.write(out, plan.boards().get());
            }
            if (plan.sensor().isPresent()) {
                sensor(out, plan.sensor().get());
            }
            if (plan.heat().isPresent()) {
                HeatJson.write(out, plan.heat().get().solution());
                output(out, plan.job(), plan.heat().get());
            }
            box(out, plan);
            if (offer.isPresent()) {
                OfferJson.write(out, offer.get());
            }
            if (change.isPresent()) {
                ChangeJson.write(out, plan, change.get());
            }
            out.list("checks", plan.checks(), check -> check(out, check));
            out.list("bareFloor", plan.bareFloor(), bare -> bareFloor(out, bare));
            out.texts("remarks", remarks(plan));
            out.text("fingerprint", plan.job().fingerprint()).texts("files", files);
            return out.close().finish();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Remarks of the plan, then those of its plates that are not among them. */
    public static List<String> remarks(KitPlan plan) {
        List<String> all = new ArrayList<>(plan.remarkWords());
        plan.plates().unused().stream()
                .map(p -> new Remark.PlateUnused(p).words())
                .filter(r -> !all.contains(r))
                .forEach(all::add);
        return all;
    }

    private static void head(JsonOut out, KitPlan plan) throws IOException {
        Job job = plan.job();
        out.text("job", job.title()).text("order", job.order());
        out.text("customer", job.customer()).text("date", job.date()).text("revision", job.revision());
        out.text("workshop", job.catalog().workshop()).text("units", "mm");
    }

    private static void port(JsonOut out, KitPlan plan) throws IOException {
        Job.Port port = plan.job().floor().port();
        out.open("port")
                .point("at", port.at())
                .number("reach", port.reach())
                .text("turn", port.turn().name().toLowerCase(Locale.ROOT))
                .list("holes", plan.holes(), hole -> hole(out, plan, hole))
                .close();
    }

    private static void hole(JsonOut out, KitPlan plan, PortHole hole) throws IOException {
        out.text("loop", hole.loop())
                .text("kind", hole.kind().name().toLowerCase(Locale.ROOT))
                .point("at", hole.at())
                .number("diameter", plan.job().groove().pad())
                .open("slot")
                .point("from", hole.slot().from())
                .point("to", hole.slot().to())
                .number("width", hole.slot().width());
        Optional<HoleTurn> turn = HoleTurn.of(plan.job());
        if (turn.isPresent()) {
            out.number("through", turn.get().through());
        }
        if (HoleTurn.goesUp(plan.job())) {
            out.number("beyond", HoleTurn.beyond(plan.job()));
        }
        out.number("lean", HoleTurn.lean(plan.job()));
        out.close()
                .number("toPort", hole.at().distance(plan.job().floor().port().at()))
                .flag("given", hole.given());
    }

    private static void pipe(JsonOut out, KitPlan plan) throws IOException {
        Job.PipeRequest request = plan.job().pipe();
        out.open("pipe")
                .text("product", request.product().sku())
                .text("name", request.product().name())
                .number("outer", request.product().outer())
                .number("minBendRadius", request.product().fittedRadius())
                .number("handBendRadius", request.product().handRadius())
                .number("bendRadius", plan.bendRadius())
                .numbers("tails", List.of(request.flowTail(), request.returnTail()))
                .number("allowance", request.allowance());
        Optional<PressureTest> test = request.product().test();
        if (test.isPresent()) {
            out.open("test")
                    .number("pressure", test.get().pressure())
                    .number("minutes", test.get().minutes());
            out.number("drop", test.get().drop().orElse(Double.NaN)).close();
        }
        out.close();
    }

    private static void lattice(JsonOut out, KitPlan plan) throws IOException {
        out.open("lattice")
                .point("origin", plan.lattice().origin())
                .number("angle", plan.lattice().angle())
                .number("spacing", plan.lattice().spacing())
                .whole("reachable", plan.lattice().reachable())
                .close();
    }

    private static void loop(JsonOut out, KitPlan plan, KitPlan.LoopPlan loop) throws IOException {
        out.text("name", loop.name()).whole("outlet", loop.outlet());
        List<Element> elements = loop.breakdown().elements();
        List<Integer> indices = new ArrayList<>();
        for (int i = 0; i < elements.size(); i++) {
            indices.add(i);
        }
        out.list("elements", indices, i -> element(out, elements, i));
        out.wholes("leadIn", List.of(loop.breakdown().leadIn(), loop.breakdown().leadOut()));
        out.number("floorLength", loop.floorLength())
                .number("straight", loop.breakdown().straightLength())
                .whole("quarterBends", loop.breakdown().quarterBends())
                .whole("returnBends", loop.breakdown().returnBends())
                .whole("cutLength", loop.cutLength())
                .number("flowEnd", CutLength.flowEnd(plan.job(), loop.breakdown()))
                .number("returnEnd", CutLength.returnEnd(plan.job(), loop.breakdown()))
                .whole("turns", loop.turns());
        if (!plan.isOnLattice()) {
            return;
        }
        PlacePrice price = plan.job().layout().leftOutPrice();
        out.whole("leftOut", loop.leftOut()).whole("turnBound", loop.turnBound());
        if (price.turn() == 1) {
            out.whole("objective", loop.objective()).whole("objectiveBound", loop.objectiveBound());
        } else {
            out.number("pieces", price.inTurns(loop.pieceCost())).number("objective", price.inTurns(loop.objective()));
            if (loop.objectiveBound().isPresent()) {
                out.number("objectiveBound", price.inTurns(loop.objectiveBound().getAsInt()));
            }
        }
        out.list("bare", loop.bare(), p -> out.point("at", p));
    }

    /** W, shares of 1, quarter bends, s. */
    /** No place, no conduit: then only what was wanted, and what can be reached nearest to it. */
    private static void sensor(JsonOut out, SensorPlan sensor) throws IOException {
        out.open("sensor");
        if (sensor.at().isPresent()) {
            out.point("at", sensor.at().get());
            out.points("conduit", sensor.conduit());
            out.number("conduitLength", sensor.length());
        }
        if (sensor.wanted().isPresent()) {
            out.point("wanted", sensor.wanted().get());
        }
        if (sensor.nearest().isPresent()) {
            out.point("nearest", sensor.nearest().get());
        }
        out.close();
    }

    private static void output(JsonOut out, Job job, KitHeat heat) throws IOException {
        PlaceValue value = heat.value();
        out.open("output")
                .number("watts", heat.upward())
                .number("wallToWall", heat.wallToWall())
                .number("share", heat.share())
                .open("place")
                .number("leftOutPrice", job.layout().leftOutPrice().inTurns())
                .number("straight", value.heat().straight())
                .number("withoutPlate", value.heat().bare())
                .number("bend", value.heat().bend())
                .number("empty", value.heat().empty())
                .number("beyondPlates", value.heat().clearance())
                .number("coverage", value.coverage())
                .number("bendSeconds", value.bendSeconds())
                .number("wattSeconds", value.wattSeconds())
                .close()
                .close();
    }

    private static void element(JsonOut out, List<Element> elements, int i) throws IOException {
        Element e = elements.get(i);
        out.text("kind", e instanceof Element.Run ? "run" : "bend");
        out.point("from", e.from()).point("to", e.to());
        if (e instanceof Element.Bend bend) {
            out.point("centre", bend.centre()).number("radius", bend.radius()).number("turn", bend.turn());
        }
        out.number("length", e.length());
        if (e instanceof Element.Run) {
            out.whole("number", RunNames.number(elements, i));
        }
    }

    /** Parts that were already routed; no key where a job keeps nothing. */
    private static void kept(JsonOut out, KitPlan plan) throws IOException {
        List<KeptPipe> parts = plan.kept();
        if (!parts.isEmpty()) {
            out.list("kept", parts, part -> out.whole("part", part.part())
                    .number("length", part.length())
                    .list("elements", part.places(), place -> out.text(
                                    "loop", plan.loops().get(place.loop()).name())
                            .whole("element", place.element())
                            .number("length", place.length())));
        }
    }

    private static void plates(JsonOut out, KitPlan plan) throws IOException {
        PlatePlan plates = plan.plates();
        Map<PlatePiece, String> names = CutList.plateNames(plan);
        CutSheet sheet = CutSheet.of(plan);
        out.open("plates")
                .list("pieces", plates.pieces(), piece -> piece(out, plan, piece, names.get(piece)))
                .list("stock", plates.stock(), stock -> stock(out, stock))
                .list("patterns", sheet.plates(), group -> pattern(out, group))
                .list("stopSettings", sheet.settings(), s -> out.text("product", s.product())
                        .number("length", s.length())
                        .texts("pieces", s.pieces()))
                .number("kerf", plates.kerf())
                .number("width", narrowest(plan.job()))
                .number("plateable", plates.plateable())
                .number("plated", plates.plated())
                .number("straight", plates.straight())
                .number("coverage", plates.coverage())
                .whole("bought", plates.bought())
                .whole("bound", plates.bound())
                .text("proof", plates.proof())
                .whole("runByRun", plates.runByRun())
                .whole("workCost", plates.workCost())
                .whole("objective", plates.objective());
        if (plates.objectiveBound().isPresent()) {
            out.whole("objectiveBound", plates.objectiveBound().getAsLong());
        }
        if (plan.plateOptions().isPresent()) {
            out.list("lengthCurve", plan.plateOptions().get().lengths(), option -> byLengths(out, option));
        }
        if (plan.plateOptions().filter(o -> !o.coverages().isEmpty()).isPresent()) {
            out.list("coverageCurve", plan.plateOptions().get().coverages(), option -> byCoverage(out, option));
        }
        out.close();
        out.open("sawWork");
        work(out, plan.sawWork());
        out.close();
        work(out.open("work"), plan.work()).close();
    }

    /** Seconds of work to cut and fit the kit. */
    static JsonOut work(JsonOut out, KitWork work) throws IOException {
        return out.number("seconds", work.seconds())
                .number("saw", work.saw())
                .number("bends", work.bends())
                .number("groove", work.groove())
                .number("plates", work.plates())
                .text("times", work.usual() ? "usual" : "catalog");
    }

    /** Without a {@code limit} any number of lengths was allowed. */
    private static void byLengths(JsonOut out, PlateOptions.ByLengths option) throws IOException {
        out.whole("limit", option.limit());
        costs(out, option.plates());
        work(out, option.work());
    }

    private static void byCoverage(JsonOut out, PlateOptions.ByCoverage option) throws IOException {
        out.number("asked", option.asked()).number("coverage", option.plates().coverage());
        costs(out, option.plates());
    }

    private static void costs(JsonOut out, PlatePlan plates) throws IOException {
        out.whole("bought", plates.bought())
                .whole("bound", plates.bound())
                .whole("pieces", plates.pieces().size())
                .whole("stock", plates.stock().size())
                .whole("workCost", plates.workCost());
    }

    private static void work(JsonOut out, SawWork work) throws IOException {
        out.whole("lengths", work.lengths())
                .whole("cuts", work.cuts())
                .whole("stopSettings", work.stopSettings())
                .whole("coilChanges", work.coilChanges());
        if (work.seconds().isPresent()) {
            out.number("seconds", work.seconds().getAsDouble());
        }
        if (work.cost().isPresent()) {
            out.whole("cost", work.cost().getAsLong());
        }
    }

    private static double narrowest(Job job) {
        return job.plates().products().stream()
                .mapToDouble(SpreaderPlate::width)
                .min()
                .orElse(Double.NaN);
    }

    /** Stock that is cut alike, with the running measures of its cuts from the end that is cut first. */
    private static void pattern(JsonOut out, CutSheet.Group group) throws IOException {
        out.text("product", group.product())
                .number("length", group.length())
                .texts(
                        "stock",
                        group.stock().stream().map(CutList.StockPiece::id).toList())
                .numbers(
                        "cutAt", group.pieces().stream().map(CutSheet.Piece::to).toList())
                .number("left", group.left())
                .text("restName", group.restName());
    }

    private static void piece(JsonOut out, KitPlan plan, PlatePiece piece, String name) throws IOException {
        out.text("name", name).text("product", piece.product()).number("length", piece.length());
        out.number(
                "width",
                plan.job()
                        .catalog()
                        .findPlate(piece.product())
                        .map(SpreaderPlate::width)
                        .orElse(Double.NaN));
        out.list("runs", piece.places(), place -> out.text(
                        "loop", plan.loops().get(place.loop()).name())
                .whole("element", place.element())
                .number("from", place.from()));
    }

    private static void stock(JsonOut out, PlateCut stock) throws IOException {
        out.text("id", stock.id())
                .text("product", stock.product())
                .number("length", stock.length())
                .numbers("cuts", stock.cuts())
                .number("offcut", stock.offcut());
    }

    private static void coils(JsonOut out, KitPlan plan) throws IOException {
        CoilPlan coils = plan.coils();
        out.list("coils", coils.coils(), coil -> out.text("id", coil.id())
                .text("product", coil.product())
                .number("length", coil.length())
                .list("cuts", coil.cuts(), cut -> out.text("loop", cut.loop()).number("length", cut.length()))
                .number("left", coil.left())
                .text("restGoesTo", plan.restGoesTo(coil)));
        out.whole("coilCost", coils.cost()).whole("coilBound", coils.bound()).text("coilProof", coils.proof());
    }

    private static void channel(JsonOut out, KitPlan plan) throws IOException {
        if (plan.channel().isEmpty()) {
            return;
        }
        ChannelPlan channel = plan.channel().get();
        out.open("channel")
                .number("width", channel.size().width())
                .number("bendWidth", channel.size().bendWidth())
                .number("depth", channel.size().depth())
                .number("pad", channel.size().pad())
                .number("cutter", channel.size().cutter())
                .open("passes")
                .whole("across", channel.passes().across())
                .number("stepOver", channel.passes().stepOver())
                .whole("rings", channel.passes().rings())
                .number("ringStep", channel.passes().ringStep())
                .whole("down", channel.passes().down())
                .number("layer", channel.passes().layer())
                .close();
        Optional<Job.RoutedBoard> board = plan.job().build().flatMap(Job.Build::board);
        if (board.isPresent()) {
            out.open("board")
                    .text("material", board.get().board().sku())
                    .text("name", board.get().board().name())
                    .number("thickness", board.get().thickness())
                    .number("rest", board.get().rest())
                    .close();
        }
        out.close();
    }

    private static void box(JsonOut out, KitPlan plan) throws IOException {
        out.list("items", plan.items(), item -> out.text("sku", item.sku())
                .text("name", item.name())
                .whole("quantity", item.quantity())
                .text("unit", item.unit())
                .whole("price", item.price())
                .number("weight", item.weight()));
        out.whole("total", plan.total())
                .text("currency", plan.job().catalog().currency())
                .number("weight", plan.weight())
                .texts("notSupplied", plan.notSupplied())
                .list("parcels", plan.parcels(), parcel -> parcel(out, parcel))
                .whole("parcelsAtLeast", plan.parcelsAtLeast());
    }

    private static void parcel(JsonOut out, Parcel parcel) throws IOException {
        if (parcel.carton().isPresent()) {
            Packing.Carton carton = parcel.carton().get();
            out.text("carton", carton.sku()).text("name", carton.name());
        }
        out.number("weight", parcel.weight());
        if (parcel.sendable().isPresent()) {
            out.flag("sendable", parcel.sendable().get());
        }
        out.list("lines", parcel.lines(), line -> out.text("sku", line.sku())
                .text("name", line.name())
                .whole("quantity", line.quantity())
                .text("unit", line.unit())
                .number("weight", line.sum())
                .text("place", line.place())
                .texts("instead", line.instead()));
    }

    private static void check(JsonOut out, PlanCheck check) throws IOException {
        out.text("name", check.name())
                .number("value", check.value())
                .number("limit", check.limit())
                .text("unit", check.unit())
                .text("verdict", check.verdict().name().toLowerCase(Locale.ROOT))
                .text("source", check.source());
    }

    private static void bareFloor(JsonOut out, BareFloor bare) throws IOException {
        out.text("reason", bare.reason().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .whole("places", bare.places())
                .number("area", bare.area())
                .whole("spots", bare.spots())
                .point("at", bare.at())
                .text("where", bare.where())
                .text("words", bare.sentence())
                .list("remedies", bare.remedies(), remedy -> remedy(out, remedy));
    }

    private static void remedy(JsonOut out, Remedy remedy) throws IOException {
        out.text("key", remedy.change().key());
        switch (remedy.change()) {
            case PORT -> out.point("to", new Point(remedy.x(), remedy.y()));
            case CLEARANCE ->
                out.text("keepOut", remedy.subject())
                        .number("from", remedy.from())
                        .number("to", remedy.to());
            default -> out.number("from", remedy.from()).number("to", remedy.to());
        }
        out.whole("here", remedy.here()).whole("more", remedy.more()).number("area", remedy.area());
    }
}
