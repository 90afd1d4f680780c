package org.runbend.optimizer.loop.search;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.runbend.optimizer.mip.InterruptWatch;
import org.runbend.optimizer.mip.ScipSettings;
import org.runbend.optimizer.natives.SolverLibrary;
import org.runbend.optimizer.work.Work;

/**
 * Cycles that together cost little: turns plus prices of nodes left out, one of the cycles through a port link. Solved in
 * whole numbers by SCIP, stopped by its node count. Cuts are given, none is looked for here.
 */
final class CycleCover {
    /** Solver nodes; the first covers are what is wanted, not the proof; chosen, not measured. */
    private static final int MOST_NODES = 60;

    /** How far from the best a cover may be, as a share: chosen, not measured. */
    private static final double GAP = 0.03;

    private final Configurations configurations;
    private final Frontier frontier;

    CycleCover(Configurations configurations) {
        this.configurations = configurations;
        this.frontier = configurations.frontier();
    }

    /** Legs by step, or empty if no cover was found. */
    int[] solve(List<ConnectivityCut> cuts) {
        Work.check();
        SolverLibrary.load();
        MPSolver solver = MPSolver.createSolver("SCIP");
        MPSolverParameters parameters = new MPSolverParameters();
        try {
            MPVariable[] states = states(solver);
            linkRows(solver, states);
            portRow(solver, states);
            cuts.forEach(cut -> cutRow(solver, states, cut));
            ScipSettings.apply(solver::setSolverSpecificParametersAsString, MOST_NODES);
            parameters.setDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, GAP);
            Thread owner = Thread.currentThread();
            MPSolver.ResultStatus status =
                    InterruptWatch.solve(owner::isInterrupted, solver::interruptSolve, () -> solver.solve(parameters));
            Work.check();
            boolean solved = status == MPSolver.ResultStatus.OPTIMAL || status == MPSolver.ResultStatus.FEASIBLE;
            return solved ? read(states) : new int[0];
        } finally {
            parameters.delete();
            solver.delete();
        }
    }

    private MPVariable[] states(MPSolver solver) {
        MPVariable[] states = new MPVariable[16 * frontier.size()];
        solver.objective().setMinimization();
        for (int t = 0; t < frontier.size(); t++) {
            MPConstraint row = solver.makeConstraint(1, 1);
            for (int legs : configurations.legs(t)) {
                MPVariable state = solver.makeBoolVar("");
                states[16 * t + legs] = state;
                row.setCoefficient(state, 1);
                double cost = legs == 0 ? frontier.price(t) : Frontier.isCorner(legs) ? frontier.turnCost() : 0;
                solver.objective().setCoefficient(state, cost);
            }
        }
        return states;
    }

    private void linkRows(MPSolver solver, MPVariable[] states) {
        for (int t = 0; t < frontier.size(); t++) {
            for (int h = 0; h < 4; h++) {
                int other = frontier.otherEnd(t, h);
                if (other > t) {
                    MPConstraint row = solver.makeConstraint(0, 0);
                    addUse(row, states, t, h, 1);
                    addUse(row, states, other, h ^ 2, -1);
                }
            }
        }
    }

    private void addUse(MPConstraint row, MPVariable[] states, int t, int h, int sign) {
        for (int legs : configurations.legs(t)) {
            if ((legs >> h & 1) == 1) {
                row.setCoefficient(states[16 * t + legs], sign);
            }
        }
    }

    private void portRow(MPSolver solver, MPVariable[] states) {
        MPConstraint row = solver.makeConstraint(1, Double.POSITIVE_INFINITY);
        for (int t = 0; t < frontier.size(); t++) {
            for (int legs : configurations.legs(t)) {
                if (configurations.portUses(t, legs) > 0) {
                    row.setCoefficient(states[16 * t + legs], configurations.portUses(t, legs));
                }
            }
        }
    }

    private void cutRow(MPSolver solver, MPVariable[] states, ConnectivityCut cut) {
        MPConstraint row = solver.makeConstraint(2, Double.POSITIVE_INFINITY);
        for (int t = 0; t < frontier.size(); t++) {
            for (int legs : configurations.legs(t)) {
                int coefficient = cut.coefficient(frontier, t, legs);
                if (coefficient > 0) {
                    row.setCoefficient(states[16 * t + legs], coefficient);
                }
            }
        }
    }

    private int[] read(MPVariable[] states) {
        int[] legs = new int[frontier.size()];
        List<Integer> masks = new ArrayList<>();
        Arrays.stream(Frontier.LEGS).forEach(masks::add);
        for (int t = 0; t < legs.length; t++) {
            for (int mask : masks) {
                if (states[16 * t + mask] != null && states[16 * t + mask].solutionValue() > 0.5) {
                    legs[t] = mask;
                }
            }
        }
        return legs;
    }
}
