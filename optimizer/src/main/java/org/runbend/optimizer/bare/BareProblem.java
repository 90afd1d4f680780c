package org.runbend.optimizer.bare;

import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * A floor, the lattice chosen for it and the loop laid, with how far each size may be changed.
 *
 * @param floor the floor as the customer gave it
 * @param problem the same floor as the lattice had to respect it
 * @param lattice the lattice chosen
 * @param loop the loop laid on it
 * @param limits least sizes worth trying
 */
public record BareProblem(
        Job.FloorPlan floor, FloorProblem problem, Lattice lattice, LoopSolution loop, Limits limits) {
    /**
     * Least sizes worth trying, mm.
     *
     * @param edge centreline to outline
     * @param clearance centreline to a bare keep-out
     * @param spacing centre to centre of neighbouring runs, at least twice the radius of a bend as fitted
     * @param radius least radius of a bend as fitted
     */
    public record Limits(double edge, double clearance, double spacing, double radius) {
        /** How far a job's sizes may go for its pipe and plates. */
        public static Limits of(Job job) {
            double outer = job.pipe().product().outer();
            boolean single = job.plates().products().stream().allMatch(p -> p.grooves() == 1);
            double widest = job.plates().products().stream()
                    .mapToDouble(p -> p.width())
                    .max()
                    .orElse(0);
            double radius = job.pipe().product().fittedRadius();
            double least = Math.max(Math.max(100, 3 * outer), Math.max(2 * radius, widest));
            // A groove with one and a half diameters of wood to the rim, with 5 mm to a thing: common practice.
            double clearance = Math.max(outer, job.groove().half() + 5);
            return new Limits(
                    2 * outer, clearance, single ? least : job.layout().spacing(), radius);
        }
    }
}
