package org.runbend.optimizer.heat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.optimizer.heat.limits.Iso13732;
import org.runbend.optimizer.heat.limits.Sleeping;
import org.runbend.optimizer.heat.limits.SleepingFloor;
import org.runbend.optimizer.heat.limits.SleepingProblem;
import org.runbend.optimizer.heat.limits.SleepingSolution;
import org.runbend.optimizer.heat.limits.SupplyLimit;
import org.runbend.optimizer.heat.limits.SurfaceLimit;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.StripOutput;

/**
 * What gets hotter with the supply, at the begin of a loop where its coolant has not cooled yet, with good contact and no film: the
 * safe side. Each rises straight with the supply.
 */
final class SupplyLimits {
    /** Glue and dry plywood (our choice: makers' figures differ), degrees C. */
    static final double PLY_AND_GLUE = 50;

    /** What carries the supply and can be touched. */
    static final String TAILS = "bare tails in reach";

    private final HeatProblem problem;
    private final List<StripOutput> strips;
    private final double up;
    private final double down;

    SupplyLimits(HeatProblem problem) {
        this.problem = problem;
        strips = new FloorReckoning(problem, 0).hottest();
        up = problem.build().stack().up();
        down = problem.build().stack().down(problem.build().pipe().outer());
    }

    /** Hottest spot of the surface for a supply, degrees C. */
    double surface(double supply) {
        return strips.stream().mapToDouble(s -> surface(s, supply)).max().orElseThrow();
    }

    /** What that spot is made of. */
    HeatSolution.Hottest hottest(double supply) {
        StripOutput s = strips.stream()
                .max(Comparator.comparingDouble(x -> surface(x, supply)))
                .orElseThrow();
        return new HeatSolution.Hottest(
                s.up(),
                s.exchange(),
                supply >= problem.surroundings().room() ? s.peak() : s.least(),
                problem.build().stack().surface(),
                surface(s, supply));
    }

    private double surface(StripOutput s, double supply) {
        double room = problem.surroundings().room();
        double warm = s.up() * (supply - room) * (supply >= room ? s.peak() : s.least());
        return room
                + (warm + s.exchange() * (problem.surroundings().outside() - room))
                        / problem.build().stack().surface();
    }

    /** Hottest spot under the cover for a supply, degrees C: between coolant and the mean of the plane. */
    double underside(double supply) {
        return strips.stream().mapToDouble(s -> underside(s, supply)).max().orElseThrow();
    }

    private double underside(StripOutput s, double supply) {
        double sink = (up * problem.surroundings().room()
                        + down * problem.surroundings().outside())
                / (up + down);
        return sink + Math.min(1, s.plane() * s.peak()) * (supply - sink);
    }

    /** Under a mattress with the valve stuck open, for a supply; nothing where it is said that nobody sleeps, or no plate is. */
    Optional<SleepingSolution> sleeping(double supply) {
        if (problem.surroundings().sleeping() == Sleeping.NO) {
            return Optional.empty();
        }
        StripMethods methods = new StripMethods(problem.build());
        return problem.loops().stream()
                .flatMap(l -> l.strips().stream())
                .filter(s -> s.plate().isPresent() && s.length() > 0)
                .map(s -> new SleepingFloor()
                        .solve(new SleepingProblem(
                                methods.fin(s, Contact.IDEAL),
                                supply,
                                problem.surroundings().room(),
                                problem.surroundings().outside())))
                .reduce((a, b) -> a.underMattress() >= b.underMattress() ? a : b);
    }

    SurfaceLimit surfaceLimit() {
        return problem.surroundings().bath() ? SurfaceLimit.BATH : SurfaceLimit.OCCUPIED;
    }

    /** All of them at a supply. */
    List<SupplyLimit> at(double supply) {
        List<SupplyLimit> limits = new ArrayList<>();
        double surface = surface(supply);
        double slope = Math.max(0, surface(supply + 1) - surface);
        limits.add(new SupplyLimit(
                "surface of the floor", surface, slope, surfaceLimit().celsius()));
        if (problem.build().timber()) {
            limits.add(new SupplyLimit("timber floor", surface, slope, SurfaceLimit.TIMBER.celsius()));
        }
        double underside = underside(supply);
        limits.add(new SupplyLimit(
                "plywood and glue", underside, Math.max(0, underside(supply + 1) - underside), PLY_AND_GLUE));
        problem.build().pipeLimit().ifPresent(p -> limits.add(new SupplyLimit("pipe", supply, 1, p)));
        limits.add(new SupplyLimit(TAILS, supply, 1, new Iso13732().threshold(1)));
        if (problem.surroundings().sleeping() == Sleeping.YES) {
            sleeping(supply)
                    .ifPresent(s -> limits.add(new SupplyLimit(
                            "sleeper on the floor",
                            s.underMattress(),
                            Math.max(0, s.perKelvin()),
                            SleepingFloor.WARN)));
        }
        return limits;
    }

    /** Hottest excess of the surface over plates, against the mean one; nothing where no plate is. */
    OptionalDouble overPlates() {
        StripMethods methods = new StripMethods(problem.build());
        return problem.loops().stream()
                .flatMap(l -> l.strips().stream())
                .filter(s -> s.plate().isPresent() && s.length() > 0)
                .mapToDouble(s -> methods.output(s, Contact.IDEAL).peak())
                .max();
    }

    /** Lowest limit of the floor's top, degrees C. */
    double topLimit() {
        double top = surfaceLimit().celsius();
        return problem.build().timber() ? Math.min(top, SurfaceLimit.TIMBER.celsius()) : top;
    }
}
