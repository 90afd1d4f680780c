package org.runbend.optimizer.heat.output;

import java.util.List;

/** Adds up zones by area. The surface is the room's temperature and q / alpha (EN 1264-2). */
public final class AreaWeighting {
    /** The floor's output. */
    public FloorOutput solve(FloorProblem problem) {
        List<FloorOutput.ZoneOutput> zones = problem.zones().stream()
                .filter(z -> z.area() > 0)
                .map(z -> zone(problem, z))
                .toList();
        double area = zones.stream().mapToDouble(z -> z.zone().area()).sum();
        return new FloorOutput(
                zones.stream().mapToDouble(z -> z.upward() * z.zone().area()).sum(),
                zones.stream().mapToDouble(z -> z.downward() * z.zone().area()).sum(),
                zones,
                zones.stream()
                                .mapToDouble(z -> z.surfaceMean() * z.zone().area())
                                .sum()
                        / area,
                zones.stream()
                        .mapToDouble(FloorOutput.ZoneOutput::surfacePeak)
                        .max()
                        .orElseThrow());
    }

    private static FloorOutput.ZoneOutput zone(FloorProblem problem, FloorZone zone) {
        StripOutput output = zone.output();
        double upward = output.upward(problem.coolant(), problem.room(), problem.outside());
        double mean = upward / problem.surface();
        // The pattern is the coolant's; what comes through from outside is even.
        double pattern = output.up() * (problem.coolant() - problem.room()) / problem.surface();
        double peak = mean + Math.max(pattern * (output.peak() - 1), pattern * (output.least() - 1));
        return new FloorOutput.ZoneOutput(
                zone,
                problem.coolant(),
                upward,
                output.downward(problem.coolant(), problem.room(), problem.outside()),
                problem.room() + mean,
                problem.room() + peak);
    }
}
