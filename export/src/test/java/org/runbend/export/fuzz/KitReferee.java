package org.runbend.export.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.runbend.export.HeatKeys;
import org.runbend.export.JsonIn;

/**
 * Works a kit.json out again from the geometry alone, against what the job asked for. Distances are those of JTS on chords
 * of two degrees, which the product does not use for them; a chord of a bend of up to 150 mm is off by under 0.03 mm.
 */
final class KitReferee {
    private static final double TOLERANCE = 0.1;
    private static final double CHORD_DEGREES = 2;

    private final JsonIn kit;
    private final FloorFacts facts;
    private final List<String> broken = new ArrayList<>();

    KitReferee(JsonIn kit, FloorFacts facts) {
        this.kit = kit;
        this.facts = facts;
    }

    /** An element as the file has it, with its points. */
    private record Part(boolean isRun, Coordinate from, Coordinate to, double length, double turn, LineString line) {}

    /** What is broken; empty if nothing is. */
    List<String> broken() {
        for (JsonIn loop : kit.at("loops").list()) {
            List<Part> parts =
                    loop.at("elements").list().stream().map(this::part).toList();
            rule(!parts.isEmpty(), "a loop has elements");
            List<JsonIn> leads = loop.at("leadIn").list();
            int first = (int) leads.get(0).whole();
            int last = parts.size() - (int) leads.get(1).whole();
            joints(parts, first, last);
            lengths(loop, parts, first, last);
            room(parts, first, last);
            apart(parts.subList(first, last));
            port(parts.subList(first, last));
        }
        loopsApart();
        if (kit.has("heating")) {
            heat(kit.at("heating"));
        }
        plates();
        coils();
        long total = kit.at("items").list().stream()
                .mapToLong(i -> i.at("price").whole() * i.at("quantity").whole())
                .sum();
        rule(total == kit.at("total").whole(), "the total is the sum of its lines");
        return broken;
    }

    /** Numbers all, and zones that add up. */
    private void heat(JsonIn heating) {
        for (String key : HeatKeys.NUMBERS) {
            rule(Double.isFinite(heating.at(key).number()), "heating." + key + " is a number");
        }
        double sum = heating.at("zones").list().stream()
                .mapToDouble(z -> z.at("upward").number() * z.at("area").number())
                .sum();
        double upward = heating.at("upward").number();
        rule(Math.abs(sum - upward) <= 0.05 + 0.002 * Math.abs(upward), "the heat is the sum of its zones");
        heating.at("warmUp")
                .list()
                .forEach(p -> rule(
                        Math.abs(p.at("surface").number()) < 300
                                && Math.abs(p.at("coolant").number()) < 300,
                        "a warm-up stays between what is there"));
        if (heating.has("circuit")) {
            JsonIn c = heating.at("circuit");
            double taken = c.at("floor").number()
                    + c.at("cylinder").number()
                    + c.at("blowers").number()
                    + c.at("kept").number();
            rule(Math.abs(taken - c.at("source").number()) < 0.1, "what the source gives goes somewhere");
        }
    }

    private Part part(JsonIn e) {
        Coordinate from = at(e.at("from"));
        Coordinate to = at(e.at("to"));
        double length = e.at("length").number();
        if (e.at("kind").text().equals("run")) {
            rule(near(from.distance(to), length) && length > 0.01, "a run is as long as its ends are apart");
            return new Part(true, from, to, length, 0, FloorFacts.line(List.of(from, to)));
        }
        double radius = e.at("radius").number();
        double turn = e.at("turn").number();
        Coordinate centre = at(e.at("centre"));
        List<Coordinate> arc = arc(from, centre, radius, turn);
        rule(radius >= facts.leastRadius() - 0.001, "a bend of " + radius + " mm is tighter than the pipe");
        rule(near(from.distance(centre), radius), "a bend begins on its circle");
        rule(near(arc.get(arc.size() - 1).distance(to), 0), "a bend ends where its angle says");
        rule(near(radius * Math.toRadians(Math.abs(turn)), length), "a bend is as long as radius x angle");
        return new Part(false, from, to, length, turn, FloorFacts.line(arc));
    }

    private static Coordinate at(JsonIn point) {
        List<JsonIn> pair = point.list();
        return new Coordinate(pair.get(0).number(), pair.get(1).number());
    }

    private static List<Coordinate> arc(Coordinate from, Coordinate centre, double radius, double turn) {
        double start = Math.atan2(from.y - centre.y, from.x - centre.x);
        int steps = Math.max(2, (int) Math.ceil(Math.abs(turn) / CHORD_DEGREES));
        List<Coordinate> points = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            double a = start + Math.toRadians(turn) * i / steps;
            points.add(new Coordinate(centre.x + radius * Math.cos(a), centre.y + radius * Math.sin(a)));
        }
        return points;
    }

    /** Each element begins where the one before ends, in its direction; runs are maximal. */
    private void joints(List<Part> parts, int first, int last) {
        for (int i = 1; i < parts.size(); i++) {
            Part a = parts.get(i - 1);
            Part b = parts.get(i);
            rule(near(a.to.distance(b.from), 0), "element " + i + " begins where the one before ends");
            rule(!(a.isRun && b.isRun) || i == first || i == last, "element " + i + ": a run follows a run");
            double kink = Math.IEEEremainder(heading(b, false) - heading(a, true), 2 * Math.PI);
            rule(
                    Math.abs(kink) < Math.toRadians(CHORD_DEGREES + 0.5),
                    "element " + i + " begins with a kink of " + kink);
        }
    }

    private static double heading(Part part, boolean atEnd) {
        int n = part.line.getNumPoints();
        Coordinate a = part.line.getCoordinateN(atEnd ? n - 2 : 0);
        Coordinate b = part.line.getCoordinateN(atEnd ? n - 1 : 1);
        return Math.atan2(b.y - a.y, b.x - a.x);
    }

    private void lengths(JsonIn loop, List<Part> parts, int first, int last) {
        double sum = parts.stream().mapToDouble(Part::length).sum();
        rule(Math.abs(sum - loop.at("floorLength").number()) < 0.01 * (1 + parts.size()), "floorLength is the sum");
        double outside =
                facts.port().distance(parts.get(0).from) + facts.port().distance(parts.get(parts.size() - 1).to);
        double cut = Math.ceil((sum + outside + facts.tails()) * (1 + facts.allowance()) - 1e-3);
        rule(Math.abs(cut - loop.at("cutLength").whole()) <= 1, "cutLength is " + cut);
        long quarters = parts.subList(first, last).stream()
                .mapToLong(p -> Math.round(Math.abs(p.turn) / 90))
                .sum();
        long turns = loop.at("turns").whole();
        rule(quarters <= turns && turns <= quarters + 2, turns + " turns, the bends make " + quarters);
        rule(!loop.has("turnBound") || loop.at("turnBound").whole() <= turns, "a bound over what was found");
    }

    /** The pipe stays on the floor, away from its outline, and out of what is kept free. */
    private void room(List<Part> parts, int first, int last) {
        Polygon floor = facts.floor();
        for (int i = 0; i < parts.size(); i++) {
            Part p = parts.get(i);
            rule(floor.contains(FloorFacts.point(new double[] {p.from.x, p.from.y})), "the pipe leaves the floor");
            double away = p.line.distance(floor.getExteriorRing());
            rule(
                    i < first || i >= last || away >= facts.edge() - facts.slack() - TOLERANCE,
                    String.format(Locale.ROOT, "the pipe is %.2f mm from the outline, %.2f asked", away, facts.edge()));
            for (FloorFacts.Grown k : facts.keepOuts()) {
                double free = p.line.distance(k.core());
                rule(
                        free >= k.reach() - TOLERANCE,
                        String.format(Locale.ROOT, "the pipe is %.2f mm from a keep-out, %.2f asked", free, k.reach()));
            }
        }
    }

    /** Parallel runs keep the spacing, and so does what is further apart along the pipe than two spacings. */
    private void apart(List<Part> parts) {
        double[] start = new double[parts.size() + 1];
        for (int i = 0; i < parts.size(); i++) {
            start[i + 1] = start[i] + parts.get(i).length;
        }
        for (int i = 0; i < parts.size(); i++) {
            for (int j = i + 2; j < parts.size(); j++) {
                double between = start[j] - start[i + 1];
                double round = start[parts.size()] - start[j + 1] + start[i] + facts.spacing();
                double far = Math.min(between, round);
                double away = parts.get(i).line.distance(parts.get(j).line);
                rule(
                        far <= 2.2 * facts.spacing() || away >= 0.9 * facts.spacing() - TOLERANCE,
                        String.format(Locale.ROOT, "elements %d and %d come within %.1f mm", i, j, away));
                rule(far <= 1 || away > 1, "the pipe meets itself at elements " + i + " and " + j);
            }
        }
    }

    /** Pipes of different loops never meet. */
    private void loopsApart() {
        List<List<Part>> loops = kit.at("loops").list().stream()
                .map(l -> l.at("elements").list().stream().map(this::part).toList())
                .toList();
        for (int i = 0; i < loops.size(); i++) {
            for (List<Part> later : loops.subList(i + 1, loops.size())) {
                double away = Double.POSITIVE_INFINITY;
                for (Part a : loops.get(i)) {
                    for (Part b : later) {
                        away = Math.min(away, a.line.distance(b.line));
                    }
                }
                rule(away >= 0.9 * facts.spacing() - TOLERANCE, "two loops come within " + away + " mm");
            }
        }
    }

    private void port(List<Part> parts) {
        Coordinate port = facts.port();
        Coordinate flow = parts.get(0).from;
        Coordinate back = parts.get(parts.size() - 1).to;
        double reach = facts.reach() + facts.slack() + TOLERANCE;
        rule(flow.distance(port) <= reach && back.distance(port) <= reach, "both ends lie at the port");
        rule(flow.distance(back) <= 1.1 * facts.spacing(), "both ends lie side by side");
    }

    private void plates() {
        JsonIn plates = kit.at("plates");
        Map<String, List<Double>> wanted = new TreeMap<>();
        for (JsonIn piece : plates.at("pieces").list()) {
            double length = piece.at("length").number();
            wanted.computeIfAbsent(piece.at("product").text(), p -> new ArrayList<>())
                    .add(length);
            for (JsonIn place : piece.at("runs").list()) {
                JsonIn run = run(place);
                double from = place.at("from").number();
                rule(run.at("kind").text().equals("run"), "a plate lies on a run");
                rule(
                        from >= -TOLERANCE && from + length <= run.at("length").number() + TOLERANCE,
                        "a plate ends with its run");
            }
        }
        Map<String, List<Double>> cut = new TreeMap<>();
        for (JsonIn stock : plates.at("stock").list()) {
            List<Double> cuts =
                    stock.at("cuts").list().stream().map(JsonIn::number).toList();
            cut.computeIfAbsent(stock.at("product").text(), p -> new ArrayList<>())
                    .addAll(cuts);
            double used =
                    cuts.stream().mapToDouble(c -> c).sum() + plates.at("kerf").number() * (cuts.size() - 1);
            rule(used <= stock.at("length").number() + TOLERANCE, "cuts and kerfs fit their plate");
        }
        wanted.values().forEach(l -> l.sort(null));
        cut.values().forEach(l -> l.sort(null));
        rule(wanted.equals(cut), "every piece is cut once: " + wanted + " of " + cut);
        rule(plates.at("bound").whole() <= plates.at("bought").whole(), "bound <= bought");
        rule(plates.at("bought").whole() <= plates.at("runByRun").whole(), "bought <= run by run");
    }

    private JsonIn run(JsonIn place) {
        return kit.at("loops").list().stream()
                .filter(l -> l.at("name").text().equals(place.at("loop").text()))
                .findFirst()
                .orElseThrow()
                .at("elements")
                .list()
                .get((int) place.at("element").whole());
    }

    private void coils() {
        double cut = 0;
        for (JsonIn coil : kit.at("coils").list()) {
            double used = coil.at("cuts").list().stream()
                    .mapToDouble(c -> c.at("length").number())
                    .sum();
            cut += used;
            rule(near(coil.at("length").number() - used, coil.at("left").number()), "what is left of a coil");
            rule(coil.at("left").number() >= 0, "a coil is long enough");
        }
        double wanted = kit.at("loops").list().stream()
                .mapToDouble(l -> l.at("cutLength").number())
                .sum();
        rule(near(cut, wanted), "the coils give what the loops need");
        rule(kit.at("coilBound").whole() <= kit.at("coilCost").whole(), "coil bound <= coil cost");
    }

    private static boolean near(double a, double b) {
        return Math.abs(a - b) < TOLERANCE;
    }

    private void rule(boolean holds, String text) {
        if (!holds) {
            broken.add(text);
        }
    }
}
