package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.floor.Distance.Arc;
import org.runbend.optimizer.floor.LeadFinder.Way;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * Joins holes that are given, or places on the wall, to the lattice: for each loop the port pair and the lead-ins that leave
 * the loop most heated nodes. What comes too near to a lead-in is taken out of the lattice, and a node that a lead-in ends
 * at keeps the link straight on and the one to the other node of its pair. Works in the lattice's axes.
 */
final class EntrySearch {
    /** Port pairs that lead-ins are sought for, the nearest ones; chosen, not measured. */
    private static final int MOST_PAIRS = 14;

    /** Ways of joining that are weighed by what they leave of the lattice, the shortest ones; chosen, not measured. */
    private static final int MOST_WEIGHED = 10;

    /** A place this near to a hole lies in it, mm: chosen, not measured. */
    private static final double SAME = 0.5;

    private final FloorProblem problem;
    private final LatticeAxes frame;
    private final PortSearch ports;
    private final LeadFinder finder;
    private final double outside;

    /** Ways by hole, node and direction: a node stands in several pairs. */
    private final Map<List<Point>, Optional<Way>> ways = new HashMap<>();

    EntrySearch(FloorProblem problem, LatticeAxes frame, PortSearch ports, EntryRoom room) {
        this.problem = problem;
        this.frame = frame;
        this.ports = ports;
        this.finder = new LeadFinder(problem, room);
        List<Point> outline = frame.in(problem.outline());
        this.outside = outline.stream()
                        .mapToDouble(p -> Math.abs(p.x()) + Math.abs(p.y()))
                        .max()
                        .orElse(0)
                + problem.spacing();
    }

    /** An end of a loop: its node, where it goes on (none if that is free), and the way to it. */
    private record End(int node, Optional<Heading> on, Optional<Way> way, Lead lead) {
        List<Element> elements() {
            return way.map(Way::elements).orElse(List.of());
        }

        double length() {
            return way.map(Way::length).orElse(0.0);
        }
    }

    /** A way of joining both holes of a loop. */
    private record Joint(End flow, End back) {
        double length() {
            return flow.length() + back.length();
        }
    }

    /** Graph, pairs, leads and heated nodes; empty if a loop finds no way to its holes. */
    Optional<PortSearch.Found> choose(LatticeGraph graph, Point base) {
        LatticeGraph now = graph;
        List<PortPair> pairs = new ArrayList<>();
        List<Lead.Pair> leads = new ArrayList<>();
        Set<Integer> taken = new HashSet<>();
        List<Strand> placed = new ArrayList<>();
        int reachable = 0;
        boolean given = !problem.entry().holes().isEmpty();
        int loops = given ? problem.entry().holes().size() : problem.entry().loops();
        for (int i = 0; i < loops; i++) {
            List<Joint> joints =
                    given ? joints(now, base, problem.entry().holes().get(i), taken) : wallJoints(now, base, taken);
            LatticeGraph best = null;
            Joint chosen = null;
            int most = 0;
            for (Joint joint : joints) {
                if (!isOff(joint, placed)) {
                    continue;
                }
                LatticeGraph left = without(now, base, joint);
                List<PortPair> all = new ArrayList<>(pairs);
                all.add(new PortPair(joint.flow.node, joint.back.node, i));
                int heated = heated(left, all);
                if (heated > most) {
                    most = heated;
                    best = left;
                    chosen = joint;
                }
            }
            if (chosen == null) {
                return Optional.empty();
            }
            now = best;
            pairs.add(new PortPair(chosen.flow.node, chosen.back.node, i));
            leads.add(new Lead.Pair(chosen.flow.lead, chosen.back.lead));
            for (End end : List.of(chosen.flow, chosen.back)) {
                if (!end.elements().isEmpty()) {
                    placed.add(new Strand(end.elements()));
                }
            }
            taken.add(chosen.flow.node);
            taken.add(chosen.back.node);
            reachable = most;
        }
        return Optional.of(new PortSearch.Found(now, pairs, reachable, leads));
    }

    /** Heated nodes of the block that holds all pairs; 0 if none does. */
    private static int heated(LatticeGraph graph, List<PortPair> pairs) {
        for (PortPair p : pairs) {
            if (!graph.linked(p.from(), p.to())) {
                return 0;
            }
        }
        for (BiconnectedBlock block : BiconnectedBlock.all(graph)) {
            if (pairs.stream().allMatch(p -> block.contains(p.from()) && block.contains(p.to()))
                    && block.holdsAllWanted(graph)) {
                return PortSearch.heated(graph, block);
            }
        }
        return 0;
    }

    private List<int[]> near(LatticeGraph graph, Point base, boolean anywhere, Set<Integer> taken, Point at, Point to) {
        return ports.linkedInReach(graph, base, anywhere).stream()
                .filter(p -> !taken.contains(p[0]) && !taken.contains(p[1]))
                .sorted(Comparator.comparingDouble((int[] p) -> Math.rint(1000
                                * Math.min(
                                        ports.at(graph, base, p[0]).distance(at)
                                                + ports.at(graph, base, p[1]).distance(to),
                                        ports.at(graph, base, p[1]).distance(at)
                                                + ports.at(graph, base, p[0]).distance(to))))
                        .thenComparingInt(p -> p[0])
                        .thenComparingInt(p -> p[1]))
                .toList();
    }

    /** Ways of joining given holes, the shortest first. */
    private List<Joint> joints(LatticeGraph graph, Point base, Job.HolePair holes, Set<Integer> taken) {
        Point flow = frame.in(holes.flow());
        Point back = frame.in(holes.back());
        List<Joint> joints = new ArrayList<>();
        List<int[]> near = near(graph, base, true, taken, flow, back);
        for (int[] pair : near.subList(0, Math.min(MOST_PAIRS, near.size()))) {
            for (int swap = 0; swap < 2; swap++) {
                int a = pair[swap];
                int b = pair[1 - swap];
                for (End start : ends(graph, base, flow, a, b)) {
                    for (End end : ends(graph, base, back, b, a)) {
                        joints.add(new Joint(start, end));
                    }
                }
            }
        }
        return sorted(joints, graph, base);
    }

    /** Ways of going straight on through the wall, those nearest to the port first. */
    private List<Joint> wallJoints(LatticeGraph graph, Point base, Set<Integer> taken) {
        Point port = frame.in(problem.port());
        List<Joint> joints = new ArrayList<>();
        List<int[]> near = near(graph, base, false, taken, port, port);
        for (int[] pair : near.subList(0, Math.min(MOST_PAIRS, near.size()))) {
            for (End start : wallEnds(graph, base, pair[0], pair[1])) {
                for (End end : wallEnds(graph, base, pair[1], pair[0])) {
                    joints.add(new Joint(start, end));
                }
            }
        }
        return sorted(joints, graph, base);
    }

    private List<Joint> sorted(List<Joint> joints, LatticeGraph graph, Point base) {
        List<Joint> apart = new ArrayList<>();
        joints.sort(Comparator.comparingDouble((Joint j) -> Math.rint(1000 * j.length())));
        for (Joint j : joints) {
            if (apart.size() < MOST_WEIGHED && areApart(j, graph, base)) {
                apart.add(j);
            }
        }
        return apart;
    }

    /** Whether neither way comes near the other or the other's first run. */
    private boolean areApart(Joint j, LatticeGraph graph, Point base) {
        if (j.flow.elements().isEmpty() && j.back.elements().isEmpty()) {
            return true;
        }
        Strand flow = new Strand(j.flow.elements());
        Strand back = new Strand(j.back.elements());
        double apart = problem.entry().apart();
        boolean ways = j.flow.elements().isEmpty() || j.back.elements().isEmpty() || !flow.isNear(back, apart);
        return ways && isOff(flow, j.back, graph, base, apart) && isOff(back, j.flow, graph, base, apart);
    }

    /** Whether the ways of a loop keep off those of the loops before. */
    private boolean isOff(Joint j, List<Strand> placed) {
        for (End end : List.of(j.flow, j.back)) {
            if (!end.elements().isEmpty()) {
                Strand way = new Strand(end.elements());
                if (placed.stream().anyMatch(p -> p.isNear(way, problem.entry().apart()))) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean isOff(Strand way, End other, LatticeGraph graph, Point base, double apart) {
        Point a = ports.at(graph, base, other.node);
        Point b = other.on
                .map(h -> new Point(a.x() + h.dx() * problem.spacing(), a.y() + h.dy() * problem.spacing()))
                .orElse(a);
        return !way.isNear(a.x(), a.y(), b.x(), b.y(), apart);
    }

    /** How a hole can be joined to a node whose pair's other node is given. */
    private List<End> ends(LatticeGraph graph, Point base, Point hole, int node, int other) {
        Point at = ports.at(graph, base, node);
        if (hole.distance(at) < SAME) {
            return List.of(new End(node, Optional.empty(), Optional.empty(), new Lead(List.of(hole))));
        }
        List<End> ends = new ArrayList<>();
        for (Heading h : Heading.values()) {
            int next = graph.neighbour(node, h);
            if (next >= 0 && next != other) {
                ways.computeIfAbsent(
                                List.of(hole, at, new Point(h.dx(), h.dy())),
                                k -> finder.find(hole, at, h.dx(), h.dy()))
                        .ifPresent(w -> ends.add(new End(node, Optional.of(h), Optional.of(w), w.lead())));
            }
        }
        return ends;
    }

    /** How a node can be left straight back through the wall. */
    private List<End> wallEnds(LatticeGraph graph, Point base, int node, int other) {
        Point at = ports.at(graph, base, node);
        List<End> ends = new ArrayList<>();
        for (Heading h : Heading.values()) {
            int next = graph.neighbour(node, h);
            Optional<Point> wall = next < 0 || next == other ? Optional.empty() : wallBehind(at, h);
            wall.filter(w -> frame.in(problem.port()).distance(w) <= problem.reach() + problem.spacing())
                    .flatMap(w -> finder.find(w, at, h.dx(), h.dy()))
                    .ifPresent(w -> ends.add(new End(node, Optional.of(h), Optional.of(w), w.lead())));
        }
        return ends;
    }

    /** Where the line from a node against a heading first meets the outline. */
    private Optional<Point> wallBehind(Point at, Heading h) {
        List<Point> outline = frame.in(problem.outline());
        double nearest = outside;
        for (int i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
            Point a = outline.get(j);
            Point b = outline.get(i);
            double dx = b.x() - a.x();
            double dy = b.y() - a.y();
            double cross = -h.dx() * dy + h.dy() * dx;
            if (Math.abs(cross) < 1e-9) {
                continue;
            }
            double s = ((a.x() - at.x()) * dy - (a.y() - at.y()) * dx) / cross;
            double t = ((a.x() - at.x()) * -h.dy() + (a.y() - at.y()) * h.dx()) / cross;
            if (s > 0 && s < nearest && t >= 0 && t <= 1) {
                nearest = s;
            }
        }
        return nearest < Math.max(problem.edge(), problem.spacing()) * 2
                ? Optional.of(new Point(at.x() - nearest * h.dx(), at.y() - nearest * h.dy()))
                : Optional.empty();
    }

    /** The lattice without what a joint takes. */
    private LatticeGraph without(LatticeGraph graph, Point base, Joint joint) {
        LatticeGraph.Builder left = graph.copy();
        take(left, graph, base, joint.flow, joint.back.node);
        take(left, graph, base, joint.back, joint.flow.node);
        return left.build();
    }

    private void take(LatticeGraph.Builder left, LatticeGraph graph, Point base, End end, int other) {
        if (problem.entry().slot() > problem.spacing() - problem.radius() + 1e-9) {
            keepSlotStraight(left, graph, end);
        }
        if (end.way.isEmpty()) {
            return;
        }
        int next = graph.neighbour(end.node, end.on.orElseThrow());
        Strand strand = new Strand(end.elements());
        double apart = problem.entry().apart();
        for (int n = 0; n < graph.size(); n++) {
            Point at = ports.at(graph, base, n);
            boolean own = n == end.node;
            for (Heading h : Heading.values()) {
                int m = graph.neighbour(n, h);
                boolean needed = (own && (m == next || m == other)) || (m == end.node && (n == next || n == other));
                double x = at.x() + h.dx() * problem.spacing();
                double y = at.y() + h.dy() * problem.spacing();
                if (m >= 0 && !needed && (own || strand.isNear(at.x(), at.y(), x, y, apart))) {
                    left.unlink(n, m);
                }
                if (!own && strand.isNear(corner(at, h), apart)) {
                    left.forbidBend(n, h, h.left());
                }
            }
        }
    }

    /** No bend at a neighbour that would lie on the slot; where a lead-in is long, this is stricter than need be. */
    private void keepSlotStraight(LatticeGraph.Builder left, LatticeGraph graph, End end) {
        if (end.length() + problem.spacing() - problem.radius()
                >= problem.entry().slot()) {
            return;
        }
        for (Heading h : Heading.values()) {
            int next = graph.neighbour(end.node, h);
            if (next >= 0) {
                left.forbidBend(next, h.opposite(), h.left());
                left.forbidBend(next, h.opposite(), h.right());
            }
        }
    }

    private Arc corner(Point at, Heading h) {
        double r = problem.radius();
        double cx = at.x() + r * (h.dx() + h.left().dx());
        double cy = at.y() + r * (h.dy() + h.left().dy());
        return new Arc(cx, cy, r, Math.atan2(-h.left().dy(), -h.left().dx()), -Math.PI / 2);
    }
}
