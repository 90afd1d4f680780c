package org.runbend.optimizer.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.runbend.catalog.source.YamlValue;

/**
 * Parts of a loop that are already routed, held against one lattice. The first part sets the direction, unless the job
 * does, and the place of rows and columns so far as it has legs along them; later parts set what is still open and must
 * fit what is set. Sizes in mm.
 */
final class KeptParts {
    /** A tape on a routed groove reads no finer, mm. */
    private static final double FITS = 0.5;

    private final OptionalDouble along;
    private final double spacing;
    private final double radius;
    private final List<Veto.Kept> parts = new ArrayList<>();
    /** Level of the rows (0) and columns (1), and the part that set it. */
    private final double[] level = {Double.NaN, Double.NaN};

    private final String[] setBy = new String[2];

    KeptParts(OptionalDouble along, double spacing, double radius) {
        this.along = along;
        this.spacing = spacing;
        this.radius = radius;
    }

    /** The parts read so far, those without faults. */
    List<Veto.Kept> read() {
        return List.copyOf(parts);
    }

    /** Reads one more part; its faults are noted at its points. */
    void read(YamlValue place, List<YamlValue> entries, List<Point> points) {
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i - 1).distance(points.get(i)) < 1) {
                entries.get(i).fault("the same point as the one before");
                return;
            }
        }
        Veto.Kept part = new Veto.Kept(place.path(), points);
        double angle =
                along.orElse(parts.isEmpty() ? part.direction() : parts.get(0).direction());
        if (fits(part, entries, angle) && leavesRoom(entries, points) && isLoose(entries, points)) {
            parts.add(part);
        }
    }

    private boolean fits(Veto.Kept part, List<YamlValue> entries, double degrees) {
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        Point before = null;
        int headingBefore = -1;
        for (int i = 0; i < entries.size(); i++) {
            Point p = part.points().get(i);
            Point here = new Point(p.x() * cos + p.y() * sin, p.y() * cos - p.x() * sin);
            if (before != null) {
                double dx = here.x() - before.x();
                double dy = here.y() - before.y();
                boolean flat = Math.abs(dx) >= Math.abs(dy);
                int heading = flat ? (dx > 0 ? 0 : 2) : (dy > 0 ? 1 : 3);
                if (headingBefore >= 0 && (heading - headingBefore + 4) % 4 == 2) {
                    entries.get(i).fault("the part turns straight back at the point before");
                    return false;
                }
                if (!isOnLattice(part, entries.get(i), flat, before, here)) {
                    return false;
                }
                headingBefore = heading;
            }
            before = here;
        }
        return true;
    }

    private boolean isOnLattice(Veto.Kept part, YamlValue place, boolean flat, Point a, Point b) {
        double off = flat ? Math.abs(b.y() - a.y()) : Math.abs(b.x() - a.x());
        if (off > FITS) {
            place.fault(String.format(
                    Locale.ROOT,
                    "lies %.1f mm off the line through the point before: legs run along the lattice of %s",
                    off,
                    directionFrom(part)));
            return false;
        }
        int axis = flat ? 0 : 1;
        double here = flat ? (a.y() + b.y()) / 2 : (a.x() + b.x()) / 2;
        if (setBy[axis] == null) {
            level[axis] = here;
            setBy[axis] = part.key();
            return true;
        }
        double away = Math.abs(Math.IEEEremainder(here - level[axis], spacing));
        if (away > FITS) {
            place.fault(String.format(
                    Locale.ROOT,
                    "the leg to this point lies %.1f mm off the lattice of spacing %.0f mm that %s sets",
                    away,
                    spacing,
                    setBy[axis]));
            return false;
        }
        return true;
    }

    private String directionFrom(Veto.Kept part) {
        return along.isPresent()
                ? "layout.along"
                : parts.isEmpty() ? part.key() : parts.get(0).key();
    }

    /** Stiff pipe needs a straight between two bends; its return bends swing out and are no corners of a part. */
    private boolean isLoose(List<YamlValue> entries, List<Point> points) {
        for (int i = 2; i + 1 < points.size(); i++) {
            if (points.get(i - 1).distance(points.get(i)) < 2 * radius - FITS) {
                entries.get(i)
                        .fault(String.format(
                                Locale.ROOT,
                                "two bends of %.0f mm need %.0f mm from corner to corner; keep the runs of a return bend as two parts",
                                radius,
                                2 * radius));
                return false;
            }
        }
        return true;
    }

    /** The first and the last leg hold at least what the bend at their corner takes. */
    private boolean leavesRoom(List<YamlValue> entries, List<Point> points) {
        int last = points.size() - 1;
        boolean first = last < 2 || points.get(0).distance(points.get(1)) >= radius - FITS;
        boolean end = last < 2 || points.get(last - 1).distance(points.get(last)) >= radius - FITS;
        if (!first || !end) {
            entries.get(first ? last : 0)
                    .fault(String.format(
                            Locale.ROOT,
                            "the part ends inside its bend: an end lies at least %.0f mm from its corner",
                            radius));
        }
        return first && end;
    }
}
