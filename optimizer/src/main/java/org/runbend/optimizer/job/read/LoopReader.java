package org.runbend.optimizer.job.read;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.DrawnLoop;
import org.runbend.optimizer.job.Point;

/** Reads the designer's own loop: points, or a layer of a drawing that somebody else can read. */
final class LoopReader {
    private static final int MOST_POINTS = 2000;
    private static final int MOST_BYTES = 200_000_000;

    private final SourceFile jobFile;
    private final LoopDrawings drawings;
    private final List<SourceFile> read;
    private final List<String> remarks = new ArrayList<>();
    private Optional<DrawnPlace> place = Optional.empty();

    /**
     * A reader.
     *
     * @param jobFile the job file, which says where others may lie
     * @param drawings what reads drawings
     * @param read files as they are read, for the fingerprint
     */
    LoopReader(SourceFile jobFile, LoopDrawings drawings, List<SourceFile> read) {
        this.jobFile = jobFile;
        this.drawings = drawings;
        this.read = read;
    }

    /** The loop; none if the layout has none or something was wrong. */
    DrawnLoop loop(YamlMap layout) {
        Optional<YamlValue> written = layout.find("loop");
        if (written.isEmpty()) {
            return DrawnLoop.NONE;
        }
        return written.get().isMap() ? drawn(written.get().map()) : points(written.get());
    }

    /** What a person should look at in the drawing, if there is one. */
    List<String> remarks() {
        return List.copyOf(remarks);
    }

    /** Holds the size and the place of a drawn loop against the floor; a fault tells of a wrong unit. */
    void holdAgainst(List<Point> outline) {
        place.ifPresent(p -> p.holdAgainst(outline));
    }

    private static DrawnLoop points(YamlValue written) {
        List<YamlValue> entries = written.list(4, MOST_POINTS, "a list of at least 4 points [x, y]");
        List<Point> points =
                entries.stream().flatMap(v -> FloorReader.point(v).stream()).toList();
        if (points.size() < entries.size()) {
            return DrawnLoop.NONE;
        }
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i - 1).distance(points.get(i)) < 1) {
                entries.get(i).fault("the same point as the one before");
            } else if (i > 1 && isBack(points.get(i - 2), points.get(i - 1), points.get(i))) {
                entries.get(i).fault("the loop turns straight back at the point before");
            }
        }
        return DrawnLoop.ofPoints(points);
    }

    private DrawnLoop drawn(YamlMap m) {
        YamlValue file = m.require("dxf", "the path of a drawing");
        String layer = m.require("layer", "the layer of the loop").text();
        Optional<DrawingUnits> unit = m.find("units").map(v -> v.oneOf(DrawingUnits.class));
        String name = file.text();
        return m.make(() -> name)
                .flatMap(n -> found(file, n, layer, unit))
                .map(f -> kept(f, file))
                .orElse(DrawnLoop.NONE);
    }

    private Optional<LoopDrawings.Found> found(YamlValue file, String name, String layer, Optional<DrawingUnits> unit) {
        try {
            SourceFile source = jobFile.namedBytes(Path.of(file.file()).resolveSibling(name), MOST_BYTES);
            read.add(source);
            return Optional.of(drawings.read(source, layer, unit));
        } catch (InvalidPathException e) {
            file.wrong("the path of a drawing");
        } catch (BadInput e) {
            file.fault(e.getMessage());
        }
        return Optional.empty();
    }

    private DrawnLoop kept(LoopDrawings.Found found, YamlValue file) {
        DrawnLoop loop = found.loop();
        List<Point> points = loop.points();
        if (points.size() > MOST_POINTS) {
            file.fault("the loop has " + points.size() + " points, at most " + MOST_POINTS + " are possible");
            return DrawnLoop.NONE;
        }
        for (int i = 2; i < points.size(); i++) {
            boolean straight = loop.bulge(i - 2) == 0 && loop.bulge(i - 1) == 0;
            if (straight && isBack(points.get(i - 2), points.get(i - 1), points.get(i))) {
                file.fault("the loop turns straight back at " + "["
                        + Plain.number(points.get(i - 1).x()) + ", "
                        + Plain.number(points.get(i - 1).y()) + "]");
            }
        }
        remarks.addAll(found.remarks());
        place = Optional.of(new DrawnPlace(loop, found.unit(), file));
        return loop;
    }

    /** Whether b to c leads back over a to b, to a degree. */
    private static boolean isBack(Point a, Point b, Point c) {
        double ux = b.x() - a.x();
        double uy = b.y() - a.y();
        double vx = c.x() - b.x();
        double vy = c.y() - b.y();
        return Math.toDegrees(Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy))) > 179;
    }
}
