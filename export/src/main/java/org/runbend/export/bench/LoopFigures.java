package org.runbend.export.bench;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * What a kit.json says about its lattice and its first loop; empty where it says nothing.
 *
 * @param reachable heated nodes that a loop could serve
 * @param leftOut reachable nodes not served
 * @param turns corners of the closed cycle
 * @param turnBound least turns with this leftOut, if proved
 * @param objective turns + price of what is left out
 * @param objectiveBound least objective, if proved
 */
record LoopFigures(
        OptionalInt reachable,
        OptionalInt leftOut,
        OptionalInt turns,
        OptionalInt turnBound,
        OptionalInt objective,
        OptionalInt objectiveBound) {
    /** Reads a kit.json of ours. */
    static LoopFigures read(Path kit) throws IOException {
        Map<String, Integer> lattice = new TreeMap<>();
        Map<String, Integer> loop = new TreeMap<>();
        try (JsonParser parser = new JsonFactory().createParser(kit.toFile())) {
            parser.nextToken();
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                String name = parser.currentName();
                JsonToken value = parser.nextToken();
                if (name.equals("lattice")) {
                    wholes(parser, lattice);
                } else if (name.equals("loops") && parser.nextToken() == JsonToken.START_OBJECT) {
                    wholes(parser, loop);
                    skipRest(parser);
                } else if (value.isStructStart()) {
                    parser.skipChildren();
                }
            }
        }
        return new LoopFigures(
                figure(lattice, "reachable"),
                figure(loop, "leftOut"),
                figure(loop, "turns"),
                figure(loop, "turnBound"),
                figure(loop, "objective"),
                figure(loop, "objectiveBound"));
    }

    /** Takes the whole numbers of the object that has just begun, without what lies deeper. */
    private static void wholes(JsonParser parser, Map<String, Integer> into) throws IOException {
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String name = parser.currentName();
            JsonToken value = parser.nextToken();
            if (value == JsonToken.VALUE_NUMBER_INT) {
                into.put(name, parser.getIntValue());
            } else if (value.isStructStart()) {
                parser.skipChildren();
            }
        }
    }

    /** Skips the other loops. */
    private static void skipRest(JsonParser parser) throws IOException {
        while (parser.nextToken() == JsonToken.START_OBJECT) {
            parser.skipChildren();
        }
    }

    private static OptionalInt figure(Map<String, Integer> figures, String name) {
        return figures.containsKey(name) ? OptionalInt.of(figures.get(name)) : OptionalInt.empty();
    }
}
