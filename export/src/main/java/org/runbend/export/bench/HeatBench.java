package org.runbend.export.bench;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.heat.field.Band;
import org.runbend.optimizer.heat.field.ConductionField;
import org.runbend.optimizer.heat.field.FieldProblem;
import org.runbend.optimizer.heat.field.FieldSolution;
import org.runbend.optimizer.heat.field.PipeBand;
import org.runbend.optimizer.heat.field.Ring;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.PipeWall;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.heat.output.Stack;

/** Times the temperatures of floors of 4 x 2.5 and 5 x 5 m with runs at 150 mm in plates of 120 mm, by the size of their cells. */
public final class HeatBench {
    private static final double SPACING = 150;
    private static final int TIMES = 3;

    private HeatBench() {}

    /** Prints a line for each floor and size. */
    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        for (double[] size : new double[][] {{4000, 2500}, {5000, 5000}}) {
            for (double cell : new double[] {20, 10, 5}) {
                out.println(time(size[0], size[1], cell));
            }
        }
    }

    private static String time(double width, double height, double cell) {
        FieldProblem problem = problem(width, height, cell);
        double best = Double.POSITIVE_INFINITY;
        FieldSolution solution = null;
        for (int i = 0; i < TIMES; i++) {
            long start = System.nanoTime();
            solution = new ConductionField().solve(problem);
            best = Math.min(best, (System.nanoTime() - start) / 1e9);
        }
        FieldSolution.Balance b = solution.balance();
        return String.format(
                Locale.ROOT,
                "%5.1f m2, cells of %2.0f mm: %6.2f s, surface %.3f degrees C, in less out %.2e",
                width * height * 1e-6,
                cell,
                best,
                solution.mean(),
                (b.given() - b.upward() - b.downward()) / b.given());
    }

    private static FieldProblem problem(double width, double height, double cell) {
        List<Band> plates = new ArrayList<>();
        List<PipeBand> pipes = new ArrayList<>();
        for (double y = SPACING / 2; y < height; y += SPACING) {
            plates.add(new Band(200, y, width - 200, y, 60, 60));
            pipes.add(new PipeBand(75, y, 200, y, false, 45, 45));
            pipes.add(new PipeBand(200, y, width - 200, y, true, 45, 45));
            pipes.add(new PipeBand(width - 200, y, width - 75, y, false, 45, 45));
        }
        return new FieldProblem(
                cell,
                new Ring(List.of(
                        new Ring.Corner(0, 0),
                        new Ring.Corner(width, 0),
                        new Ring.Corner(width, height),
                        new Ring.Corner(0, height))),
                List.of(),
                plates,
                pipes,
                Stack.of(12, 0.13, 0, 30, 0.034),
                new PipeWall(16, 2, 0.35),
                new Plate(0.5, Plate.ALUMINIUM),
                Contact.IDEAL,
                SPACING,
                20,
                -10);
    }
}
