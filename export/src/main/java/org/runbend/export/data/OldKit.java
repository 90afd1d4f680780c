package org.runbend.export.data;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/** The loops of a {@code kit.json} that an earlier run wrote; numbers that are missing or no numbers make it none of ours. */
public final class OldKit {
    private static final long LARGEST = 20_000_000;

    private final List<Element> elements = new ArrayList<>();
    private boolean fingerprint;

    private OldKit() {}

    /**
     * All elements of all loops, in order of flow.
     *
     * @throws BadInput if the file is no kit.json of ours
     */
    public static List<Element> elements(Path file) {
        OldKit kit = new OldKit();
        try {
            if (!Files.isRegularFile(file)) {
                throw new BadInput(
                        Fault.ofFile(file.toString(), Files.exists(file) ? "is not a regular file" : "no such file"));
            }
            if (Files.size(file) <= LARGEST) {
                try (JsonParser json = new JsonFactory().createParser(file.toFile())) {
                    kit.read(json);
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            kit.elements.clear();
        }
        if (!kit.fingerprint || kit.elements.isEmpty()) {
            throw new BadInput(Fault.ofFile(file.toString(), "is no kit.json that Runbend wrote"));
        }
        return List.copyOf(kit.elements);
    }

    private void read(JsonParser json) throws IOException {
        if (json.nextToken() != JsonToken.START_OBJECT) {
            return;
        }
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            fingerprint |= key.equals("fingerprint") && value == JsonToken.VALUE_STRING;
            if (key.equals("loops") && value == JsonToken.START_ARRAY) {
                while (json.nextToken() == JsonToken.START_OBJECT) {
                    loop(json);
                }
            } else {
                json.skipChildren();
            }
        }
    }

    private void loop(JsonParser json) throws IOException {
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            if (key.equals("elements") && value == JsonToken.START_ARRAY) {
                while (json.nextToken() == JsonToken.START_OBJECT) {
                    elements.add(element(json));
                }
            } else {
                json.skipChildren();
            }
        }
    }

    private static Element element(JsonParser json) throws IOException {
        Point from = null;
        Point to = null;
        Point centre = null;
        double radius = Double.NaN;
        double turn = Double.NaN;
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            json.nextToken();
            switch (key) {
                case "from" -> from = point(json);
                case "to" -> to = point(json);
                case "centre" -> centre = point(json);
                case "radius" -> radius = number(json);
                case "turn" -> turn = number(json);
                default -> json.skipChildren();
            }
        }
        boolean bend = centre != null && radius > 0 && Math.abs(turn) < 360;
        if (from == null || to == null || bend == Double.isNaN(turn) || (!bend && from.distance(to) == 0)) {
            throw new IllegalArgumentException("neither a run nor a bend");
        }
        return bend ? new Element.Bend(from, to, centre, radius, turn) : new Element.Run(from, to);
    }

    private static Point point(JsonParser json) throws IOException {
        if (json.currentToken() != JsonToken.START_ARRAY) {
            throw new IllegalArgumentException("no point");
        }
        json.nextToken();
        double x = number(json);
        json.nextToken();
        double y = number(json);
        if (json.nextToken() != JsonToken.END_ARRAY) {
            throw new IllegalArgumentException("no point");
        }
        return new Point(x, y);
    }

    private static double number(JsonParser json) throws IOException {
        if (!json.currentToken().isNumeric() || !Double.isFinite(json.getDoubleValue())) {
            throw new IllegalArgumentException("no number");
        }
        return json.getDoubleValue();
    }
}
