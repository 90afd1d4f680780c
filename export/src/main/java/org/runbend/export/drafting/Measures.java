package org.runbend.export.drafting;

import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** Draws the measures: the floor's size, where the port lies, the spacing. */
final class Measures {
    /** Rows of measures, mm on paper from the floor; marks stand between. */
    private static final double NEAR = 14;

    private static final double FAR = 20;

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
        Point port = Places.at(plan.job().floor().port().at());
        boolean portAcross = port.x() > floor.minX() + 1 && port.x() < floor.maxX() - 1;
        boolean portUp = port.y() > floor.minY() + 1 && port.y() < floor.maxY() - 1;
        if (portAcross) {
            add(corner, new Point(port.x(), floor.minY()), -NEAR, "port ");
        }
        if (portUp) {
            add(corner, new Point(floor.minX(), port.y()), NEAR, "port ");
        }
        add(corner, new Point(floor.maxX(), floor.minY()), portAcross ? -FAR : -NEAR, "");
        add(corner, new Point(floor.minX(), floor.maxY()), portUp ? FAR : NEAR, "");
        spacing(plan, floor);
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
