package org.runbend.optimizer.loop.search;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.optimizer.natives.SolverLibrary;
import org.runbend.optimizer.work.Work;

/**
 * The configuration program: choose a state for each node so that both ends of every link agree, a port link is used and
 * so many price units are left out, at least turns; relaxed to fractions, connectivity cuts added until none is violated.
 *
 * <p>Of the many optimal multipliers those are wanted that leave few states at a reduced cost of 0, for what costs nothing is
 * never dropped. So in the end a small share of each state is offered at less than its cost: the dual of that adds, to the
 * bound, the sum of all reduced costs (each up to that rebate) times the share.
 *
 * <p>The unit row may be missed at a price above any number of turns, so that there is always an optimum. The cuts found
 * hold for all numbers of units and are kept.
 *
 * <p>Source: configuration linear program, Gilmore and Gomory 1961 for cutting stock, here a state of a node for a pattern; from
 * memory.
 */
final class ConfigurationProgram {
    /** Rounds of cuts: chosen, not measured. */
    private static final int MOST_ROUNDS = 25;
    /**
     * Nodes x rounds; a round's work grows faster than the nodes; measured when it came: 49 x 49 places took 36 s in
     * all, the rounds alone over 110 s without it (times of {@code plan}).
     */
    private static final int MOST_WORK = 28_000;

    /** Rows of straight pieces added in a round: chosen, not measured. */
    private static final int PIECES_A_ROUND = 200;

    /** By how much such a row must be broken to be added: chosen, not measured. */
    private static final double LEAST_BREACH = 0.02;

    /** Cuts added in a round: chosen, not measured. */
    private static final int CUTS_A_ROUND = 60;
    /**
     * Rows are added between solves, so the dual simplex goes on from where it stood; scaling and presolve would change
     * the matrix under it. How precise the duals are does not matter: {@link ReducedCosts} reckons with them exactly.
     */
    private static final String GO_ON =
            "use_preprocessing: false use_scaling: false use_dual_simplex: true" + " change_status_to_imprecise: false";

    private static final String FROM_THE_OPTIMUM = GO_ON.replace("use_dual_simplex: true", "use_dual_simplex: false");
    /** How much of each state comes cheaper at the end; chosen, not measured. */
    private static final double SHARE = 1e-4;
    /** How much cheaper, in turns; chosen, not measured. */
    private static final double WORTH = 0.3;

    private final Configurations configurations;
    private final Frontier frontier;
    private final PriceUnits prices;
    private final List<ConnectivityCut> cuts = new ArrayList<>();
    private final List<StraightRow> straightRows = new ArrayList<>();

    ConfigurationProgram(Configurations configurations, PriceUnits prices) {
        this.configurations = configurations;
        this.frontier = configurations.frontier();
        this.prices = prices;
    }

    /** The same program for another order of the steps, with the cuts found so far. */
    ConfigurationProgram inOrder(Frontier other, int[] steps) {
        ConfigurationProgram moved = new ConfigurationProgram(new Configurations(other), prices.inOrder(steps));
        cuts.forEach(cut -> moved.cuts.add(cut.inOrder(steps)));
        int[] newStep = new int[steps.length];
        for (int t = 0; t < steps.length; t++) {
            newStep[steps[t]] = t;
        }
        straightRows.forEach(row -> moved.straightRows.add(row.moved(newStep)));
        return moved;
    }

    /** The reduced costs for loops that leave out so many units. */
    ReducedCosts reducedCosts(int units) {
        SolverLibrary.load();
        MPSolver solver = MPSolver.createSolver("GLOP");
        try {
            solver.setSolverSpecificParametersAsString(GO_ON);
            return solve(solver, units);
        } finally {
            solver.delete();
        }
    }

    private ReducedCosts solve(MPSolver solver, int units) {
        int n = frontier.size();
        MPVariable[] states = states(solver);
        MPConstraint[] links = linkRows(solver, states);
        MPConstraint unitRow = unitRow(solver, states, units);
        MPConstraint portRow = portRow(solver, states);
        List<MPConstraint> cutRows = new ArrayList<>();
        cuts.forEach(cut -> cutRows.add(cutRow(solver, states, cut)));
        MPVariable[] charges = charges(solver);
        List<MPConstraint> pieceRows = new ArrayList<>();
        straightRows.forEach(row -> pieceRows.add(pieceRow(solver, states, charges, row)));
        List<StraightRow> open = StraightRow.all(frontier);
        ConnectivitySeparation separator = new ConnectivitySeparation(configurations, CUTS_A_ROUND);
        double[] duals = new double[4 * n + 2];
        int known = 0;
        int rounds = Math.max(1, Math.min(MOST_ROUNDS, MOST_WORK / n));
        for (int round = 0; round < rounds; round++) {
            Work.check();
            if (solver.solve() != MPSolver.ResultStatus.OPTIMAL) {
                break;
            }
            double[] values = new double[16 * n];
            for (int i = 0; i < values.length; i++) {
                values[i] = states[i] == null ? 0 : states[i].solutionValue();
            }
            duals = duals(links, unitRow, portRow, cutRows, pieceRows);
            known = pieceRows.size();
            List<StraightRow> broken = round + 1 == rounds ? List.of() : broken(open, values, charges);
            List<ConnectivityCut> violated = round + 1 == rounds ? List.of() : separator.separate(values);
            if (violated.isEmpty() && broken.isEmpty()) {
                break;
            }
            broken.forEach(row -> pieceRows.add(pieceRow(solver, states, charges, row)));
            straightRows.addAll(broken);
            violated.forEach(cut -> cutRows.add(cutRow(solver, states, cut)));
            cuts.addAll(violated);
        }
        ReducedCosts before = reducedCosts(duals, units, known);
        openShares(states);
        solver.setSolverSpecificParametersAsString(FROM_THE_OPTIMUM);
        if (solver.solve() != MPSolver.ResultStatus.OPTIMAL) {
            return before;
        }
        ReducedCosts central =
                reducedCosts(duals(links, unitRow, portRow, cutRows, pieceRows), units, pieceRows.size());
        return central.isBelow(before) ? before : central;
    }

    /** By 16 x step + legs; then the shares of all, in the same order, which stay shut until the end. */
    private MPVariable[] states(MPSolver solver) {
        MPObjective objective = solver.objective();
        objective.setMinimization();
        int shares = 16 * frontier.size();
        MPVariable[] states = new MPVariable[2 * shares];
        for (int t = 0; t < frontier.size(); t++) {
            MPConstraint row = solver.makeConstraint(1, 1);
            for (int legs : configurations.legs(t)) {
                MPVariable state = solver.makeNumVar(0, Double.POSITIVE_INFINITY, "");
                states[16 * t + legs] = state;
                states[shares + 16 * t + legs] = solver.makeNumVar(0, 0, "");
                put(row, states, t, legs, 1);
                double cost = (double) cost(t, legs) / ReducedCosts.SCALE;
                objective.setCoefficient(state, cost);
                objective.setCoefficient(states[shares + 16 * t + legs], cost - WORTH);
            }
        }
        return states;
    }

    /** A coefficient for a state and its share. */
    private static void put(MPConstraint row, MPVariable[] states, int t, int legs, double coefficient) {
        row.setCoefficient(states[16 * t + legs], coefficient);
        row.setCoefficient(states[states.length / 2 + 16 * t + legs], coefficient);
    }

    private static void openShares(MPVariable[] states) {
        for (int i = states.length / 2; i < states.length; i++) {
            if (states[i] != null) {
                states[i].setUb(SHARE);
            }
        }
    }

    /** By 4 x step + heading at the end decided first. */
    private MPConstraint[] linkRows(MPSolver solver, MPVariable[] states) {
        MPConstraint[] rows = new MPConstraint[4 * frontier.size()];
        for (int t = 0; t < frontier.size(); t++) {
            for (int h = 0; h < 4; h++) {
                int other = frontier.otherEnd(t, h);
                if (other > t) {
                    rows[4 * t + h] = solver.makeConstraint(0, 0);
                    addUse(rows[4 * t + h], states, t, h, 1);
                    addUse(rows[4 * t + h], states, other, h ^ 2, -1);
                }
            }
        }
        return rows;
    }

    private void addUse(MPConstraint row, MPVariable[] states, int t, int h, int sign) {
        for (int legs : configurations.legs(t)) {
            if ((legs >> h & 1) == 1) {
                put(row, states, t, legs, sign);
            }
        }
    }

    private MPConstraint unitRow(MPSolver solver, MPVariable[] states, int units) {
        MPConstraint row = solver.makeConstraint(units, units);
        for (int t = 0; t < frontier.size(); t++) {
            if (prices.units(t) > 0 && states[16 * t] != null) {
                put(row, states, t, 0, prices.units(t));
            }
        }
        for (int sign = -1; sign <= 1; sign += 2) {
            MPVariable miss = solver.makeNumVar(0, Double.POSITIVE_INFINITY, "");
            row.setCoefficient(miss, sign);
            solver.objective().setCoefficient(miss, 2.0 * frontier.size());
        }
        return row;
    }

    private MPConstraint portRow(MPSolver solver, MPVariable[] states) {
        MPConstraint row = solver.makeConstraint(1, Double.POSITIVE_INFINITY);
        for (int t = 0; t < frontier.size(); t++) {
            for (int legs : configurations.legs(t)) {
                if (configurations.portUses(t, legs) > 0) {
                    put(row, states, t, legs, configurations.portUses(t, legs));
                }
            }
        }
        return row;
    }

    private MPConstraint cutRow(MPSolver solver, MPVariable[] states, ConnectivityCut cut) {
        MPConstraint row = solver.makeConstraint(2, Double.POSITIVE_INFINITY);
        for (int t = 0; t < frontier.size(); t++) {
            for (int legs : configurations.legs(t)) {
                int coefficient = cut.coefficient(frontier, t, legs);
                if (coefficient > 0) {
                    put(row, states, t, legs, coefficient);
                }
            }
        }
        return row;
    }

    /** What is paid for ends of straight pieces, by link. */
    private MPVariable[] charges(MPSolver solver) {
        MPVariable[] charges = new MPVariable[2 * frontier.size()];
        for (int i = 0; i < charges.length && frontier.straightCost().end() > 0; i++) {
            charges[i] = solver.makeNumVar(0, Double.POSITIVE_INFINITY, "");
            solver.objective()
                    .setCoefficient(charges[i], (double) frontier.straightCost().end() / frontier.turnCost());
        }
        return charges;
    }

    private MPConstraint pieceRow(MPSolver solver, MPVariable[] states, MPVariable[] charges, StraightRow piece) {
        MPConstraint row = solver.makeConstraint(0, Double.POSITIVE_INFINITY);
        row.setCoefficient(charges[piece.link()], 1);
        if (states[16 * piece.straight() + piece.legs()] != null) {
            put(row, states, piece.straight(), piece.legs(), -1);
        }
        if (states[16 * piece.corner() + piece.legs()] != null) {
            put(row, states, piece.corner(), piece.legs(), 1);
        }
        return row;
    }

    /** The rows that are broken most, at most so many. */
    private static List<StraightRow> broken(List<StraightRow> rows, double[] values, MPVariable[] charges) {
        if (rows.isEmpty()) {
            return List.of();
        }
        double[] charged = new double[charges.length];
        for (int i = 0; i < charges.length; i++) {
            charged[i] = charges[i].solutionValue();
        }
        return rows.stream()
                .filter(row -> row.violation(values, charged) > LEAST_BREACH)
                .sorted(Comparator.comparingDouble(row -> -row.violation(values, charged)))
                .limit(PIECES_A_ROUND)
                .toList();
    }

    /** Links first, then the unit row, the port row, the cuts and the straight pieces. */
    private static double[] duals(
            MPConstraint[] links,
            MPConstraint unitRow,
            MPConstraint portRow,
            List<MPConstraint> cutRows,
            List<MPConstraint> pieceRows) {
        double[] duals = new double[links.length + 2 + cutRows.size() + pieceRows.size()];
        for (int i = 0; i < pieceRows.size(); i++) {
            duals[links.length + 2 + cutRows.size() + i] = pieceRows.get(i).dualValue();
        }
        for (int i = 0; i < links.length; i++) {
            duals[i] = links[i] == null ? 0 : links[i].dualValue();
        }
        duals[links.length] = unitRow.dualValue();
        duals[links.length + 1] = portRow.dualValue();
        for (int i = 0; i < cutRows.size(); i++) {
            duals[links.length + 2 + i] = cutRows.get(i).dualValue();
        }
        return duals;
    }

    /** Rounds the duals to whole parts of a turn, those of one-sided rows to at least 0, and prices all states exactly. */
    private ReducedCosts reducedCosts(double[] duals, int units, int pieces) {
        int links = 4 * frontier.size();
        long[] whole = new long[duals.length];
        for (int i = 0; i < duals.length; i++) {
            long part = Math.round(duals[i] * ReducedCosts.SCALE);
            whole[i] = i > links ? Math.max(0, part) : part;
        }
        long constant = whole[links] * units + whole[links + 1];
        long[] costs = new long[16 * frontier.size()];
        Arrays.fill(costs, ReducedCosts.BARRED);
        for (int t = 0; t < frontier.size(); t++) {
            for (int legs : configurations.legs(t)) {
                costs[16 * t + legs] = cost(t, legs, whole, links);
            }
        }
        for (int i = links + 2; i < whole.length - pieces; i++) {
            if (whole[i] > 0) {
                constant += 2 * whole[i];
                subtract(costs, cuts.get(i - links - 2), whole[i]);
            }
        }
        long[] left = new long[2 * frontier.size()];
        Arrays.fill(
                left,
                ReducedCosts.SCALE
                        / frontier.turnCost()
                        * frontier.straightCost().end());
        for (int i = 0; i < pieces; i++) {
            subtract(costs, left, straightRows.get(i), whole[whole.length - pieces + i]);
        }
        return new ReducedCosts(
                units,
                constant,
                whole[links],
                costs,
                left,
                IntStream.range(0, frontier.size()).mapToLong(t -> cost(t, 0)).toArray(),
                frontier);
    }

    /** What a state costs by itself, in parts. */
    private long cost(int t, int legs) {
        if (legs == 0) {
            return prices.isInside() ? ReducedCosts.SCALE / frontier.turnCost() * frontier.price(t) : 0;
        }
        return Frontier.isCorner(legs) ? ReducedCosts.SCALE : 0;
    }

    private long cost(int t, int legs, long[] whole, int links) {
        if (legs == 0) {
            return cost(t, legs) - whole[links] * prices.units(t);
        }
        long cost = cost(t, legs);
        for (int h = 0; h < 4; h++) {
            if ((legs >> h & 1) == 1) {
                int other = frontier.otherEnd(t, h);
                cost += other > t ? -whole[4 * t + h] : whole[4 * other + (h ^ 2)];
            }
        }
        return cost - whole[links + 1] * configurations.portUses(t, legs);
    }

    /** No more than what is left of a charge. */
    private static void subtract(long[] costs, long[] left, StraightRow row, long multiplier) {
        long dual = Math.min(multiplier, left[row.link()]);
        left[row.link()] -= dual;
        add(costs, 16 * row.straight() + row.legs(), dual);
        add(costs, 16 * row.corner() + row.legs(), -dual);
    }

    private static void add(long[] costs, int state, long dual) {
        costs[state] += costs[state] < ReducedCosts.BARRED ? dual : 0;
    }

    private void subtract(long[] costs, ConnectivityCut cut, long multiplier) {
        for (int t = 0; t < frontier.size(); t++) {
            for (int legs : configurations.legs(t)) {
                costs[16 * t + legs] -= multiplier * cut.coefficient(frontier, t, legs);
            }
        }
    }
}
