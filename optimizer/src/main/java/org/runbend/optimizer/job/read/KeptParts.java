package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Point;

/**
 * Parts of a loop that are already routed, held against one lattice. The first part sets the direction, unless the job
 * does, and the place of rows and columns so far as it has legs along them; later parts set what is still open and must
 * fit what is set. Sizes in mm.
 */
final class KeptParts {
    /** A tape on a routed groove reads no finer, mm. */
    private static final double FITS = 0.5;

    /** A tape on a floor reads to this, mm (common practice); what lies no further off is put on the lattice. */
    private static final double TAPE = Job.MeasuredLength.DOUBTFUL;

    /** A move under this, mm, is one of floating-point numbers. */
    private static final double NOISE = 1e-9;

    private final OptionalDouble along;
    private final double spacing;
    private final double radius;
    private final List<PipeRule.Kept> parts = new ArrayList<>();
    /** Level of the rows (0) and columns (1), and the part that set it. */
    private final double[] level = {Double.NaN, Double.NaN};

    private final String[] setBy = new String[2];

    KeptParts(OptionalDouble along, double spacing, double radius) {
        this.along = along;
        this.spacing = spacing;
        this.radius = radius;
    }

    /** The parts read so far, those without faults. */
    List<PipeRule.Kept> read() {
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
        PipeRule.Kept part = new PipeRule.Kept(place.path(), points);
        double angle =
                along.orElse(parts.isEmpty() ? upright(part) : parts.get(0).direction());
        Optional<List<Point>> snapped = onLattice(part, entries, angle);
        if (snapped.isPresent()) {
            List<Point> fitting = withRoom(snapped.get());
            if (leavesRoom(entries, fitting) && isLoose(entries, fitting)) {
                parts.add(new PipeRule.Kept(place.path(), fitting));
            }
        }
    }

    /** The direction of a part; one that a tape cannot tell from along x or y is that. */
    private static double upright(PipeRule.Kept part) {
        List<Point> points = part.points();
        double degrees = part.direction();
        double longest = 0;
        for (int i = 1; i < points.size(); i++) {
            longest = Math.max(longest, points.get(i - 1).distance(points.get(i)));
        }
        for (double axis : new double[] {0, 90, 180}) {
            if (longest * Math.abs(Math.sin(Math.toRadians(degrees - axis))) <= TAPE && Math.abs(degrees - axis) < 45) {
                return axis % 180;
            }
        }
        return degrees;
    }

    /** The part with its legs on the lattice, where they lie no further off than a tape reads; faults are noted. */
    private Optional<List<Point>> onLattice(PipeRule.Kept part, List<YamlValue> entries, double degrees) {
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        int count = part.points().size();
        double[][] at = new double[count][];
        for (int i = 0; i < count; i++) {
            Point p = part.points().get(i);
            at[i] = new double[] {p.x() * cos + p.y() * sin, p.y() * cos - p.x() * sin};
        }
        int headingBefore = -1;
        for (int i = 1; i < count; i++) {
            double dx = at[i][0] - at[i - 1][0];
            double dy = at[i][1] - at[i - 1][1];
            boolean flat = Math.abs(dx) >= Math.abs(dy);
            int heading = flat ? (dx > 0 ? 0 : 2) : (dy > 0 ? 1 : 3);
            if (headingBefore >= 0 && (heading - headingBefore + 4) % 4 == 2) {
                entries.get(i).fault("the part turns straight back at the point before");
                return Optional.empty();
            }
            if (!snap(part, entries.get(i), flat ? 1 : 0, at[i - 1], at[i])) {
                return Optional.empty();
            }
            headingBefore = heading;
        }
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Point old = part.points().get(i);
            Point now = new Point(at[i][0] * cos - at[i][1] * sin, at[i][1] * cos + at[i][0] * sin);
            points.add(now.distance(old) < NOISE ? old : now);
        }
        return Optional.of(points);
    }

    /** Puts both ends of a leg on its row (coordinate 1) or column (coordinate 0). */
    private boolean snap(PipeRule.Kept part, YamlValue place, int coordinate, double[] a, double[] b) {
        double off = Math.abs(b[coordinate] - a[coordinate]);
        if (off > TAPE) {
            place.fault(String.format(
                    Locale.ROOT,
                    "lies %.1f mm off the line through the point before: legs run square in the directions of %s",
                    off,
                    directionFrom(part)));
            return false;
        }
        int axis = 1 - coordinate;
        double here = (a[coordinate] + b[coordinate]) / 2;
        if (setBy[axis] == null) {
            level[axis] = here;
            setBy[axis] = part.key();
        }
        double away = Math.IEEEremainder(here - level[axis], spacing);
        if (Math.abs(away) > TAPE) {
            place.fault(String.format(
                    Locale.ROOT,
                    "the leg to this point lies %.1f mm off the lines %.0f mm apart that %s sets",
                    Math.abs(away),
                    spacing,
                    setBy[axis]));
            return false;
        }
        a[coordinate] = here - away;
        b[coordinate] = here - away;
        return true;
    }

    /** The part with its ends moved out to where the bends beside them begin, where a tape may have missed that. */
    private List<Point> withRoom(List<Point> points) {
        List<Point> moved = new ArrayList<>(points);
        int last = points.size() - 1;
        if (last >= 2) {
            moved.set(0, outward(points.get(0), points.get(1)));
            moved.set(last, outward(points.get(last), points.get(last - 1)));
        }
        return moved;
    }

    private Point outward(Point end, Point corner) {
        double length = corner.distance(end);
        if (length >= radius || length < radius - TAPE) {
            return end;
        }
        double t = (radius + NOISE) / length;
        return new Point(corner.x() + t * (end.x() - corner.x()), corner.y() + t * (end.y() - corner.y()));
    }

    private String directionFrom(PipeRule.Kept part) {
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
