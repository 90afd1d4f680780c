package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.ShadedFloor;
import org.runbend.optimizer.heat.field.FieldSolution;
import org.runbend.optimizer.heat.field.RasterFrame;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.plan.KitPlan;

/** Draws the temperatures of a floor: boxes of equal step, isotherms, legend in degrees C. */
public final class TemperatureDrafting {
    private static final double[] STEPS = {0.5, 1, 2, 5, 10, 20};
    private static final int MOST_STEPS = 12;
    /** Of a polygon that is drawn for a circle. */
    private static final int CORNERS = 24;
    /** From cold to hot, each darker than the one before by an equal step to the eye, so that they read in grey too. */
    private static final int[] RAMP = {0xFFFAE6, 0xFFE3A6, 0xFFC66B, 0xF5A04C, 0xE27A3F, 0xC55135, 0x9C3236};

    private final FieldSolution field;
    private final double step;
    private final double lowest;
    private final int count;

    private TemperatureDrafting(FieldSolution field) {
        this.field = field;
        double least = field.least();
        double most = Math.max(field.peak(), least + 0.1);
        double chosen = STEPS[STEPS.length - 1];
        for (int i = STEPS.length - 1; i >= 0; i--) {
            chosen = (most - least) / STEPS[i] <= MOST_STEPS - 1 ? STEPS[i] : chosen;
        }
        step = chosen;
        lowest = Math.floor(least / step) * step;
        count = (int) Math.max(1, Math.ceil((most - lowest) / step - 1e-9));
    }

    /** The drawing of a plan's floor. */
    public static ShadedFloor draw(KitPlan plan, FieldSolution field) {
        return new TemperatureDrafting(field).draw(plan.job());
    }

    private ShadedFloor draw(Job job) {
        RasterFrame f = field.frame();
        List<ShadedFloor.Step> steps = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String words = Decimals.of(lowest + i * step, 1) + " to " + Decimals.of(lowest + (i + 1) * step, 1);
            steps.add(new ShadedFloor.Step(words, colour(count == 1 ? 0 : (double) i / (count - 1))));
        }
        List<Path> outline = new ArrayList<>();
        outline.add(Path.polygon(
                job.floor().outline().stream().map(p -> new Point(p.x(), p.y())).toList()));
        job.floor().keepOuts().forEach(k -> outline.add(edge(k.bare())));
        return new ShadedFloor(
                "Temperatures of the floor, order " + job.order(),
                captions(),
                new Extent(f.x(), f.y(), f.x() + f.columns() * f.cell(), f.y() + f.rows() * f.cell()),
                steps,
                boxes(),
                new Isotherms(field).lines(lowest, step, count),
                outline);
    }

    /** What stands on the floor, by its edge. */
    private static Path edge(Shape shape) {
        if (shape instanceof Shape.Circle c) {
            return round(c.centre(), c.radius());
        }
        if (shape instanceof Shape.Spot s) {
            return round(s.at(), s.radius());
        }
        return Path.polygon(((Shape.Polygon) shape)
                .corners().stream().map(p -> new Point(p.x(), p.y())).toList());
    }

    private static Path round(org.runbend.optimizer.job.Point centre, double radius) {
        return Path.polygon(IntStream.range(0, CORNERS)
                .mapToObj(i -> 2 * Math.PI * i / CORNERS)
                .map(a -> new Point(centre.x() + radius * Math.cos(a), centre.y() + radius * Math.sin(a)))
                .toList());
    }

    private List<String> captions() {
        return List.of(
                String.format(
                        Locale.ROOT,
                        "Surface of the floor in degrees C, steady, seen from above: mean %.1f, %.1f to %.1f.",
                        field.mean(),
                        field.least(),
                        field.peak()),
                "Two-dimensional conduction over the plan as it is, with 0.1 mm of air between pipe and plate; the coolant cools"
                        + " along each loop. A thin hot line over the pipe is left out.");
    }

    private List<ShadedFloor.ShadedBox> boxes() {
        List<ShadedFloor.ShadedBox> boxes = new ArrayList<>();
        RasterFrame f = field.frame();
        for (int row = 0; row < f.rows(); row++) {
            int column = 0;
            while (column < f.columns()) {
                int step = stepAt(column, row);
                int end = column + 1;
                while (end < f.columns() && stepAt(end, row) == step) {
                    end++;
                }
                if (step >= 0) {
                    boxes.add(new ShadedFloor.ShadedBox(
                            new Extent(
                                    f.x() + column * f.cell(),
                                    f.y() + row * f.cell(),
                                    f.x() + end * f.cell(),
                                    f.y() + (row + 1) * f.cell()),
                            step));
                }
                column = end;
            }
        }
        return boxes;
    }

    private int stepAt(int column, int row) {
        if (!field.isFloor(column, row)) {
            return -1;
        }
        return (int) Math.max(0, Math.min(count - 1, Math.floor((field.surface(column, row) - lowest) / step)));
    }

    private static int colour(double share) {
        double place = share * (RAMP.length - 1);
        int i = (int) Math.min(RAMP.length - 2, Math.floor(place));
        double t = place - i;
        int colour = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            int a = RAMP[i] >> shift & 0xFF;
            int b = RAMP[i + 1] >> shift & 0xFF;
            colour |= (int) Math.rint(a + t * (b - a)) << shift;
        }
        return colour;
    }
}
