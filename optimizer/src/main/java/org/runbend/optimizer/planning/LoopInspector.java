package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.laying.FreeDirection;
import org.runbend.optimizer.laying.LaidLoops;
import org.runbend.optimizer.laying.Laying;
import org.runbend.optimizer.laying.LoopLaying;
import org.runbend.optimizer.laying.LoopPipes;
import org.runbend.optimizer.laying.OwnLoop;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.TradeOff;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.loop.search.NextPairs;
import org.runbend.optimizer.plan.LoopView;
import org.runbend.optimizer.work.Work;

/** Lays the loop of a job and shows it on its lattice, without plates and coils. */
public final class LoopInspector {
    private final Work work;

    /** An inspector under some work. */
    public LoopInspector(Work work) {
        this.work = work;
    }

    /**
     * The loop on its lattice.
     *
     * @throws org.runbend.optimizer.job.Unbuildable if no loop can be laid
     */
    public LoopView inspect(Job asked) {
        if (asked.hasOwnLoop()) {
            return own(asked, new OwnLoop(asked).checked());
        }
        Job job = PlacePricing.settled(asked);
        double radius = LoopPipes.bendRadius(job);
        LaidLoops laid = Laying.of(job, radius, work).lay();
        Lattice lattice = laid.lattice();
        boolean single = laid.loops().size() == 1;
        return new LoopView(
                job,
                nodes(laid),
                links(lattice),
                tightCorners(lattice),
                new LoopPipes(job, radius).of(laid),
                laid.loops().stream()
                        .flatMap(l ->
                                Stream.of(l.path().get(0), l.path().get(l.path().size() - 1)))
                        .toList(),
                laid.whole().turns(),
                laid.loops().stream().mapToInt(LaidLoops.One::leftOut).sum(),
                single ? laid.whole().turnBound() : OptionalInt.empty(),
                laid.loops().stream().mapToInt(LaidLoops.One::objective).sum(),
                single ? laid.whole().objectiveBound() : OptionalInt.empty(),
                pairs(job, laid).stream()
                        .map(p -> new LoopView.Pair(p.leftOut(), p.turns()))
                        .toList(),
                new LoopLaying().bareFloor(job, radius, laid));
    }

    /** The pairs met; where the loop was found without meeting others, those on either side of it. */
    private static List<TradeOff> pairs(Job job, LaidLoops laid) {
        List<TradeOff> met = laid.whole().pairs();
        if (laid.loops().size() > 1 || laid.limit().isPresent() || met.size() > 1) {
            return met;
        }
        LoopProblem problem = new LoopProblem(
                laid.lattice().graph(), laid.lattice().ports(), LoopLaying.preference(job), WorkLimit.standard());
        return new NextPairs().around(problem, laid.whole());
    }

    /** The designer's loop, which lies on no lattice. */
    private static LoopView own(Job job, Breakdown loop) {
        List<Element> elements = loop.elements();
        int turns = (int) Math.round(degrees(elements) / 90);
        return new LoopView(
                job,
                List.of(),
                List.of(),
                List.of(),
                List.of(loop),
                List.of(
                        elements.get(0).from(),
                        elements.get(elements.size() - 1).to()),
                turns,
                0,
                OptionalInt.empty(),
                turns,
                OptionalInt.empty(),
                List.of(),
                List.of());
    }

    private static double degrees(List<Element> elements) {
        return elements.stream()
                .filter(Element.Bend.class::isInstance)
                .mapToDouble(e -> Math.abs(((Element.Bend) e).turn()))
                .sum();
    }

    /**
     * The question that the loop of a job answers, on the lattice that the loop came to lie on; without wishes of lower
     * order.
     *
     * @throws org.runbend.optimizer.job.Unbuildable if no loop can be laid
     */
    public LoopProblem problem(Job asked) {
        Job job = PlacePricing.settled(asked);
        double radius = LoopPipes.bendRadius(job);
        Job settled = new FreeDirection(radius, work).settle(job);
        LoopLaying.Laid laid = new LoopLaying().lay(settled, radius, work);
        Lattice lattice = laid.lattice();
        return new LoopProblem(lattice.graph(), lattice.ports(), Preference.longRuns(), WorkLimit.standard());
    }

    private static List<LoopView.Node> nodes(LaidLoops laid) {
        LatticeGraph graph = laid.lattice().graph();
        Set<Integer> served = new HashSet<>(laid.whole().cycle());
        BiconnectedBlock block = BiconnectedBlock.ofLink(
                        graph, laid.whole().port().from(), laid.whole().port().to())
                .orElseThrow();
        List<LoopView.Node> nodes = new ArrayList<>();
        for (int n = 0; n < graph.size(); n++) {
            nodes.add(new LoopView.Node(laid.lattice().at(n), state(graph, block, served, n)));
        }
        return nodes;
    }

    private static LoopView.State state(LatticeGraph graph, BiconnectedBlock block, Set<Integer> served, int node) {
        if (served.contains(node)) {
            return LoopView.State.SERVED;
        }
        if (graph.price(node) == 0) {
            return LoopView.State.UNHEATED;
        }
        return block.contains(node) ? LoopView.State.LEFT_OUT : LoopView.State.OUT_OF_REACH;
    }

    private static List<LoopView.Link> links(Lattice lattice) {
        List<LoopView.Link> links = new ArrayList<>();
        for (int n = 0; n < lattice.graph().size(); n++) {
            for (Heading h : List.of(Heading.EAST, Heading.NORTH)) {
                int next = lattice.graph().neighbour(n, h);
                if (next >= 0) {
                    links.add(new LoopView.Link(lattice.at(n), lattice.at(next)));
                }
            }
        }
        return links;
    }

    private static List<LoopView.TightCorner> tightCorners(Lattice lattice) {
        LatticeGraph graph = lattice.graph();
        List<LoopView.TightCorner> tight = new ArrayList<>();
        for (int n = 0; n < graph.size(); n++) {
            for (Heading h : Heading.values()) {
                int a = graph.neighbour(n, h);
                int b = graph.neighbour(n, h.left());
                if (a >= 0 && b >= 0 && !graph.bendAllowed(n, h, h.left())) {
                    tight.add(new LoopView.TightCorner(lattice.at(n), leg(lattice, n, a), leg(lattice, n, b)));
                }
            }
        }
        return tight;
    }

    /** A third of the way along a link. */
    private static Point leg(Lattice lattice, int from, int to) {
        Point a = lattice.at(from);
        Point b = lattice.at(to);
        return new Point(a.x() + (b.x() - a.x()) / 3, a.y() + (b.y() - a.y()) / 3);
    }
}
