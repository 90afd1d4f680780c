package org.runbend.catalog.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.FailsafeSchema;

/** The edited text is read back by the library's own loader, under the schema that leaves every scalar a text. */
class YamlEditTest {
    private static final Path PLACE = Path.of("job.yaml").toAbsolutePath();

    static Stream<Path> files() throws IOException {
        try (Stream<Path> all = Files.walk(Path.of("..", "examples"), 2)) {
            return all.filter(p -> p.toString().endsWith(".yaml")).sorted().toList().stream();
        }
    }

    @Test
    void seesTheExamples() throws IOException {
        assertTrue(files().count() >= 15);
    }

    @ParameterizedTest
    @MethodSource("files")
    void whatDoesNotChangeStaysLetterByLetter(Path path) {
        SourceFile file = SourceFile.read(path);
        assertEquals(file.text(), YamlEdit.edited(file, YamlTree.of(file)));
    }

    @ParameterizedTest
    @MethodSource("files")
    void anyChangeReadsBack(Path path) {
        SourceFile file = SourceFile.read(path);
        for (int seed = 0; seed < 20; seed++) {
            Map<String, Object> tree = YamlTree.of(file);
            Random random = new Random(seed);
            spoil(tree, random, 0);
            tree.put("job", "case " + seed);
            String text = YamlEdit.edited(file, tree);
            assertEquals(tree, load(text), () -> text);
        }
    }

    /** A corner moved, a thing added and one taken away: every remark of the file stays. */
    @ParameterizedTest
    @MethodSource("files")
    void remarksStay(Path path) {
        SourceFile file = SourceFile.read(path);
        Map<String, Object> tree = YamlTree.of(file);
        tree.put("order", "KC-9999");
        tree.put("revision", "C: with 'care' # and more");
        if (tree.get("floor") instanceof Map<?, ?> floor && floor.get("port") instanceof Map<?, ?> port) {
            put(port, "at", List.of("12", "340.5"));
            put(floor, "unheated", List.of(Map.of("name", "chest, low", "polygon", List.of(List.of("0", "0")))));
        }
        String text = YamlEdit.edited(file, tree);
        assertEquals(tree, load(text), () -> text);
        List<String> lost = remarks(file.text());
        lost.removeAll(remarks(text));
        // the remark beside a value in several lines that is written anew goes with it
        assertTrue(lost.size() <= 1, lost::toString);
    }

    @Test
    void linesOfThingsComeAndGo() {
        String text = """
                # what
                job: A  # title
                floor:
                  keepOut:
                    - {name: a, point: [1, 2]}  # first
                    - {name: b, point: [3, 4]}
                  port: {at: [0, 0]}
                """;
        SourceFile file = source(text);
        Map<String, Object> tree = YamlTree.of(file);
        List<Object> things = list(tree, "floor", "keepOut");
        things.remove(1);
        assertEquals(text.replace("    - {name: b, point: [3, 4]}\n", ""), YamlEdit.edited(file, tree));
        things.add(new LinkedHashMap<>(Map.of("name", "c d")));
        things.add(new LinkedHashMap<>(Map.of("name", "x: y")));
        assertEquals(
                text.replace("    - {name: b, point: [3, 4]}", "    - {name: c d}\n    - {name: 'x: y'}"),
                YamlEdit.edited(file, tree));
        put((Map<?, ?>) tree.get("floor"), "keepOut", List.of());
        assertEquals(
                "# what\njob: A  # title\nfloor:\n  keepOut: []\n  port: {at: [0, 0]}\n", YamlEdit.edited(file, tree));
    }

    @Test
    void lettersBeyondTheFirstPlaneAndForeignLineEndsDoNotShiftPlaces() {
        String text = "job: \uD83D\uDE90 van\r\norder: A\r\nfloor: {port: {at: [0, 0]}}\r\n";
        SourceFile file = source(text);
        Map<String, Object> tree = YamlTree.of(file);
        tree.put("order", "B");
        assertEquals(text.replace("order: A", "order: B"), YamlEdit.edited(file, tree));
    }

    private static SourceFile source(String text) {
        return SourceFile.sent(PLACE, text.getBytes(StandardCharsets.UTF_8), PLACE);
    }

    private static Object load(String text) {
        LoadSettings texts =
                LoadSettings.builder().setSchema(new FailsafeSchema()).build();
        return new Load(texts).loadFromString(text);
    }

    private static List<String> remarks(String text) {
        List<String> found = new ArrayList<>();
        text.lines().filter(l -> l.contains("# ")).forEach(l -> found.add(l.substring(l.indexOf("# "))));
        return found;
    }

    @SuppressWarnings("unchecked")
    private static List<Object> list(Map<String, Object> tree, String key, String below) {
        return (List<Object>) ((Map<String, Object>) tree.get(key)).get(below);
    }

    @SuppressWarnings("unchecked")
    private static void put(Map<?, ?> map, String key, Object value) {
        ((Map<String, Object>) map).put(key, value);
    }

    @SuppressWarnings("unchecked")
    private static void spoil(Object value, Random random, int depth) {
        List<String> odd = List.of(
                "7", "a: b", "# no", "it's", "[", "-", "- x", " blank ", "two\nlines", "", "~", "\u00e9\u2028", "#");
        if (value instanceof Map<?, ?> any) {
            Map<String, Object> map = (Map<String, Object>) any;
            for (String key : List.copyOf(map.keySet())) {
                int what = random.nextInt(12);
                if (what == 0 && depth > 0) {
                    map.remove(key);
                } else if (what == 1) {
                    map.put(key, odd.get(random.nextInt(odd.size())));
                } else if (what == 2) {
                    map.put(
                            "k" + random.nextInt(9),
                            new ArrayList<>(List.of("1", new LinkedHashMap<>(Map.of("a", "b")))));
                } else {
                    spoil(map.get(key), random, depth + 1);
                }
            }
        } else if (value instanceof List<?> any) {
            List<Object> list = (List<Object>) any;
            if (!list.isEmpty() && random.nextInt(4) == 0) {
                list.remove(random.nextInt(list.size()));
            }
            if (random.nextInt(4) == 0) {
                list.add(random.nextInt(list.size() + 1), odd.get(random.nextInt(odd.size())));
            }
            list.forEach(v -> spoil(v, random, depth + 1));
        }
    }
}
