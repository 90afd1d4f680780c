package org.runbend.optimizer.job.read;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.DrawnLoop;
import org.runbend.optimizer.job.Point;

/**
 * Where a drawn loop lies and how large it is. A drawing in a wrong unit would break every rule of a loop in every place;
 * one line about the unit says it better.
 *
 * @param loop the loop, mm
 * @param unit mm in one unit of the drawing, as it was read
 * @param key where faults are told
 */
record DrawnPlace(DrawnLoop loop, double unit, YamlValue key) {
    /** A loop is no wider than its floor, but may be drawn a little over its edge, mm. */
    private static final double OVER = 300;

    /** A loop that fills less of its floor's longer side is likely in another unit. */
    private static final double LEAST_SHARE = 0.2;

    void holdAgainst(List<Point> outline) {
        Box floor = Box.of(outline);
        Box drawn = Box.of(loop.points());
        if (!fits(drawn, floor, 1)) {
            String units = Arrays.stream(DrawingUnits.values())
                    .filter(u -> fits(drawn, floor, u.mm() / unit))
                    .map(u ->
                            "units: " + u.name().toLowerCase(Locale.ROOT) + " makes it " + drawn.metres(u.mm() / unit))
                    .collect(Collectors.joining(", "));
            if (!units.isEmpty()) {
                key.fault("the loop measures " + drawn.metres(1) + ", the floor " + floor.metres(1) + "; " + units);
                return;
            }
        }
        if (!drawn.meets(floor)) {
            key.fault("the loop lies off the floor: " + drawn.place() + ", the floor " + floor.place()
                    + "; draw it where the floor of the job file lies");
        }
    }

    private static boolean fits(Box drawn, Box floor, double scale) {
        double longer = Math.max(drawn.width(), drawn.height()) * scale;
        return drawn.width() * scale <= floor.width() + OVER
                && drawn.height() * scale <= floor.height() + OVER
                && longer >= LEAST_SHARE * Math.max(floor.width(), floor.height());
    }

    /** A box around points, mm. */
    private record Box(double minX, double minY, double maxX, double maxY) {
        static Box of(List<Point> points) {
            return points.stream()
                    .map(p -> new Box(p.x(), p.y(), p.x(), p.y()))
                    .reduce((a, b) -> new Box(
                            Math.min(a.minX, b.minX),
                            Math.min(a.minY, b.minY),
                            Math.max(a.maxX, b.maxX),
                            Math.max(a.maxY, b.maxY)))
                    .orElseThrow();
        }

        double width() {
            return maxX - minX;
        }

        double height() {
            return maxY - minY;
        }

        boolean meets(Box other) {
            return minX <= other.maxX && other.minX <= maxX && minY <= other.maxY && other.minY <= maxY;
        }

        String metres(double scale) {
            return String.format(Locale.ROOT, "%.2f x %.2f m", width() * scale / 1000, height() * scale / 1000);
        }

        String place() {
            return String.format(Locale.ROOT, "[%.0f, %.0f] to [%.0f, %.0f]", minX, minY, maxX, maxY);
        }
    }
}
