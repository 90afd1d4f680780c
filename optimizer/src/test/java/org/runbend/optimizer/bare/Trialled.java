package org.runbend.optimizer.bare;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.work.Work;

/**
 * A floor made by hand, spacing 150 unless said otherwise, and the same floor with a remedy taken.
 *
 * @param outline as in a job file
 * @param port as in a job file
 * @param reach mm
 * @param keepOuts as in a job file, without their clearance; each is followed by it
 * @param clearances one for each keep-out, mm
 * @param edge mm
 * @param spacing mm
 * @param price leftOutPrice
 */
record Trialled(
        String outline,
        String port,
        double reach,
        List<String> keepOuts,
        List<Double> clearances,
        double edge,
        double spacing,
        int price) {
    static Trialled floor(String outline, String port) {
        return new Trialled(outline, port, 330, List.of(), List.of(), 75, 150, 10);
    }

    static Trialled rectangle(int length, int width) {
        return floor("[[0, 0], [%1$d, 0], [%1$d, %2$d], [0, %2$d]]".formatted(length, width), "[0, 75]");
    }

    Trialled keepingOut(String keepOut, double clearance) {
        return new Trialled(outline, port, reach, List.of(keepOut), List.of(clearance), edge, spacing, price);
    }

    Trialled priced(int turns) {
        return new Trialled(outline, port, reach, keepOuts, clearances, edge, spacing, turns);
    }

    /** The floor with the change that the remedy names; floors here have at most one keep-out. */
    Trialled with(Remedy r) {
        boolean port = r.change() == Remedy.Change.PORT;
        return new Trialled(
                outline,
                port ? "[%s, %s]".formatted(r.x(), r.y()) : this.port,
                r.change() == Remedy.Change.REACH ? r.to() : reach,
                keepOuts,
                r.change() == Remedy.Change.CLEARANCE ? List.of(r.to()) : clearances,
                r.change() == Remedy.Change.EDGE ? r.to() : edge,
                r.change() == Remedy.Change.SPACING ? r.to() : spacing,
                r.change() == Remedy.Change.PRICE ? (int) r.to() : price);
    }

    KitPlan plan(Path folder) throws IOException {
        StringBuilder kept = new StringBuilder();
        for (int k = 0; k < keepOuts.size(); k++) {
            kept.append("    - {name: thing, %s, clearance: %s}\n".formatted(keepOuts.get(k), clearances.get(k)));
        }
        String text = String.format(
                Locale.ROOT,
                """
                job: Floor made by hand
                order: B-1
                catalog: workshop.yaml
                floor:
                  outline: %s
                  marks: [{edge: 0, text: street}]
                  port: {at: %s, reach: %s}
                %slayout: {spacing: %s, edge: %s, leftOutPrice: %d}
                pipe: {product: PX-16}
                plates: {product: [SP-1]}
                """,
                outline,
                port,
                reach,
                kept.length() == 0 ? "" : "  keepOut:\n" + kept,
                spacing,
                edge,
                price);
        try (var catalog = Trialled.class.getResourceAsStream("/floors/workshop.yaml")) {
            Files.write(folder.resolve("workshop.yaml"), catalog.readAllBytes());
        }
        return new KitPlanner(Work.silent())
                .plan(JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty()));
    }

    /**
     * Plans the floor again with each remedy and holds what a loop can then reach against what was promised.
     *
     * @param reachable places that a loop can pass now, worked out by hand
     */
    void assertPromisesKept(KitPlan plan, int reachable, Path folder) throws IOException {
        for (BareFloor bare : plan.bareFloor()) {
            for (Remedy r : bare.remedies()) {
                KitPlan after = with(r).plan(folder);
                if (r.change() == Remedy.Change.PRICE) {
                    assertTrue(
                            after.loops().get(0).leftOut()
                                    <= plan.loops().get(0).leftOut() - r.here(),
                            r::sentence);
                } else {
                    double places = after.lattice().reachable()
                            * Math.pow(after.lattice().spacing() / spacing, 2);
                    assertTrue(places >= reachable + r.more() - 1e-9, () -> r.sentence() + " " + places);
                }
            }
        }
    }
}
