package org.runbend.optimizer.loop.search;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CircuitConstraint;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.BlockGraph;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.natives.SolverLibrary;

/**
 * The loop as one circuit constraint of CP-SAT: the textbook model, kept to be measured against. Benches use it, plans do
 * not.
 *
 * <p>Model: an arc each way along every link, a loop at every node that may be left out, one circuit over all of them.
 * A node turns if the circuit comes in from one side and does not go out on the other. One port pair is chosen; the
 * circuit runs through it from {@code to} to {@code from}, and its two ends may take forbidden corners. One worker, a
 * fixed seed and a limit in units of work make the answer the same on any machine.
 */
public final class CircuitModel {
    /** Any fixed number does. */
    private static final int SEED = 1;

    private static final int HEADINGS = 4;

    private final double work;

    /**
     * What the model came to.
     *
     * @param turns corners of the loop found, if one was found
     * @param leftOut priced nodes of the block not served by the loop found, if one was found
     * @param objective turns + prices of the loop found, if one was found
     * @param bound least objective of any loop, as far as proved; empty if it is proved that there is none
     */
    public record Answer(OptionalInt turns, OptionalInt leftOut, OptionalInt objective, OptionalInt bound) {}

    /** A model that may do so much work, in the solver's own units; more than 0. */
    public CircuitModel(double work) {
        if (!(work > 0)) {
            throw new IllegalArgumentException("work (" + work + ") must be more than 0");
        }
        this.work = work;
    }

    /** Solves the problem; the port pairs must lie in one biconnected block. */
    public Answer solve(LoopProblem problem) {
        BlockGraph blockGraph = blockGraph(problem);
        SolverLibrary.load();
        CpModel model = new CpModel();
        BoolVar[] arcs = arcs(model, blockGraph);
        BoolVar[] skips = bools(model, blockGraph.size());
        BoolVar[] turns = bools(model, blockGraph.size());
        BoolVar[] ports = bools(model, problem.ports().size());
        addCircuit(model, blockGraph, arcs, skips);
        addTurns(model, blockGraph, arcs, turns);
        addPorts(model, blockGraph, problem.ports(), arcs, ports);
        addForbiddenCorners(model, blockGraph, problem.ports(), arcs, ports);
        model.minimize(objective(blockGraph, turns, skips));
        CpSolver solver = new CpSolver();
        // Ctrl-C is the program's, not the solver's
        solver.getParameters()
                .setNumWorkers(1)
                .setRandomSeed(SEED)
                .setMaxDeterministicTime(work)
                .setCatchSigintSignal(false);
        CpSolverStatus status = solver.solve(model);
        return answer(solver, status, blockGraph, arcs, skips);
    }

    private static BlockGraph blockGraph(LoopProblem problem) {
        PortPair first = problem.ports().get(0);
        BiconnectedBlock block = BiconnectedBlock.ofLink(problem.graph(), first.from(), first.to())
                .orElseThrow(() -> new IllegalArgumentException("port pair " + first + " lies on no ring"));
        for (PortPair port : problem.ports()) {
            if (!block.contains(port.from()) || !block.contains(port.to())) {
                throw new IllegalArgumentException("port pair " + port + " lies in another block than " + first);
            }
        }
        return new BlockGraph(problem.graph(), block);
    }

    private static BoolVar[] bools(CpModel model, int count) {
        BoolVar[] bools = new BoolVar[count];
        for (int i = 0; i < count; i++) {
            bools[i] = model.newBoolVar("");
        }
        return bools;
    }

    /** The arc that leaves node v with heading h is at 4 v + h; null where there is no link. */
    private static BoolVar[] arcs(CpModel model, BlockGraph blockGraph) {
        BoolVar[] arcs = new BoolVar[HEADINGS * blockGraph.size()];
        for (int i = 0; i < arcs.length; i++) {
            arcs[i] = blockGraph.neighbour(i / HEADINGS, i % HEADINGS) >= 0 ? model.newBoolVar("") : null;
        }
        return arcs;
    }

    private static void addCircuit(CpModel model, BlockGraph blockGraph, BoolVar[] arcs, BoolVar[] skips) {
        CircuitConstraint circuit = model.addCircuit();
        for (int v = 0; v < blockGraph.size(); v++) {
            circuit.addArc(v, v, skips[v]);
            if (blockGraph.graph().isWanted(blockGraph.node(v))) {
                model.addEquality(skips[v], 0);
            }
            for (int h = 0; h < HEADINGS; h++) {
                if (arcs[HEADINGS * v + h] != null) {
                    circuit.addArc(v, blockGraph.neighbour(v, h), arcs[HEADINGS * v + h]);
                }
            }
        }
    }

    /** The arc that comes to node v from the neighbour that lies in direction h, or null. */
    private static BoolVar comingFrom(BlockGraph blockGraph, BoolVar[] arcs, int v, int h) {
        int other = blockGraph.neighbour(v, h);
        return other < 0 ? null : arcs[HEADINGS * other + (h ^ 2)];
    }

    /** Who comes from one side and does not go on to the other turns; likewise who goes and did not come. */
    private static void addTurns(CpModel model, BlockGraph blockGraph, BoolVar[] arcs, BoolVar[] turns) {
        for (int v = 0; v < blockGraph.size(); v++) {
            for (int h = 0; h < HEADINGS; h++) {
                BoolVar in = comingFrom(blockGraph, arcs, v, h);
                BoolVar out = arcs[HEADINGS * v + (h ^ 2)];
                addImplication(model, in, out, turns[v]);
                addImplication(model, out, in, turns[v]);
            }
        }
    }

    private static void addImplication(CpModel model, BoolVar given, BoolVar straight, BoolVar turn) {
        if (given == null) {
            return;
        }
        List<Literal> clause = new ArrayList<>(List.of(given.not(), turn));
        if (straight != null) {
            clause.add(straight);
        }
        model.addBoolOr(clause);
    }

    private static void addPorts(
            CpModel model, BlockGraph blockGraph, List<PortPair> pairs, BoolVar[] arcs, BoolVar[] ports) {
        model.addExactlyOne(ports);
        for (int p = 0; p < ports.length; p++) {
            PortPair pair = pairs.get(p);
            int heading = blockGraph.graph().headingTo(pair.to(), pair.from()).index();
            model.addImplication(ports[p], arcs[HEADINGS * blockGraph.local(pair.to()) + heading]);
        }
    }

    /** Passed neither way, unless the node is an end of the chosen port pair. */
    private static void addForbiddenCorners(
            CpModel model, BlockGraph blockGraph, List<PortPair> pairs, BoolVar[] arcs, BoolVar[] ports) {
        for (int v = 0; v < blockGraph.size(); v++) {
            for (Heading h : Heading.values()) {
                if (!blockGraph.graph().bendAllowed(blockGraph.node(v), h, h.left())) {
                    List<Literal> excuses = excuses(blockGraph.node(v), pairs, ports);
                    forbid(model, blockGraph, arcs, v, h, h.left(), excuses);
                    forbid(model, blockGraph, arcs, v, h.left(), h, excuses);
                }
            }
        }
    }

    private static List<Literal> excuses(int node, List<PortPair> pairs, BoolVar[] ports) {
        List<Literal> excuses = new ArrayList<>();
        for (int p = 0; p < ports.length; p++) {
            if (pairs.get(p).from() == node || pairs.get(p).to() == node) {
                excuses.add(ports[p]);
            }
        }
        return excuses;
    }

    private static void forbid(
            CpModel model,
            BlockGraph blockGraph,
            BoolVar[] arcs,
            int v,
            Heading from,
            Heading to,
            List<Literal> excuses) {
        BoolVar in = comingFrom(blockGraph, arcs, v, from.index());
        BoolVar out = arcs[HEADINGS * v + to.index()];
        if (in != null && out != null) {
            List<Literal> clause = new ArrayList<>(excuses);
            clause.add(in.not());
            clause.add(out.not());
            model.addBoolOr(clause);
        }
    }

    private static LinearExpr objective(BlockGraph blockGraph, BoolVar[] turns, BoolVar[] skips) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (int v = 0; v < blockGraph.size(); v++) {
            sum.add(turns[v]);
            sum.addTerm(skips[v], blockGraph.graph().price(blockGraph.node(v)));
        }
        return sum.build();
    }

    private static Answer answer(
            CpSolver solver, CpSolverStatus status, BlockGraph blockGraph, BoolVar[] arcs, BoolVar[] skips) {
        if (status == CpSolverStatus.INFEASIBLE) {
            return new Answer(OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty());
        }
        // The objective is a whole number; the tolerance takes off what the solver's double may be too high.
        OptionalInt bound = OptionalInt.of((int) Math.ceil(Math.max(0, solver.bestObjectiveBound()) - 1e-6));
        if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
            return new Answer(OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty(), bound);
        }
        int turns = 0;
        int leftOut = 0;
        int prices = 0;
        for (int v = 0; v < blockGraph.size(); v++) {
            int price = blockGraph.graph().price(blockGraph.node(v));
            boolean skipped = solver.booleanValue(skips[v]);
            turns += skipped || goesStraight(solver, blockGraph, arcs, v) ? 0 : 1;
            leftOut += skipped && price > 0 ? 1 : 0;
            prices += skipped ? price : 0;
        }
        return new Answer(OptionalInt.of(turns), OptionalInt.of(leftOut), OptionalInt.of(turns + prices), bound);
    }

    /** Read from the arcs: in a loop that is not the best a turn may be counted that is none. */
    private static boolean goesStraight(CpSolver solver, BlockGraph blockGraph, BoolVar[] arcs, int v) {
        for (int h = 0; h < HEADINGS; h++) {
            BoolVar in = comingFrom(blockGraph, arcs, v, h);
            BoolVar out = arcs[HEADINGS * v + (h ^ 2)];
            if (in != null && out != null && solver.booleanValue(in) && solver.booleanValue(out)) {
                return true;
            }
        }
        return false;
    }
}
