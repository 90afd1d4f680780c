package org.runbend.optimizer.job.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** Two floors that differ in any key of the schema cannot be signed for each other. */
class FloorFingerprintTest {
    private static final Path EXAMPLES = Path.of("..", "examples");

    /** For each key of floor in the schema: what is changed in the example that has every key. */
    private static final Map<String, List<String>> CHANGES = new TreeMap<>(Map.ofEntries(
            Map.entry("outline", List.of("[0, 1500]]\n  # What", "[0, 1510]]\n  # What")),
            Map.entry(
                    "outline.arc", List.of("{arc: [[2400, 750], [2250, 1500]]}", "{arc: [[2410, 750], [2250, 1500]]}")),
            Map.entry("marks", List.of("    - {point: [0, 400], text: door}\n", "")),
            Map.entry("marks.edge", List.of("{edge: 1, text: bow}", "{edge: 2, text: bow}")),
            Map.entry("marks.point", List.of("{point: [0, 400], text: door}", "{point: [0, 410], text: door}")),
            Map.entry("marks.text", List.of("text: door", "text: window")),
            Map.entry(
                    "keepOut", List.of("    - {name: seat bolt, kind: bolt, point: [1650, 850], clearance: 50}\n", "")),
            Map.entry("keepOut.name", List.of("name: scupper", "name: drain")),
            Map.entry("keepOut.kind", List.of("kind: pillar", "kind: hatch")),
            Map.entry("keepOut.circle", List.of("circle: {centre: [700, 250], radius: 40}", "point: [700, 250]")),
            Map.entry("keepOut.circle.centre", List.of("centre: [700, 250]", "centre: [700, 260]")),
            Map.entry("keepOut.circle.radius", List.of("radius: 40", "radius: 42")),
            Map.entry("keepOut.polygon", List.of("[1350, 1150], [1350, 1300]", "[1350, 1150], [1360, 1300]")),
            Map.entry(
                    "keepOut.polygon.arc",
                    List.of("[1350, 1150], [1350, 1300]", "[1350, 1150], {arc: [[1360, 1220], [1350, 1300]]}")),
            Map.entry("keepOut.point", List.of("point: [1650, 850]", "point: [1650, 860]")),
            Map.entry("keepOut.clearance", List.of("clearance: 60", "clearance: 65")),
            Map.entry("unheated", List.of("  unheated:\n    - {name: locker", "  # unheated:\n    # - {name: locker")),
            Map.entry("unheated.name", List.of("name: locker", "name: chest")),
            Map.entry("unheated.polygon", List.of("[400, 1200], [400, 1500]", "[400, 1200], [410, 1500]")),
            Map.entry(
                    "unheated.polygon.arc",
                    List.of("[400, 1200], [400, 1500]", "[400, 1200], {arc: [[410, 1350], [400, 1500]]}")),
            Map.entry("supports", List.of("  supports:\n    - {name: frame", "  # supports:\n    # - {name: frame")),
            Map.entry("supports.name", List.of("name: frame 4", "name: frame 5")),
            Map.entry("supports.line", List.of("line: [[900, 0], [900, 1500]]", "line: [[910, 0], [910, 1500]]")),
            Map.entry("supports.width", List.of("width: 30", "width: 35")),
            Map.entry("supports.cross", List.of("cross: square", "cross: never")),
            Map.entry("port", List.of("at: [0, 700]\n    reach: 330\n    turn: down", "at: [0, 710]\n    turn: up")),
            Map.entry("port.at", List.of("at: [0, 700]", "at: [0, 710]")),
            Map.entry("port.reach", List.of("reach: 330", "reach: 340")),
            Map.entry("port.turn", List.of("turn: down", "turn: up")),
            Map.entry("port.holes", List.of("    holes: [{flow: [75, 675], return: [75, 825]}]\n", "")),
            Map.entry("port.holes.flow", List.of("flow: [75, 675]", "flow: [75, 676]")),
            Map.entry("port.holes.return", List.of("return: [75, 825]", "return: [75, 826]")),
            Map.entry("below", List.of("  below:\n    - {name: fuel", "  # below:\n    # - {name: fuel")),
            Map.entry("below.name", List.of("name: fuel tank", "name: water tank")),
            Map.entry("below.polygon", List.of("[2000, 0], [2000, 400]", "[2000, 0], [2010, 400]")),
            Map.entry(
                    "below.polygon.arc",
                    List.of("[2000, 0], [2000, 400]", "[2000, 0], {arc: [[2010, 200], [2000, 400]]}"))));

    /** Keys whose floor comes out as an outline, held to it by the tests of measured floors. */
    private static final Set<String> OF_TAPE =
            Set.of("measured", "measured.corners", "measured.lengths", "measured.round");

    @TempDir
    Path folder;

    @BeforeEach
    void catalog() throws IOException {
        Files.copy(EXAMPLES.resolve("workshop.yaml"), folder.resolve("workshop.yaml"));
    }

    private String print(String text) throws IOException {
        Path job = Files.writeString(folder.resolve("job.yaml"), text.replace("../workshop.yaml", "workshop.yaml"));
        return JobReader.read(job, Optional.empty()).floor().fingerprint();
    }

    @Test
    void everyKeyOfTheSchemaCounts() throws IOException {
        Set<String> keys = new TreeSet<>(CHANGES.keySet());
        keys.addAll(OF_TAPE);
        assertEquals(schemaKeys(), keys);
        String text = Files.readString(EXAMPLES.resolve("ways-in").resolve("every-key.yaml"));
        String floor = print(text);
        for (Map.Entry<String, List<String>> change : CHANGES.entrySet()) {
            String from = change.getValue().get(0);
            assertTrue(text.contains(from), change::toString);
            assertNotEquals(floor, print(text.replace(from, change.getValue().get(1))), change::toString);
        }
        assertEquals(floor, print(text.replaceAll("(?m)^job: .*$", "job: Another name")));
        assertEquals(floor, print(text.replace("spacing: 150", "spacing: 149")), "how it is laid is not the floor");
    }

    private static Set<String> schemaKeys() throws IOException {
        Map<?, ?> schema = (Map<?, ?>) new Load(LoadSettings.builder().build())
                .loadFromString(Files.readString(EXAMPLES.resolve("job.schema.json")));
        Set<String> keys = new TreeSet<>();
        Map<?, ?> floor = (Map<?, ?>) ((Map<?, ?>) schema.get("properties")).get("floor");
        collect(schema, floor, "", keys);
        return keys;
    }

    private static void collect(Map<?, ?> schema, Map<?, ?> node, String path, Set<String> keys) {
        Map<?, ?> at = node;
        while (at.get("$ref") instanceof String ref) {
            at = schema;
            for (String step : ref.substring(2).split("/", -1)) {
                at = (Map<?, ?>) at.get(step);
            }
        }
        if (at.get("properties") instanceof Map<?, ?> properties) {
            properties.forEach((key, value) -> {
                String below = path.isEmpty() ? key.toString() : path + "." + key;
                keys.add(below);
                collect(schema, (Map<?, ?>) value, below, keys);
            });
        }
        if (at.get("items") instanceof Map<?, ?> items) {
            collect(schema, items, path, keys);
        }
        for (String each : List.of("oneOf", "anyOf", "allOf")) {
            if (at.get(each) instanceof List<?> ways) {
                ways.forEach(way -> collect(schema, (Map<?, ?>) way, path, keys));
            }
        }
    }
}
