package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.change.EarlierKit;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;

/**
 * A loop that was routed, as places and links of the lattice that it was laid on. Its bends have half the spacing for their
 * radius, so the middle of every link that it follows lies on the pipe: on a run, where a bend begins or ends, or at the
 * top of a return bend.
 */
final class EarlierGrid {
    /** Pipe this near to the middle of a link follows it, as a share of the spacing. */
    private static final double NEAR = 0.01;

    /** A place of the lattice. */
    record Place(int column, int row) implements Comparable<Place> {
        Place step(int dx, int dy) {
            return new Place(column + dx, row + dy);
        }

        @Override
        public int compareTo(Place other) {
            return Comparator.comparingInt(Place::row)
                    .thenComparingInt(Place::column)
                    .compare(this, other);
        }
    }

    private final Lattice lattice;
    private final Map<Place, Set<Place>> links = new TreeMap<>();
    private final Set<Place> bare = new HashSet<>();
    private final Place start;
    private final Place end;

    /** The loop on a lattice that has nodes where that of the loop had. */
    EarlierGrid(Lattice lattice, EarlierKit.Loop loop) {
        this.lattice = lattice;
        List<Element> own =
                loop.elements().subList(loop.leadIn(), loop.elements().size() - loop.leadOut());
        start = place(own.get(0).from());
        end = place(own.get(own.size() - 1).to());
        for (Element e : own) {
            if (e instanceof Element.Run run) {
                follow(run);
            } else {
                follow((Element.Bend) e);
            }
        }
        link(start, end);
        loop.bare().forEach(p -> bare.add(place(p)));
    }

    private void follow(Element.Run run) {
        Point from = lattice.amongPlaces(run.from());
        Point to = lattice.amongPlaces(run.to());
        boolean flat = Math.abs(to.x() - from.x()) >= Math.abs(to.y() - from.y());
        double low = flat ? Math.min(from.x(), to.x()) : Math.min(from.y(), to.y());
        double high = flat ? Math.max(from.x(), to.x()) : Math.max(from.y(), to.y());
        int level = (int) Math.rint(flat ? from.y() : from.x());
        for (int i = (int) Math.ceil(low - 0.5 - NEAR); i + 0.5 <= high + NEAR; i++) {
            link(
                    flat ? new Place(i, level) : new Place(level, i),
                    flat ? new Place(i + 1, level) : new Place(level, i + 1));
        }
    }

    private void follow(Element.Bend bend) {
        middle(bend.from());
        middle(bend.to());
        if (Math.abs(bend.turn()) > 135) {
            double side = Math.signum(bend.turn());
            double ux = (bend.to().y() - bend.from().y()) * side;
            double uy = -(bend.to().x() - bend.from().x()) * side;
            double length = Math.hypot(ux, uy);
            middle(new Point(
                    bend.centre().x() + bend.radius() * ux / length,
                    bend.centre().y() + bend.radius() * uy / length));
        }
    }

    /** Notes the link whose middle a point is, if it is one. */
    private void middle(Point p) {
        Point g = lattice.amongPlaces(p);
        boolean flat = isWhole(g.y()) && isWhole(g.x() - 0.5);
        boolean upright = isWhole(g.x()) && isWhole(g.y() - 0.5);
        if (flat) {
            int column = (int) Math.rint(g.x() - 0.5);
            int row = (int) Math.rint(g.y());
            link(new Place(column, row), new Place(column + 1, row));
        } else if (upright) {
            int column = (int) Math.rint(g.x());
            int row = (int) Math.rint(g.y() - 0.5);
            link(new Place(column, row), new Place(column, row + 1));
        }
    }

    private static boolean isWhole(double value) {
        return Math.abs(value - Math.rint(value)) <= NEAR;
    }

    private void link(Place a, Place b) {
        links.computeIfAbsent(a, k -> new TreeSet<>()).add(b);
        links.computeIfAbsent(b, k -> new TreeSet<>()).add(a);
    }

    /** The nodes that the loop began and ended at, or -1 where one is no more. */
    int[] port(Map<Place, Integer> nodes) {
        return new int[] {nodes.getOrDefault(start, -1), nodes.getOrDefault(end, -1)};
    }

    /** The nodes of the lattice by their places. */
    static Map<Place, Integer> nodes(LatticeGraph graph) {
        Map<Place, Integer> nodes = new TreeMap<>();
        for (int n = 0; n < graph.size(); n++) {
            nodes.put(new Place(graph.column(n), graph.row(n)), n);
        }
        return nodes;
    }

    /** Where the loop cannot lie any more: places or links of it that are gone, bends that have no room, its ends without a port. */
    Set<Place> damage(Map<Place, Integer> nodes, boolean portStays) {
        LatticeGraph graph = lattice.graph();
        Set<Place> damage = new TreeSet<>();
        if (!portStays) {
            damage.addAll(List.of(start, end));
        }
        links.forEach((place, others) -> {
            int node = nodes.getOrDefault(place, -1);
            boolean whole = node >= 0 && others.size() == 2;
            List<Heading> legs = new ArrayList<>();
            for (Place other : others) {
                int next = nodes.getOrDefault(other, -1);
                whole = whole && next >= 0 && graph.linked(node, next);
                if (whole) {
                    legs.add(graph.headingTo(node, next));
                }
            }
            if (!whole || !graph.bendAllowed(node, legs.get(0), legs.get(1))) {
                damage.add(place);
            }
        });
        return damage;
    }

    /** Heated places that a loop can serve now, that the loop did not pass, and that it did not leave out. */
    Set<Place> gained(Set<Integer> block) {
        LatticeGraph graph = lattice.graph();
        Set<Place> gained = new TreeSet<>();
        for (int n : block) {
            Place place = new Place(graph.column(n), graph.row(n));
            if (graph.price(n) > 0 && !links.containsKey(place) && !bare.contains(place)) {
                gained.add(place);
            }
        }
        return gained;
    }

    /** Places at which a loop does not follow the links of the loop before. */
    Set<Place> changed(List<Integer> cycle) {
        LatticeGraph graph = lattice.graph();
        List<Place> path = cycle.stream()
                .map(n -> new Place(graph.column(n), graph.row(n)))
                .toList();
        Map<Place, Set<Place>> now = new TreeMap<>();
        for (int i = 0; i < path.size(); i++) {
            Place next = path.get((i + 1) % path.size());
            now.computeIfAbsent(path.get(i), k -> new TreeSet<>()).add(next);
            now.computeIfAbsent(next, k -> new TreeSet<>()).add(path.get(i));
        }
        Set<Place> changed = new TreeSet<>(links.keySet());
        changed.addAll(now.keySet());
        changed.removeIf(p -> now.getOrDefault(p, Set.of()).equals(links.getOrDefault(p, Set.of())));
        return changed;
    }

    /** The graph in which the loop lies as it lay but for the places that are free. */
    LatticeGraph holding(Map<Place, Integer> nodes, Set<Place> free) {
        LatticeGraph graph = lattice.graph();
        LatticeGraph.Builder held = graph.copy();
        nodes.forEach((place, node) -> {
            if (free.contains(place)) {
                return;
            }
            Set<Place> others = links.getOrDefault(place, Set.of());
            for (Heading h : Heading.values()) {
                int next = graph.neighbour(node, h);
                if (next >= 0 && !others.contains(place.step(h.dx(), h.dy()))) {
                    held.unlink(node, next);
                }
            }
            if (!others.isEmpty()) {
                held.want(node);
            }
        });
        return held.build();
    }

    private Place place(Point p) {
        Point g = lattice.amongPlaces(p);
        return new Place((int) Math.rint(g.x()), (int) Math.rint(g.y()));
    }
}
