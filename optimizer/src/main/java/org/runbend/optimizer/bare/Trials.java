package org.runbend.optimizer.bare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.floor.LatticeSearch;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.PortPair;

/**
 * Tries changes of the job on the lattice. A glance tells which change is worth a search; only what the search confirms on
 * each lattice that a plan would choose from is called a remedy.
 *
 * <p>Work: numbers of glances and of searches that fall with the size of the floor, so that all of it takes about as long
 * as choosing the lattice did.
 */
final class Trials {
    private static final double ANYWHERE = 1e6;
    private static final int MOST_KEEP_OUTS = 3;
    private static final double SHARE = 0.5;
    /** A reach up to so many times the one given is worth asking for; beyond it, the port should move. */
    private static final double MOST_REACH = 2;

    private final BareProblem problem;
    private final FloorProblem now;
    private final double area;
    private final Map<FloorProblem, Optional<Servable>> glances = new HashMap<>();
    private final Map<FloorProblem, List<Servable>> searches = new HashMap<>();
    private int glancesLeft;
    private int searchesLeft;

    /**
     * Trials on a floor.
     *
     * @param coverable places that a loop can pass now
     */
    Trials(BareProblem problem, int coverable) {
        this.problem = problem;
        this.now = problem.problem();
        this.area = coverable * now.spacing() * now.spacing();
        int size = problem.lattice().graph().size()
                + 20 * (now.outline().size() + now.keepOuts().size());
        this.glancesLeft = Math.max(6, Math.min(40, 16_000 / size));
        this.searchesLeft = Math.max(1, Math.min(6, 1_600 / size));
    }

    /** What frees at least a half of the part that any change of its kind frees; the mildest kinds first. */
    List<Remedy> remedies(Part part) {
        List<Remedy> found = new ArrayList<>(part.known());
        if (part.reason() == Reason.TURNS) {
            return found;
        }
        ToIntFunction<Servable> here = here(part);
        for (List<Trial> kind : kinds(part)) {
            promising(kind, here).flatMap(t -> confirmed(t, here)).ifPresent(found::add);
        }
        return found;
    }

    /** How many places of a part a loop can pass more than now. */
    private static ToIntFunction<Servable> here(Part part) {
        if (part.reason() == Reason.COLOURS) {
            return s -> Math.max(0, part.places() - s.heated() + s.coverable());
        }
        PreparedGeometry zone = PreparedGeometryFactory.prepare(part.zone().buffer(0.5));
        return s -> s.within(zone);
    }

    private List<List<Trial>> kinds(Part part) {
        List<List<Trial>> kinds = new ArrayList<>();
        kinds.add(Trial.edges(now, problem.limits().edge()));
        keepOutsNear(part)
                .forEach(
                        k -> kinds.add(Trial.clearances(now, k, problem.limits().clearance())));
        if (part.reason() == Reason.JOINED_BY_ONE || part.reason() == Reason.NOT_JOINED) {
            ports().ifPresent(trial -> kinds.add(List.of(trial)));
        }
        kinds.add(
                Trial.spacings(now, problem.limits().spacing(), problem.limits().radius()));
        return kinds;
    }

    private List<Integer> keepOutsNear(Part part) {
        return IntStream.range(0, now.keepOuts().size())
                .boxed()
                .filter(k -> away(part, k) <= now.keepOuts().get(k).clearance() + now.spacing())
                .sorted(Comparator.comparingDouble((Integer k) -> away(part, k)).thenComparing(k -> k))
                .limit(MOST_KEEP_OUTS)
                .toList();
    }

    private double away(Part part, int keepOut) {
        KeepOut k = now.keepOuts().get(keepOut);
        return Math.rint(10 * FloorShapes.bare(k.bare()).distance(part.zone())) / 10;
    }

    /** The nearest place from which the largest part of the floor opens, by a longer reach or by a port there. */
    private Optional<Trial> ports() {
        return glance(Trial.reach(now, ANYWHERE).problem()).map(s -> {
            PortPair pair = s.lattice().ports().get(0);
            Point a = s.lattice().at(pair.from());
            Point b = s.lattice().at(pair.to());
            double reach = Math.ceil(Math.max(now.port().distance(a), now.port().distance(b)));
            return reach <= MOST_REACH * now.reach()
                    ? Trial.reach(now, Math.max(reach, now.reach()))
                    : Trial.port(now, new Point(Math.rint((a.x() + b.x()) / 2), Math.rint((a.y() + b.y()) / 2)));
        });
    }

    /** The mildest trial, by halving, that frees a good share of what the strongest one frees. */
    private Optional<Trial> promising(List<Trial> kind, ToIntFunction<Servable> here) {
        if (kind.isEmpty()) {
            return Optional.empty();
        }
        int high = kind.size() - 1;
        int most = freed(kind.get(high), here);
        if (most == 0) {
            return Optional.empty();
        }
        for (int low = 0; low < high; ) {
            int middle = (low + high) / 2;
            if (freed(kind.get(middle), here) >= Math.max(1, SHARE * most)) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return Optional.of(kind.get(high));
    }

    /** Places in the zone that a glance sees freed; 0 if the floor as a whole gains nothing. */
    private int freed(Trial trial, ToIntFunction<Servable> here) {
        return glance(trial.problem())
                .filter(s -> more(s) >= 1)
                .map(here::applyAsInt)
                .orElse(0);
    }

    private Optional<Remedy> confirmed(Trial trial, ToIntFunction<Servable> here) {
        List<Servable> found = search(trial.problem());
        int freed = found.stream().mapToInt(here).min().orElse(0);
        double more = found.stream().mapToDouble(this::more).min().orElse(0);
        return freed > 0 && more >= 1
                ? Optional.of(trial.freeing(freed, more, more * now.spacing() * now.spacing()))
                : Optional.empty();
    }

    /** Additional floor in reach, in places of the lattice as it is now. */
    private double more(Servable s) {
        double spacing = s.lattice().spacing();
        return (s.coverable() * spacing * spacing - area) / (now.spacing() * now.spacing());
    }

    private Optional<Servable> glance(FloorProblem trial) {
        if (!glances.containsKey(trial) && glancesLeft > 0) {
            glancesLeft--;
            glances.put(
                    trial, new LatticeSearch().glance(trial, problem.lattice()).flatMap(Servable::of));
        }
        return glances.getOrDefault(trial, Optional.empty());
    }

    /** What a loop can pass on each lattice that a plan would choose from; empty if one of them takes no loop at all. */
    private List<Servable> search(FloorProblem trial) {
        if (!searches.containsKey(trial) && searchesLeft > 0) {
            searchesLeft--;
            List<Lattice> lattices = new LatticeSearch().best(trial, LatticeSearch.MOST_CHOSEN_FROM);
            List<Servable> found =
                    lattices.stream().flatMap(l -> Servable.of(l).stream()).toList();
            searches.put(trial, found.size() == lattices.size() ? found : List.of());
        }
        return searches.getOrDefault(trial, List.of());
    }
}
