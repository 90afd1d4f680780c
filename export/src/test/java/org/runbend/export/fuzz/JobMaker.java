package org.runbend.export.fuzz;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/** Jobs as a customer might send them: all keys, all kinds of floors, sound in form; some cannot be built. */
final class JobMaker {
    private static final double INCH = 25.4;
    private static final List<Double> REACHES = List.of(0.0, 330.0, 500.0, 2000.0);

    /** As many loops as it takes, up to this many. */
    private static final int AUTO = 7;

    private final Dice dice;
    private final boolean inches;

    JobMaker(Dice dice) {
        this.dice = dice;
        this.inches = dice.percent(12);
    }

    MadeJob job() {
        FloorSketch floor = new FloorMaker(dice).floor();
        Fit fit = fit();
        Map<String, Object> tree = new LinkedHashMap<>();
        if (inches || dice.percent(20)) {
            tree.put("units", inches ? "in" : "mm");
        }
        tree.put("job", OddTexts.title(dice));
        tree.put("order", OddTexts.title(dice));
        for (String key : List.of("customer", "date", "revision")) {
            if (dice.percent(30)) {
                tree.put(key, OddTexts.title(dice));
            }
        }
        tree.put("catalog", "../workshop.yaml");
        List<FloorFacts.Grown> keepOuts = new ArrayList<>();
        double[] port = port(floor);
        double reach = dice.of(REACHES);
        boolean measured = inches
                ? false
                : dice.percent(6)
                        && floor.through().isEmpty()
                        && floor.corners().size() < 9;
        if (measured) {
            floor = rebased(floor);
            port = port(floor);
        }
        tree.put("floor", floor(floor, port, reach, keepOuts, measured));
        double edge = dice.of(List.of(75.0, 75.0, 50.0, 30.0, 100.0, dice.tenths(8, 300)));
        boolean own = dice.percent(8);
        int loops = dice.percent(80) ? dice.whole(0, 1) : dice.of(List.of(2, 2, 3, 6, AUTO));
        if (own || loops > 1 || dice.percent(85) || fit.spacing != 150 || edge != 75) {
            Map<String, Object> layout = layout(fit.spacing, edge, loops);
            if (dice.percent(5)) {
                List<Object> laid = List.of(point(somewhere(floor)), point(somewhere(floor)), point(somewhere(floor)));
                layout.put("keepLaid", dice.percent(50) ? List.of(laid) : List.of(laid.subList(0, 2)));
            }
            if (dice.percent(12)) {
                layout.put("veto", pipeRules(floor, keepOuts));
            }
            if (own) {
                layout.put("loop", ownLoop(floor, edge, fit.spacing));
            }
            tree.put("layout", layout);
        }
        double[] tails = {dice.whole(0, 2000), dice.whole(0, 3) * 500.0};
        int allowance = dice.of(List.of(0, 2, 2, 5, 10, 100));
        tree.put("pipe", pipe(fit.pipe, tails, allowance));
        tree.put("plates", plates(fit.plates));
        if (dice.percent(30)) {
            tree.put("build", build());
        }
        if (dice.percent(30)) {
            tree.put("heating", heating());
            if (dice.percent(30)) {
                tree.put("space", space());
            }
            if (dice.percent(30)) {
                tree.put("circuit", circuit());
            }
        }
        return new MadeJob(
                tree,
                own,
                new FloorFacts(
                        floor.ring(),
                        measured ? 6 : floor.through().isEmpty() ? 0.01 : 0.6,
                        keepOuts,
                        edge,
                        fit.spacing,
                        new Coordinate(port[0], port[1]),
                        Math.max(2.2 * fit.spacing, reach) + Math.max(0, loops - 1) * fit.spacing,
                        tails[0] + tails[1],
                        allowance / 100.0,
                        fit.leastRadius));
    }

    /** A measured floor has its first corner at the origin, its second on the x axis. */
    private static FloorSketch rebased(FloorSketch floor) {
        double[] a = floor.corners().get(0);
        double[] b = floor.corners().get(1);
        double turn = -Math.toDegrees(Math.atan2(b[1] - a[1], b[0] - a[0]));
        return floor.placed(0, -a[0], -a[1]).placed(turn, 0, 0);
    }

    private record Fit(String pipe, List<String> plates, double spacing, double leastRadius) {}

    /** Pipe, plates and spacing that belong together; the numbers are those of the demo catalog. */
    private Fit fit() {
        double any = dice.of(List.of(100.0, 120.0, 150.0, 200.0, 300.0, dice.tenths(110, 300)));
        return switch (dice.whole(0, 5)) {
            case 0 -> new Fit("PX-10", List.of("SP-10"), any, 40);
            case 1 -> new Fit("PX-12", List.of("SP-12"), any, 50);
            case 2 -> new Fit("PX-16", List.of("SP-1"), Math.max(any, 120), 55);
            case 3 -> new Fit("PX-16", List.of("SP-2"), 150, 55);
            default -> new Fit("PX-16", List.of("SP-1", "SP-2"), 150, 55);
        };
    }

    /** On the outline most of the time, sometimes inside, off the outline or far away. */
    private double[] port(FloorSketch floor) {
        List<double[]> ring = floor.corners();
        int side = dice.whole(0, ring.size() - 1);
        double[] a = ring.get(side);
        double[] b = ring.get((side + 1) % ring.size());
        double share = dice.whole(0, 10) / 10.0;
        double far = dice.percent(75) ? 0 : dice.tenths(-320, 320);
        return new double[] {
            FloorSketch.tenth(a[0] + share * (b[0] - a[0])), FloorSketch.tenth(a[1] + share * (b[1] - a[1]) + far)
        };
    }

    private Map<String, Object> floor(
            FloorSketch sketch, double[] port, double reach, List<FloorFacts.Grown> keepOuts, boolean measured) {
        Map<String, Object> floor = new LinkedHashMap<>();
        if (measured) {
            floor.put("measured", measured(sketch));
        } else {
            floor.put("outline", outline(sketch));
        }
        if (dice.percent(40)) {
            floor.put("marks", marks(sketch));
        }
        if (dice.percent(45)) {
            floor.put("keepOut", keepOuts(sketch, keepOuts));
        }
        if (dice.percent(20)) {
            double[] p = somewhere(sketch);
            floor.put(
                    "unheated", List.of(map("name", OddTexts.title(dice), "polygon", square(p, dice.tenths(20, 400)))));
        }
        if (dice.percent(12)) {
            floor.put("supports", supports(sketch));
        }
        floor.put("port", reach > 0 ? map("at", point(port), "reach", length(reach)) : map("at", point(port)));
        return floor;
    }

    private List<Object> outline(FloorSketch sketch) {
        List<Object> outline = new ArrayList<>();
        int n = sketch.corners().size();
        for (int i = 0; i <= n; i++) {
            double[] through = i == 0 ? null : sketch.through().get(i - 1);
            Object corner = point(sketch.corners().get(i % n));
            if (through != null) {
                outline.add(map("arc", List.of(point(through), corner)));
            } else if (i < n || dice.percent(10)) {
                outline.add(corner);
            }
        }
        return outline;
    }

    /** All sides and all diagonals, to the millimetre. */
    private Map<String, Object> measured(FloorSketch sketch) {
        List<Object> names = new ArrayList<>();
        List<Object> lengths = new ArrayList<>();
        List<double[]> c = sketch.corners();
        for (int i = 0; i < c.size(); i++) {
            names.add("C" + i);
            for (int j = 0; j < i; j++) {
                double d = Math.hypot(c.get(i)[0] - c.get(j)[0], c.get(i)[1] - c.get(j)[1]);
                lengths.add(List.of("C" + j, "C" + i, length(Math.rint(d))));
            }
        }
        String round = area(c) < 0 ? "clockwise" : "anticlockwise";
        return map("corners", names, "lengths", lengths, "round", round);
    }

    private static double area(List<double[]> c) {
        double sum = 0;
        for (int i = 0; i < c.size(); i++) {
            double[] a = c.get(i);
            double[] b = c.get((i + 1) % c.size());
            sum += a[0] * b[1] - a[1] * b[0];
        }
        return sum / 2;
    }

    private List<Object> marks(FloorSketch sketch) {
        List<Object> marks = new ArrayList<>();
        int count = dice.whole(1, 3);
        for (int i = 0; i < count; i++) {
            String text = OddTexts.title(dice);
            marks.add(
                    dice.percent(50)
                            ? map("edge", "" + dice.whole(0, sketch.corners().size() - 1), "text", text)
                            : map("point", point(somewhere(sketch)), "text", text));
        }
        return marks;
    }

    private List<Object> keepOuts(FloorSketch sketch, List<FloorFacts.Grown> facts) {
        List<Object> all = new ArrayList<>();
        int count = dice.whole(1, dice.percent(5) ? 25 : 3);
        for (int i = 0; i < count; i++) {
            Map<String, Object> k = new LinkedHashMap<>();
            if (dice.percent(70)) {
                k.put("name", OddTexts.title(dice));
            }
            if (dice.percent(70)) {
                k.put("kind", dice.of(List.of("vent", "drain", "bolt", "anchor", "pillar", "hatch", "other")));
            }
            double clearance = dice.percent(15) ? -1 : dice.of(List.of(0.0, 20.0, 40.0, 60.0, dice.tenths(0, 300)));
            double grown = Math.max(0, clearance);
            double[] p = somewhere(sketch);
            switch (dice.whole(0, 2)) {
                case 0 -> {
                    double radius = dice.tenths(1, 120);
                    k.put("circle", map("centre", point(p), "radius", length(radius)));
                    facts.add(new FloorFacts.Grown(FloorFacts.point(p), grown + radius));
                }
                case 1 -> {
                    k.put("point", point(p));
                    facts.add(new FloorFacts.Grown(FloorFacts.point(p), grown));
                }
                default -> {
                    double side = dice.tenths(5, 250);
                    k.put("polygon", square(p, side));
                    Polygon core = FloorFacts.polygon(corners(p, side));
                    facts.add(new FloorFacts.Grown(core, grown));
                }
            }
            if (clearance >= 0) {
                k.put("clearance", length(clearance));
            }
            all.add(k);
        }
        return all;
    }

    private List<Object> supports(FloorSketch sketch) {
        List<Object> all = new ArrayList<>();
        int count = dice.whole(1, 3);
        for (int i = 0; i < count; i++) {
            List<Object> line = List.of(point(somewhere(sketch)), point(somewhere(sketch)));
            Map<String, Object> support = map("name", OddTexts.title(dice), "line", line);
            maybe(support, "width", length(dice.tenths(1, 120)));
            maybe(support, "cross", dice.of(List.of("square", "never")));
            all.add(support);
        }
        return all;
    }

    /** Words of a fitter: no bends in a circle, no pipe in a region, pipe along a line. */
    private List<Object> pipeRules(FloorSketch sketch, List<FloorFacts.Grown> facts) {
        double[] p = somewhere(sketch);
        double size = dice.tenths(10, 200);
        return switch (dice.whole(0, 3)) {
            case 0 -> {
                facts.add(new FloorFacts.Grown(FloorFacts.polygon(corners(p, size)), 0));
                yield List.of(map("noPipe", square(p, size)));
            }
            case 1 -> List.of(map("mustRun", List.of(point(p), point(somewhere(sketch)))));
            default -> List.of(map("noBend", List.of(length(p[0]), length(p[1]), length(size))));
        };
    }

    /** A loop once round in the bounds of the floor, or through any points at all. */
    private List<Object> ownLoop(FloorSketch sketch, double edge, double spacing) {
        if (dice.percent(25)) {
            return List.of(point(somewhere(sketch)), point(somewhere(sketch)), point(somewhere(sketch)));
        }
        double west = FloorSketch.tenth(sketch.low(0) + edge);
        double south = FloorSketch.tenth(sketch.low(1) + edge);
        double east = FloorSketch.tenth(sketch.high(0) - edge);
        double north = FloorSketch.tenth(sketch.high(1) - edge);
        double back = FloorSketch.tenth(south + spacing);
        return List.of(
                point(new double[] {west, south}),
                point(new double[] {east, south}),
                point(new double[] {east, north}),
                point(new double[] {west, north}),
                point(new double[] {west, back}));
    }

    private double[] somewhere(FloorSketch sketch) {
        return new double[] {dice.tenths(sketch.low(0), sketch.high(0)), dice.tenths(sketch.low(1), sketch.high(1))};
    }

    private static List<double[]> corners(double[] p, double side) {
        double x = FloorSketch.tenth(p[0] + side);
        double y = FloorSketch.tenth(p[1] + side);
        return List.of(p, new double[] {x, p[1]}, new double[] {x, y}, new double[] {p[0], y});
    }

    private List<Object> square(double[] p, double side) {
        return corners(p, side).stream().map(c -> (Object) point(c)).toList();
    }

    private Map<String, Object> layout(double spacing, double edge, int loops) {
        Map<String, Object> layout = new LinkedHashMap<>();
        layout.put("spacing", length(spacing));
        layout.put("edge", length(edge));
        maybe(layout, "along", dice.of(List.of("free", "x", "y", "0", "90", "45", "" + dice.whole(-360, 360), "12.5")));
        maybe(layout, "leftOutPrice", dice.of(List.of("1", "0.85", "10", "3", "10000")));
        maybe(layout, "prefer", dice.of(List.of("long-runs", "even-heat")));
        if (loops > 0) {
            layout.put("loops", loops == AUTO ? "auto" : Integer.toString(loops));
        }
        return layout;
    }

    private void maybe(Map<String, Object> map, String key, Object value) {
        if (dice.percent(45)) {
            map.put(key, value);
        }
    }

    private Map<String, Object> pipe(String product, double[] tails, int allowance) {
        Map<String, Object> pipe = map("product", product, "tails", List.of(length(tails[0]), length(tails[1])));
        pipe.put("allowance", allowance + "%");
        if (dice.percent(10)) {
            pipe.put("loopLimit", dice.of(List.of("none", "40 m", "3 m")));
        }
        return pipe;
    }

    private Map<String, Object> plates(List<String> products) {
        Map<String, Object> plates = new LinkedHashMap<>();
        plates.put("product", products.size() == 1 && dice.percent(50) ? products.get(0) : products);
        maybe(plates, "bendClearance", length(dice.of(List.of(0.0, 50.0, 100.0, 400.0))));
        maybe(plates, "gap", length(dice.of(List.of(0.0, 5.0, 100.0))));
        maybe(plates, "minPiece", length(dice.of(List.of(0.0, 1.0, 50.0, 150.0, 900.0, 2500.0))));
        maybe(plates, "coverage", dice.of(List.of("0%", "50%", "85%", "99.9%", "100%")));
        maybe(plates, "plateClearance", length(dice.of(List.of(0.0, 5.0, 60.0))));
        return plates;
    }

    private Map<String, Object> build() {
        Map<String, Object> build = new LinkedHashMap<>();
        maybe(build, "insulation", length(dice.of(List.of(0.0, 30.0, 120.0))));
        maybe(build, "cover", map("thickness", length(dice.tenths(0, 40)), "material", "birch-ply"));
        maybe(build, "finish", map("resistance", dice.of(List.of("0", "0.02", "1.5"))));
        return build.isEmpty() ? map("insulation", "30") : build;
    }

    private Map<String, Object> heating() {
        Map<String, Object> heating = new LinkedHashMap<>();
        maybe(heating, "coolant", dice.of(List.of("water", "propylene-glycol-40", "ethylene-glycol-30")));
        maybe(heating, "flow", "" + dice.whole(25, 95));
        maybe(heating, "room", "" + dice.whole(-5, 24));
        maybe(heating, "outside", "" + dice.whole(-40, 20));
        maybe(heating, "pump", dice.of(List.of("CP-12", "CP-24")));
        if (dice.percent(30)) {
            maybe(heating, "source", dice.of(List.of("20", "65", "82", "105", "150")));
            maybe(heating, "volumeFlow", dice.of(List.of("0", "0.01", "4", "60", "1000")));
            maybe(heating, "spread", dice.of(List.of("0.1", "5", "60")));
            maybe(heating, "start", dice.of(List.of("-30", "5", "60")));
            maybe(heating, "coldest", dice.of(List.of("-60", "-10", "40")));
            maybe(heating, "humidity", dice.of(List.of("1%", "50%", "100%")));
            for (String key : List.of("timber", "bath", "sleeping", "metalUnder")) {
                maybe(heating, key, dice.of(List.of("yes", "no")));
            }
        }
        return heating.isEmpty() ? map("flow", "60") : heating;
    }

    private Map<String, Object> space() {
        if (dice.percent(40)) {
            return map("loss", dice.of(List.of("0", "22", "9000")));
        }
        Map<String, Object> wall = map("name", OddTexts.title(dice), "area", dice.of(List.of("0", "9", "1000")));
        if (dice.percent(50)) {
            wall.put("transmittance", dice.of(List.of("0", "5.8", "100")));
        } else {
            wall.put("ribs", dice.of(List.of("0%", "8%", "90%")));
            wall.put(
                    "layers",
                    List.of(
                            map(
                                    "thickness",
                                    length(30),
                                    "conductivity",
                                    "0.034",
                                    "rib",
                                    dice.of(List.of("0.13", "50"))),
                            map("thickness", length(dice.tenths(0, 40)), "conductivity", "0.13")));
        }
        Map<String, Object> space = map("surfaces", List.of(wall));
        maybe(space, "volume", dice.of(List.of("0", "7")));
        maybe(space, "airChanges", dice.of(List.of("0", "0.5", "100")));
        return space;
    }

    private Map<String, Object> circuit() {
        Map<String, Object> circuit = new LinkedHashMap<>();
        maybe(
                circuit,
                "heater",
                map("least", dice.of(List.of("0", "900")), "most", dice.of(List.of("1000", "5000")), "setting", "65"));
        if (!circuit.containsKey("heater")) {
            maybe(circuit, "engine", map("transfer", dice.of(List.of("1", "60", "5000"))));
        }
        maybe(circuit, "element", map("power", "1000"));
        maybe(circuit, "cylinder", map("litres", dice.of(List.of("0.1", "10")), "walls", dice.of(List.of("1", "2"))));
        maybe(circuit, "blowers", dice.of(List.of("0", "500", "100000")));
        maybe(circuit, "sensor", map("setting", dice.of(List.of("5", "33", "60"))));
        maybe(circuit, "litres", dice.of(List.of("0", "6", "9000")));
        maybe(circuit, "closed", dice.of(List.of("yes", "no")));
        maybe(circuit, "rise", dice.of(List.of("0", "1.2", "30")));
        maybe(circuit, "head", dice.of(List.of("-5", "0.4", "30")));
        return circuit.isEmpty() ? map("litres", "5") : circuit;
    }

    private List<Object> point(double[] p) {
        return List.of(length(p[0]), length(p[1]));
    }

    /** A length as somebody might write it; never further off than a millionth of an inch. */
    private String length(double mm) {
        if (inches) {
            return dice.percent(5) ? plain(mm, 1) + " mm" : plain(mm / INCH, 6);
        }
        return switch (dice.whole(0, 40)) {
            case 0 -> plain(mm / 10, 2) + " cm";
            case 1 -> plain(mm / 1000, 4) + "m";
            case 2 -> plain(mm, 1) + "mm";
            default -> plain(mm, 1);
        };
    }

    private static String plain(double value, int digits) {
        String text = String.format(Locale.ROOT, "%." + digits + "f", value + 0.0);
        return text.contains(".") ? text.replaceFirst("\\.?0+$", "") : text;
    }

    /** A mapping of keys and values given by turns. */
    static Map<String, Object> map(Object... parts) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < parts.length; i += 2) {
            map.put((String) parts[i], parts[i + 1]);
        }
        return map;
    }
}
