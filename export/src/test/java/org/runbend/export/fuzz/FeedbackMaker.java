package org.runbend.export.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.runbend.export.JsonIn;

/**
 * Makes small jobs that combine all keys, and from the kit that came of one further jobs: parts of its loop already routed, its
 * loop as a designer's own, turned with its room and rounded as drawings are. All follows from the dice.
 */
final class FeedbackMaker {
    private static final List<double[][]> ROOMS = List.of(
            new double[][] {{0, 0}, {1350, 0}, {1350, 1050}, {0, 1050}},
            new double[][] {{0, 0}, {1537, 0}, {1537, 1213}, {0, 1213}},
            new double[][] {{0, 0}, {1800, 0}, {1800, 750}, {900, 750}, {900, 1500}, {0, 1500}},
            new double[][] {{0, 0}, {1650, 0}, {1800, 300}, {1800, 900}, {1650, 1200}, {0, 1200}});

    private final Dice dice;
    private final double[][] room;
    private final double spacing;
    private final List<String> keepOuts = new ArrayList<>();
    private final String more;
    private final String layout;
    private final String port;

    FeedbackMaker(Dice dice) {
        this.dice = dice;
        this.room = dice.of(ROOMS);
        this.spacing = dice.of(List.of(150.0, 150.0, 120.0, 100.0, 137.5));
        if (dice.percent(40)) {
            keepOuts.add(String.format(
                    Locale.ROOT,
                    "circle: {centre: %%s, radius: %.1f}, clearance: %.1f",
                    dice.tenths(5, 60),
                    dice.tenths(10, 90)));
        }
        if (dice.percent(40)) {
            keepOuts.add(String.format(Locale.ROOT, "kind: bolt, point: %%s, clearance: %.1f", dice.tenths(10, 90)));
        }
        this.layout = wishes();
        this.more = products();
        this.port = dice.percent(60) ? "reach: 600" : "reach: 900";
    }

    private String wishes() {
        StringBuilder text = new StringBuilder();
        text.append(dice.percent(20) ? ", prefer: even-heat" : "");
        text.append(dice.percent(20) ? ", leftOutPrice: " + dice.whole(1, 12) : "");
        text.append(dice.percent(10) ? ", loops: auto" : dice.percent(10) ? ", loops: 2" : "");
        text.append(dice.percent(10) ? ", fit: coil" : "");
        if (dice.percent(25)) {
            double y = spacing / 2 + spacing * dice.whole(0, 4);
            double x = dice.tenths(80, 500);
            text.append(String.format(
                    Locale.ROOT,
                    ", veto: [{mustRun: [[%.1f, %.1f], [%.1f, %.1f]]}]",
                    x,
                    y,
                    x + dice.tenths(100, 800),
                    y));
        } else if (dice.percent(20)) {
            text.append(String.format(
                    Locale.ROOT, ", veto: [{noBend: [%.1f, %.1f, 50]}]", dice.tenths(0, 1300), dice.tenths(0, 1000)));
        }
        return text.toString();
    }

    private String products() {
        boolean thin = spacing < 125;
        return String.format(
                Locale.ROOT,
                "pipe: {product: %s, tails: [%d, %d]%s}%nplates: {product: %s, coverage: %d%%, minPiece: %d, plateClearance:"
                        + " %.1f, bendClearance: %d, gap: %d%s%s%s}%n",
                thin ? "PX-10" : "PX-16",
                dice.whole(0, 1500),
                dice.whole(0, 1500),
                dice.percent(20) ? ", loopLimit: " + dice.whole(6, 30) + " m" : "",
                thin ? "SP-10" : spacing == 150 && dice.percent(40) ? "[SP-1, SP-2]" : "SP-1",
                dice.whole(0, 100),
                dice.of(List.of(150, 150, 60, 1, 300)),
                dice.tenths(0, 20),
                dice.whole(0, 150),
                dice.whole(0, 20),
                dice.percent(25) ? ", maxLengths: " + dice.whole(1, 12) : "",
                dice.percent(25) ? ", maxPiece: " + dice.whole(300, 1200) : "",
                dice.percent(25) ? ", leastPerRun: " + dice.whole(0, 100) + "%" : "");
    }

    /** The job itself. */
    String job() {
        return job(layout, 0, 3);
    }

    /** The job with a part of a kit's loop already routed, as read off the floor with a tape. */
    String kept(JsonIn loop) {
        List<double[]> corners = corners(loop);
        if (corners.size() < 4) {
            return job();
        }
        int from = dice.whole(0, corners.size() - 3);
        int to = dice.whole(from + 2, Math.min(corners.size(), from + 9));
        double off = dice.of(List.of(0.0, 0.1, 0.2, 0.3));
        String part = corners.subList(from, to).stream()
                .map(p -> String.format(
                        Locale.ROOT, "[%.2f, %.2f]", p[0] + off * dice.whole(-1, 1), p[1] + off * dice.whole(-1, 1)))
                .collect(Collectors.joining(", ", "[[", "]]"));
        return job(layout + ", keepLaid: " + part, 0, 3);
    }

    /** The job with a kit's loop as the designer's own, all of it turned and rounded. */
    String own(JsonIn loop) {
        double degrees = dice.of(List.of(0.0, 30.0, 45.0, 90.0, 33.3, 271.7, 123.456));
        int decimals = dice.whole(1, 6);
        String points = corners(loop).stream()
                .map(p -> point(p[0], p[1], degrees, decimals))
                .collect(Collectors.joining(", ", ", loop: [", "]"));
        return job(points, degrees, decimals);
    }

    /** The job with its loop out of a kit's drawing. */
    String drawn(String dxf) {
        return job(", loop: {dxf: " + dxf + ", layer: PIPE}", 0, 3);
    }

    /** The catalog with numbers that a workshop would not have. */
    String catalog(String sound) {
        List<String> from =
                List.of("step: 10", "kerf: 3", "length: 1200", "width: 120", "fitted: 55", "cost: 3.10", "play: 0.5");
        List<String> to =
                List.of("step: 1", "kerf: 0", "length: 0.005", "width: 17", "fitted: 74.9", "cost: 0", "play: 0");
        int which = dice.whole(0, from.size() - 1);
        return sound.replace(from.get(which), to.get(which));
    }

    private String job(String layoutKeys, double degrees, int decimals) {
        List<String> outline = new ArrayList<>();
        for (double[] p : room) {
            outline.add(point(p[0], p[1], degrees, decimals));
        }
        List<String> things = new ArrayList<>();
        for (int i = 0; i < keepOuts.size(); i++) {
            String at = point(620 + 300 * i, 430 + 170 * i, degrees, decimals);
            things.add("{name: thing " + i + ", " + keepOuts.get(i).formatted(at) + "}");
        }
        return "job: Fed back\norder: F-1\ncatalog: workshop.yaml\nfloor:\n  outline: " + outline + "\n  keepOut: "
                + things
                + "\n  port: {at: " + point(0, 300, degrees, decimals) + ", " + port + "}\nlayout: {spacing: " + spacing
                + ", edge: " + spacing / 2 + layoutKeys + "}\n" + more;
    }

    private static String point(double x, double y, double degrees, int decimals) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return String.format(Locale.ROOT, "[%." + decimals + "f, %." + decimals + "f]", c * x - s * y, s * x + c * y);
    }

    /** Where the legs of a loop meet, its ends included; of a keyhole the outermost points of its arcs. */
    private static List<double[]> corners(JsonIn loop) {
        List<double[]> corners = new ArrayList<>();
        List<JsonIn> elements = loop.at("elements").list();
        corners.add(pair(elements.get(0).at("from")));
        for (JsonIn e : elements) {
            if (e.at("kind").text().equals("bend")) {
                double turn = e.at("turn").number();
                double half = Math.tan(Math.toRadians(Math.min(Math.abs(turn), 90)) / 2);
                addCorner(corners, e, "from", Math.signum(turn) * half);
                if (Math.abs(turn) > 135) {
                    addCorner(corners, e, "to", -Math.signum(turn) * half);
                }
            }
        }
        corners.add(pair(elements.get(elements.size() - 1).at("to")));
        return corners;
    }

    private static void addCorner(List<double[]> corners, JsonIn bend, String end, double along) {
        double[] p = pair(bend.at(end));
        double[] c = pair(bend.at("centre"));
        corners.add(new double[] {p[0] - along * (p[1] - c[1]), p[1] + along * (p[0] - c[0])});
    }

    private static double[] pair(JsonIn point) {
        return new double[] {point.list().get(0).number(), point.list().get(1).number()};
    }
}
