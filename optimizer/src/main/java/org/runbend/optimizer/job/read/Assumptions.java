package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.Job;

/** What a job leaves to us: each default that matters on the floor, a sentence each, for whoever confirms it. */
final class Assumptions {
    private static final int MOST_NAMES = 6;

    private final YamlMap root;
    private final List<String> sentences = new ArrayList<>();

    private Assumptions(YamlMap root) {
        this.root = root;
    }

    /** The sentences; the mapping is that of a job that was read without a fault. */
    static List<String> of(YamlMap root, Job.FloorPlan floor, Job.Layout layout, Job.PipeRequest pipe) {
        Assumptions a = new Assumptions(root);
        a.unless(root.find("units"), "Numbers without a unit are millimetres.");
        a.floor(floor);
        a.unless(a.find("layout", "spacing"), "The runs of the pipe lie " + mm(layout.spacing()) + " apart.");
        a.unless(
                a.find("layout", "edge"),
                "The middle of the pipe stays " + mm(layout.edge()) + " away from the edge of the floor.");
        a.unless(
                a.find("floor", "port").flatMap(p -> p.map().find("holes")),
                "Where the pipe goes through the floor is proposed: look underneath before anything is drilled.");
        a.unless(
                a.find("pipe", "tails"),
                "No pipe is counted for the way from the port to the valves (tails of flow and return).");
        a.unless(
                a.find("pipe", "allowance"),
                Plain.number(100 * pipe.allowance()) + " % is added to the pipe when it is cut.");
        return List.copyOf(a.sentences);
    }

    private void floor(Job.FloorPlan floor) {
        find("floor", "measured")
                .ifPresent(m ->
                        unless(m.map().find("round"), "The corners are listed anticlockwise, as seen from above."));
        if (floor.keepOuts().isEmpty()) {
            sentences.add("Nothing stands on this floor or goes through it that the pipe must keep away from.");
        }
        if (floor.unheated().isEmpty()) {
            sentences.add("The whole floor is to be heated.");
        }
        List<String> bare = new ArrayList<>();
        find("floor", "keepOut").ifPresent(list -> list.list(0, Integer.MAX_VALUE, "a list").stream()
                .map(YamlValue::map)
                .filter(m -> m.find("clearance").isEmpty())
                .forEach(m -> bare.add(m.get("name", YamlValue::text, "keep-out"))));
        if (!bare.isEmpty()) {
            sentences.add("No clearance is given, so the groove keeps the usual air, 10 to 25 mm by kind, from: "
                    + names(bare) + ".");
        }
    }

    private static String names(List<String> all) {
        String some = String.join(
                ", ", all.stream().limit(MOST_NAMES).map(Plain::quoted).toList());
        return all.size() > MOST_NAMES ? some + " and " + (all.size() - MOST_NAMES) + " more" : some;
    }

    private void unless(Optional<YamlValue> given, String sentence) {
        if (given.isEmpty()) {
            sentences.add(sentence);
        }
    }

    private Optional<YamlValue> find(String part, String key) {
        return root.findMap(part).flatMap(m -> m.find(key));
    }

    private static String mm(double value) {
        return Plain.number(value) + " mm";
    }
}
