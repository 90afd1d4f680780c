package org.runbend.export.fuzz;

import java.util.List;
import java.util.Locale;

/** Drawings (DXF) of floors as a customer might send them: an outline of lines or one line, and what else is on a sheet. */
final class DrawingMaker {
    private final Dice dice;
    private final StringBuilder text = new StringBuilder();

    DrawingMaker(Dice dice) {
        this.dice = dice;
    }

    String drawing() {
        if (dice.percent(70)) {
            tags(
                    "0",
                    "SECTION",
                    "2",
                    "HEADER",
                    "9",
                    "$INSUNITS",
                    "70",
                    dice.of(List.of("0", "1", "4", "5", "6", "99")));
            tags("9", "$ACADVER", "1", dice.of(List.of("AC1009", "AC1015", "AC1032")), "0", "ENDSEC");
        }
        tags("0", "SECTION", "2", "ENTITIES");
        FloorSketch floor = new FloorMaker(dice).floor();
        double scale = dice.of(List.of(1.0, 1.0, 0.001, 0.1, 1 / 25.4, 1000.0));
        outline(floor, scale);
        int others = dice.whole(0, 6);
        for (int i = 0; i < others; i++) {
            other(floor, scale);
        }
        tags("0", "ENDSEC", "0", "EOF");
        return text.toString();
    }

    private void outline(FloorSketch floor, double scale) {
        List<double[]> c = floor.corners();
        if (dice.percent(50)) {
            tags("0", "LWPOLYLINE", "8", "WALLS", "90", "" + c.size(), "70", dice.percent(85) ? "1" : "0");
            for (double[] p : c) {
                tags("10", number(p[0] * scale), "20", number(p[1] * scale));
                if (dice.percent(5)) {
                    tags("42", dice.of(List.of("0.2", "-0.2", "1", "-1", "1e9", "0", "NaN")));
                }
            }
            return;
        }
        for (int i = 0; i < c.size(); i++) {
            double[] a = c.get(i);
            double[] b = c.get((i + 1) % c.size());
            double gap = dice.percent(5) ? dice.tenths(0, 3) : 0;
            tags("0", "LINE", "8", "WALLS", "10", number(a[0] * scale), "20", number(a[1] * scale));
            tags("11", number((b[0] + gap) * scale), "21", number(b[1] * scale));
        }
    }

    private void other(FloorSketch floor, double scale) {
        double x = dice.tenths(floor.low(0), floor.high(0)) * scale;
        double y = dice.tenths(floor.low(1), floor.high(1)) * scale;
        String layer = dice.of(List.of("0", "WALLS", "DRAIN", "FURNITURE", "", "\u5c4b"));
        switch (dice.whole(0, 5)) {
            case 0 -> tags("0", "CIRCLE", "8", layer, "10", number(x), "20", number(y), "40", number(30 * scale));
            case 1 -> {
                tags("0", "ARC", "8", layer, "10", number(x), "20", number(y), "40", number(90 * scale));
                tags("50", "" + dice.whole(-720, 720), "51", "" + dice.whole(-720, 720));
            }
            case 2 -> tags("0", "TEXT", "8", layer, "10", number(x), "20", number(y), "40", "20", "1", "%%cdoor\\P");
            case 3 -> tags("0", "POINT", "8", layer, "10", number(x), "20", number(y));
            case 4 -> tags("0", "INSERT", "8", layer, "2", "NOBLOCK", "10", number(x), "20", number(y));
            default -> {
                tags(
                        "0",
                        "ELLIPSE",
                        "8",
                        layer,
                        "10",
                        number(x),
                        "20",
                        number(y),
                        "11",
                        number(100 * scale),
                        "21",
                        "0");
                tags("40", dice.of(List.of("0.5", "1", "0", "7")), "41", "0", "42", "6.2831853");
            }
        }
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.6f", value);
    }

    private void tags(String... parts) {
        for (String part : parts) {
            text.append(part).append('\n');
        }
    }
}
