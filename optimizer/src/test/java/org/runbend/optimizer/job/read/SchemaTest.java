package org.runbend.optimizer.job.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** Schemas, readers and examples say the same. The validator is an independent one (networknt), draft 2020-12. */
class SchemaTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Path READERS = Path.of("src", "main", "java", "org", "runbend", "optimizer", "job", "read");
    private static final Path CATALOG_READERS =
            Path.of("..", "catalog", "src", "main", "java", "org", "runbend", "catalog", "product");
    private static final Pattern ASKED =
            Pattern.compile("\\b(?:require|find|findMap|get|each|number|isSo)\\(\\s*(?:\\w+, )?\"(\\w+)\"");

    private static JsonNode tree(String name) throws IOException {
        return JSON.readTree(Jobs.EXAMPLES.resolve(name).toFile());
    }

    private static JsonSchema schema(String name) throws IOException {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(tree(name));
    }

    private static JsonNode yaml(String text) {
        return JSON.valueToTree(new Load(LoadSettings.builder().build()).loadFromString(text));
    }

    private static Set<ValidationMessage> faults(String schema, String text) throws IOException {
        return schema(schema).validate(yaml(text));
    }

    private static List<Path> jobs() throws IOException {
        try (Stream<Path> files = Files.walk(Jobs.EXAMPLES, 2)) {
            return files.filter(f -> f.toString().endsWith(".yaml"))
                    .filter(f -> !Set.of("workshop.yaml", "catalog-yen.yaml")
                            .contains(f.getFileName().toString()))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void everyExampleIsValid() throws IOException {
        for (Path job : jobs()) {
            assertEquals(Set.of(), faults("job.schema.json", Files.readString(job)), job.toString());
        }
        assertEquals(Set.of(), faults("catalog.schema.json", Files.readString(Jobs.EXAMPLES.resolve("workshop.yaml"))));
        assertEquals(Set.of(), faults("job.schema.json", Jobs.GOOD));
        assertTrue(jobs().size() >= 8, "examples seen: " + jobs());
    }

    /** The sources say which keys the readers ask for; a key that is only refused as not available yet is none. */
    @Test
    void readerAndSchemaKnowTheSameKeys() throws IOException {
        Set<String> asked = new TreeSet<>(Set.of("extends", "units"));
        for (String reader : List.of(
                "JobReader",
                "FloorReader",
                "WishReader",
                "Outline",
                "MeasuredFloorReader",
                "LayoutReader",
                "HeatRequestReader",
                "LoopReader",
                "ProductsReader")) {
            asked.addAll(asked(READERS.resolve(reader + ".java")));
        }
        assertEquals(asked, named(tree("job.schema.json")));
        Set<String> ofCatalog = new TreeSet<>(Set.of("units"));
        for (String reader : List.of("CatalogReader", "SalesReader", "KitReader", "PackingReader")) {
            ofCatalog.addAll(asked(CATALOG_READERS.resolve(reader + ".java")));
        }
        assertEquals(ofCatalog, named(tree("catalog.schema.json")));
    }

    private static Set<String> asked(Path source) throws IOException {
        Set<String> keys = new TreeSet<>();
        Matcher m = ASKED.matcher(Files.readString(source));
        while (m.find()) {
            keys.add(m.group(1));
        }
        return keys;
    }

    /** All property names of a schema. */
    private static Set<String> named(JsonNode schema) {
        Set<String> names = new TreeSet<>();
        for (JsonNode properties : schema.findValues("properties")) {
            properties.fieldNames().forEachRemaining(names::add);
            properties.forEach(p -> names.addAll(named(p)));
        }
        return names;
    }

    /** The examples, which the reader takes, show every key; so each key of the schema is one the reader knows where it stands. */
    @Test
    void everyKeyIsShownInAnExample() throws IOException {
        Set<String> shown = new TreeSet<>();
        for (Path job : jobs()) {
            collect(yaml(Files.readString(job)), shown);
        }
        assertEquals(named(tree("job.schema.json")), shown);
        Set<String> sold = new TreeSet<>(Set.of("units"));
        for (String catalog : List.of("workshop.yaml", "ways-in/catalog-yen.yaml")) {
            String text = Files.readString(Jobs.EXAMPLES.resolve(catalog));
            assertEquals(Set.of(), faults("catalog.schema.json", text), catalog);
            collect(yaml(text), sold);
        }
        assertEquals(named(tree("catalog.schema.json")), sold);
    }

    private static void collect(JsonNode node, Set<String> keys) {
        node.fieldNames().forEachRemaining(keys::add);
        node.forEach(child -> collect(child, keys));
    }

    /** An editor should say a word of every key. */
    @Test
    void everyKeyIsDescribed() throws IOException {
        for (String name : List.of("job.schema.json", "catalog.schema.json")) {
            JsonNode schema = tree(name);
            described(schema.get("properties"), name);
        }
    }

    private static void described(JsonNode properties, String where) {
        for (Map.Entry<String, JsonNode> p : properties.properties()) {
            assertTrue(p.getValue().hasNonNull("description"), where + "/" + p.getKey());
            JsonNode inner = p.getValue().has("items") ? p.getValue().get("items") : p.getValue();
            if (inner.has("properties")) {
                described(inner.get("properties"), where + "/" + p.getKey());
            }
        }
    }

    /** What the reader refuses for its form the schema refuses too (the lines of the reader stand in {@link BadJobTest}). */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            order: T-1           | orders: T-1
            clearance: 60        | clearence: 60
            clearance: 60        | point: [1, 1]
            clearance: 60        | kind: hole
            [2400, 0]            | [2400]
            at: [0, 75]          | reach: 300
            spacing: 150         | spacing: 3 furlongs
            spacing: 150         | prefer: heat
            spacing: 150         | along: north
            spacing: 150         | leftOutPrice: 0.01
            product: PX-16       | product: PX-16, allowance: 2
            product: PX-16       | product: PX-16, tails: [900]
            product: PX-16       | allowance: 2%
            [SP-1, SP-2]         | []
            outline: [           | measured: {}, outline: [
            """)
    void whatTheReaderRefuses(String what, String with) throws IOException {
        assertTrue(Jobs.GOOD.contains(what), what);
        String text = with.startsWith("measured")
                ? Jobs.GOOD.replace("  outline:", "  measured: {corners: [A, B, C], lengths: [[A, B, 1]]}\n  outline:")
                : Jobs.GOOD.replace(what, with);
        assertFalse(faults("job.schema.json", text).isEmpty(), text);
    }
}
