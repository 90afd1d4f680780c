package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** Draws the measures: the floor's size, where the holes lie, the spacing. */
final class Measures {
    /** Rows of measures, mm on paper from the floor; marks stand between. */
    private static final double NEAR = 14;

    private static final double FAR = 20;

    /** Measures closer than this are one, mm. */
    private static final double SAME = 0.5;

    private final SheetBuilder sheet;
    private final double unit;
    private final TapeText tape;

    Measures(SheetBuilder sheet, double unit, Job job) {
        tape = new TapeText(job);
        this.sheet = sheet;
        this.unit = unit;
    }

    void draw(KitPlan plan, Extent floor) {
        Point corner = new Point(floor.minX(), floor.minY());
        List<Double> across = chain(plan, PortHoles.X, floor.minX(), floor.maxX());
        List<Double> up = chain(plan, PortHoles.Y, floor.minY(), floor.maxY());
        for (int i = 1; i < across.size(); i++) {
            add(new Point(across.get(i - 1), floor.minY()), new Point(across.get(i), floor.minY()), -NEAR, "");
        }
        for (int i = 1; i < up.size(); i++) {
            add(new Point(floor.minX(), up.get(i - 1)), new Point(floor.minX(), up.get(i)), NEAR, "");
        }
        add(corner, new Point(floor.maxX(), floor.minY()), across.size() > 1 ? -FAR : -NEAR, "");
        add(corner, new Point(floor.minX(), floor.maxY()), up.size() > 1 ? FAR : NEAR, "");
        spacing(plan, floor);
    }

    private enum PortHoles {
        X,
        Y
    }

    /** The floor's edge and the middles of the holes, in order; those within half a millimetre are one. */
    private static List<Double> chain(KitPlan plan, PortHoles axis, double from, double to) {
        List<Double> at = new ArrayList<>(List.of(from));
        plan.holes().stream()
                .map(h -> axis == PortHoles.X ? h.at().x() : h.at().y())
                .sorted()
                .filter(v -> v > from + SAME && v < to - SAME)
                .forEach(v -> {
                    if (v > at.get(at.size() - 1) + SAME) {
                        at.add(v);
                    }
                });
        return at;
    }

    /** Over the floor, between two lines of the lattice; a lattice at an angle is told in words only. */
    private void spacing(KitPlan plan, Extent floor) {
        KitPlan.LatticePlace lattice = plan.lattice();
        if (lattice.angle() != 0 || !plan.isOnLattice()) {
            return;
        }
        double first = plan.loops().stream()
                .flatMap(l -> l.breakdown().elements().stream())
                .mapToDouble(e -> Math.min(e.from().x(), e.to().x()))
                .min()
                .orElse(floor.minX());
        double column = Math.rint((first - lattice.origin().x()) / lattice.spacing());
        double x = lattice.origin().x() + (column + 1) * lattice.spacing();
        add(new Point(x, floor.maxY()), new Point(x + lattice.spacing(), floor.maxY()), 9, "spacing ");
    }

    private void add(Point a, Point b, double offset, String word) {
        String text = word + tape.beside(a.distance(b));
        sheet.add(Layer.DIMENSION, new Dimension(a, b, offset * unit, 2.5 * unit, text));
    }
}
