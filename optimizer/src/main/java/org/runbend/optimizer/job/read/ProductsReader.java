package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.runbend.catalog.product.Board;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Coolant;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.Pump;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.source.Nearest;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.heat.CircuitParts;
import org.runbend.optimizer.heat.HeatRequest;
import org.runbend.optimizer.heat.need.SpaceLoss;
import org.runbend.optimizer.job.BoardsWish;
import org.runbend.optimizer.job.CoverFixing;
import org.runbend.optimizer.job.Groove;
import org.runbend.optimizer.job.Job;

/** Reads what a job wants from the catalog: pipe, plates, floor build-up and heating. */
final class ProductsReader {
    private static final double LONGEST = 1_000_000;
    private static final double LONGEST_TAIL = 100_000;
    private static final double ALLOWANCE = 0.02;
    private static final double BEND_CLEARANCE = 100;
    private static final double GAP = 5;
    private static final double MIN_PIECE = 150;
    private static final double COVERAGE = 0.85;
    private static final double PLATE_CLEARANCE = 5;
    private static final int MOST_LENGTHS = 12;
    private static final double INSULATION = 30;
    private static final double THICKEST = 500;
    private static final double SAME = 1e-9;

    private final Optional<Catalog> catalog;

    /**
     * A reader.
     *
     * @param catalog the catalog, if it could be read; without it no product is looked up
     */
    ProductsReader(Optional<Catalog> catalog) {
        this.catalog = catalog;
    }

    /** The pipe wanted, empty if something was wrong. */
    Optional<Job.PipeRequest> pipe(YamlMap m) {
        Optional<Pipe> product = look(
                m.require("product", "the part number of a pipe"),
                "pipe",
                Catalog::findPipe,
                Catalog::pipes,
                Pipe::sku);
        List<Double> tails = m.get("tails", ProductsReader::tails, List.of(0.0, 0.0));
        double allowance = m.get("allowance", v -> v.share(0, 1), ALLOWANCE);
        OptionalDouble limit = m.get(
                "loopLimit",
                v -> v.isText("none") ? OptionalDouble.empty() : OptionalDouble.of(v.length(1, LONGEST)),
                OptionalDouble.empty());
        return m.make(() -> product.map(p -> new Job.PipeRequest(p, tails.get(0), tails.get(1), allowance, limit)))
                .flatMap(Function.identity());
    }

    private static List<Double> tails(YamlValue value) {
        List<Double> tails = value.list(2, 2, "a list of two lengths [flow, return]").stream()
                .map(v -> v.length(0, LONGEST_TAIL))
                .toList();
        return tails.isEmpty() ? List.of(0.0, 0.0) : tails;
    }

    /**
     * The plates wanted, empty if something was wrong.
     *
     * @param pipe the pipe that must fit the grooves, if it is known
     * @param layout the layout whose spacing twin grooves must have, if it is known
     */
    Optional<Job.PlateRequest> plates(YamlMap m, Optional<Job.PipeRequest> pipe, Optional<Job.Layout> layout) {
        YamlValue wanted = m.require("product", "a list of part numbers of plates");
        List<YamlValue> names =
                wanted.isScalar() ? List.of(wanted) : wanted.list(1, 20, "a list of part numbers of plates");
        List<SpreaderPlate> products = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (YamlValue name : names) {
            if (!seen.add(name.text())) {
                name.fault("plate " + name.text() + " stands twice");
            }
            look(name, "plate", Catalog::findPlate, Catalog::plates, SpreaderPlate::sku)
                    .ifPresent(p -> {
                        pipe.ifPresent(w -> checkGroove(name, p, w.product()));
                        layout.ifPresent(l -> checkCentres(name, p, l.spacing()));
                        layout.ifPresent(l -> checkWidth(name, p, l.spacing()));
                        products.add(p);
                    });
        }
        double bendClearance = m.get("bendClearance", v -> v.length(0, 2000), BEND_CLEARANCE);
        double gap = m.get("gap", v -> v.length(0, 1000), GAP);
        double minPiece = m.get("minPiece", v -> v.length(0, 5000), MIN_PIECE);
        boolean byHeat = m.find("coverage").filter(v -> v.isText("auto")).isPresent();
        double coverage = m.get("coverage", v -> v.isText("auto") ? 1 : v.share(0, 1), COVERAGE);
        double clearance = m.get("plateClearance", v -> v.length(0, 1000), PLATE_CLEARANCE);
        double maxPiece = m.get(
                "maxPiece",
                v -> v.isText("none") ? Double.POSITIVE_INFINITY : v.length(Math.max(1, minPiece), LONGEST),
                Double.POSITIVE_INFINITY);
        double leastPerRun = m.get("leastPerRun", v -> v.share(0, 1), 0.0);
        OptionalInt maxLengths = m.get(
                "maxLengths",
                v -> v.isText("none") ? OptionalInt.empty() : OptionalInt.of(v.whole(1, MOST_LENGTHS)),
                OptionalInt.empty());
        return m.make(() -> new Job.PlateRequest(
                products,
                new Job.Share(coverage, leastPerRun, byHeat),
                new Job.Gaps(bendClearance, gap, clearance),
                new Job.Pieces(minPiece, maxPiece, maxLengths)));
    }

    private static void checkGroove(YamlValue place, SpreaderPlate plate, Pipe pipe) {
        if (!plate.takes(pipe)) {
            place.fault("plate " + plate.sku() + " has a groove for " + Plain.number(plate.grooveDiameter())
                    + " mm pipe, pipe " + pipe.sku() + " measures " + Plain.number(pipe.outer()) + " mm");
        }
    }

    private static void checkCentres(YamlValue place, SpreaderPlate plate, double spacing) {
        if (!plate.hasCentres(spacing)) {
            place.fault("plate " + plate.sku() + " has its grooves " + Plain.number(plate.centres())
                    + " mm apart, the spacing is " + Plain.number(spacing) + " mm");
        }
    }

    private static void checkWidth(YamlValue place, SpreaderPlate plate, double spacing) {
        double room = plate.room(spacing);
        if (plate.width() > room) {
            place.fault("plate " + plate.sku() + " is " + Plain.number(plate.width())
                    + " mm wide and would overlap its neighbour, there are " + Plain.number(room) + " mm");
        }
    }

    /**
     * The floor build-up, empty if something was wrong.
     *
     * @param groove what is cut into its board, if it is known
     */
    Optional<Job.Build> build(YamlMap m, Optional<Groove> groove) {
        Optional<Job.RoutedBoard> board = m.findMap("board").flatMap(b -> board(b, groove));
        double stays = board.map(Job.RoutedBoard::insulating).orElse(0.0);
        double insulation = m.get("insulation", v -> v.length(0, 500), stays > 0 ? stays : INSULATION);
        if (insulation < stays) {
            m.find("insulation")
                    .ifPresent(v -> v.fault("it is the foam under the pipe in all, and of the board "
                            + Plain.number(stays) + " mm stay there: give at least that, or leave it out"));
        }
        Optional<YamlMap> cover = m.findMap("cover");
        double thickness = cover.flatMap(c -> c.find("thickness"))
                .map(v -> v.length(0, 200))
                .orElse(12.0);
        String material = cover.flatMap(c -> c.find("material"))
                .map(v -> sku(v, "board", Catalog::findBoard, Catalog::boards, Board::sku))
                .orElse("birch-ply");
        CoverFixing fixing = cover.flatMap(c -> c.find("fixing"))
                .map(v -> v.oneOf(CoverFixing.class))
                .orElse(CoverFixing.FLOAT);
        double apart = cover.flatMap(c -> c.find("screwsApart"))
                .map(v -> v.length(100, 600))
                .orElse(CoverFixing.USUAL_APART);
        cover.ifPresent(c -> c.make(() -> material));
        Optional<YamlMap> finish = m.findMap("finish");
        double resistance = finish.flatMap(f -> f.find("resistance"))
                .map(v -> v.number(0, 5))
                .orElse(0.02);
        finish.ifPresent(f -> f.make(() -> resistance));
        Optional<BoardsWish> boards = m.findMap("boards").flatMap(b -> boards(b, fixing, apart));
        if (fixing == CoverFixing.SCREW && m.find("boards").isEmpty()) {
            cover.flatMap(c -> c.find("fixing"))
                    .ifPresent(v ->
                            v.fault("screws are placed on a floor that comes as boards: give build.boards beside it"));
        }
        return m.make(() -> new Job.Build(insulation, thickness, material, resistance, board, boards));
    }

    /** How the floor is to be made of boards. */
    private static Optional<BoardsWish> boards(YamlMap m, CoverFixing fixing, double apart) {
        OptionalDouble gap = m.find("perimeterGap")
                .map(v -> OptionalDouble.of(v.length(0, 50)))
                .orElse(OptionalDouble.empty());
        double joint = m.get("jointGap", v -> v.length(0, 10), BoardsWish.JOINT_GAP);
        double tolerance = m.get("tolerance", v -> v.length(0, 30), BoardsWish.TOLERANCE);
        Map<Integer, Double> scribe = new TreeMap<>();
        m.each("scribe", 200, "a list of edges such as {edge: 2, more: 15}", v -> {
            YamlMap edge = v.map();
            int number = edge.require("edge", "the number of an edge").whole(0, 9999);
            double more = edge.require("more", "what the edge has more").length(0, 100);
            scribe.put(number, more);
            return edge.make(() -> number);
        });
        boolean saw = m.get("cut", v -> v.oneOf(Cut.class), Cut.MACHINE) == Cut.SAW;
        return m.make(() -> new BoardsWish(gap, joint, tolerance, scribe, fixing, apart, saw));
    }

    /** How parts are cut from stock boards. */
    private enum Cut {
        SAW,
        MACHINE
    }

    /** What the groove is cut into; a groove that would leave too little of it is a fault. */
    private Optional<Job.RoutedBoard> board(YamlMap m, Optional<Groove> groove) {
        Optional<Board> board = look(
                m.require("material", "a board of the catalog"),
                "board",
                Catalog::findBoard,
                Catalog::boards,
                Board::sku);
        YamlValue place = m.require("thickness", "the thickness of the board");
        double thickness = place.length(0, THICKEST);
        double depth = groove.map(Groove::depth).orElse(0.0);
        double least = catalog.map(c -> c.routing().leastRest()).orElse(0.0);
        if (thickness > 0 && thickness < depth + least - SAME) {
            place.fault("a groove of " + Plain.number(depth) + " mm (pipe and plate) in a board of "
                    + Plain.number(thickness) + " mm leaves "
                    + (thickness > depth ? Plain.number(thickness - depth) + " mm" : "nothing")
                    + " under it; a board of " + Plain.number(depth + least) + " mm or more leaves the "
                    + Plain.number(least) + " mm of routing.leastRest in the catalog");
        }
        return m.make(() -> board.map(b -> new Job.RoutedBoard(b, thickness, thickness - depth)))
                .flatMap(Function.identity());
    }

    /**
     * Temperatures, pump and what else heat is reckoned with, empty if something was wrong.
     *
     * @param space how the space loses heat, if the job says it
     * @param circuit what else is in the circuit
     */
    Optional<Job.Heating> heating(YamlMap m, Optional<SpaceLoss> space, CircuitParts circuit) {
        HeatRequest request = new HeatRequestReader().heating(m, space, circuit);
        String coolant = m.find("coolant")
                .map(v -> sku(v, "coolant", Catalog::findCoolant, Catalog::coolants, Coolant::sku))
                .orElse("propylene-glycol-40");
        double flow = m.get("flow", v -> v.number(0, 95), 60.0);
        double room = m.get("room", v -> v.number(-20, 50), 20.0);
        double outside = m.get("outside", v -> v.number(-60, 50), -10.0);
        OptionalDouble coldest =
                m.find("coldest").map(v -> OptionalDouble.of(v.number(-60, 50))).orElse(OptionalDouble.empty());
        Optional<String> pump = m.find("pump").map(v -> sku(v, "pump", Catalog::findPump, Catalog::pumps, Pump::sku));
        if (flow <= room) {
            m.find("flow")
                    .orElse(m.self())
                    .fault("flow of " + Plain.number(flow) + " degrees C cannot heat a room of " + Plain.number(room)
                            + " degrees C");
        }
        boolean named = m.find("coolant").isPresent();
        request.source().ifPresent(s -> m.find("source")
                .filter(v -> s < flow)
                .ifPresent(v -> v.fault("source of " + Plain.number(s) + " degrees C cannot send a flow of "
                        + Plain.number(flow) + " degrees C")));
        return m.make(() -> new Job.Heating(coolant, flow, room, outside, coldest, pump, named, request));
    }

    private <T> String sku(
            YamlValue value,
            String what,
            BiFunction<Catalog, String, Optional<T>> find,
            Function<Catalog, List<T>> all,
            Function<T, String> sku) {
        return look(value, what, find, all, sku).map(sku).orElse("");
    }

    private <T> Optional<T> look(
            YamlValue value,
            String what,
            BiFunction<Catalog, String, Optional<T>> find,
            Function<Catalog, List<T>> all,
            Function<T, String> sku) {
        String name = value.text();
        if (name.isEmpty() || catalog.isEmpty()) {
            return Optional.empty();
        }
        Optional<T> product = find.apply(catalog.get(), name);
        if (product.isEmpty()) {
            List<String> sold = all.apply(catalog.get()).stream().map(sku).toList();
            String nearest = Nearest.hint(name, sold);
            value.fault("the catalog has no " + what + " " + Plain.quoted(name) + nearest);
        }
        return product;
    }
}
