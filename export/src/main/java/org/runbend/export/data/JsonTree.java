package org.runbend.export.data;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A JSON file that an earlier run wrote. What is missing or of another type throws {@code IllegalArgumentException}. */
final class JsonTree {
    private static final long LARGEST = 50_000_000;

    private final Object value;

    private JsonTree(Object value) {
        this.value = value;
    }

    /** Reads a file; a key that stands twice, more than 50 MB or no JSON is an {@code IOException}. */
    static JsonTree read(Path file) throws IOException {
        if (Files.size(file) > LARGEST) {
            throw new IOException("too large");
        }
        JsonFactory factory = JsonFactory.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .build();
        try (JsonParser json = factory.createParser(file.toFile())) {
            json.nextToken();
            JsonTree tree = new JsonTree(value(json));
            if (json.nextToken() != null) {
                throw new IOException("more than one value");
            }
            return tree;
        }
    }

    private static Object value(JsonParser json) throws IOException {
        JsonToken token = json.currentToken();
        if (token == null) {
            throw new IOException("nothing there");
        }
        return switch (token) {
            case START_OBJECT -> {
                Map<String, Object> map = new HashMap<>();
                for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
                    json.nextToken();
                    map.put(key, value(json));
                }
                yield map;
            }
            case START_ARRAY -> {
                List<Object> list = new ArrayList<>();
                while (json.nextToken() != JsonToken.END_ARRAY) {
                    list.add(value(json));
                }
                yield list;
            }
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> json.getDoubleValue();
            case VALUE_STRING -> json.getText();
            case VALUE_TRUE, VALUE_FALSE -> json.getBooleanValue();
            default -> "";
        };
    }

    JsonTree at(String key) {
        return find(key).orElseThrow(() -> new IllegalArgumentException("no " + key));
    }

    Optional<JsonTree> find(String key) {
        if (!(value instanceof Map<?, ?> map)) {
            throw new IllegalArgumentException("no object with " + key);
        }
        return Optional.ofNullable(map.get(key)).map(v -> new JsonTree(v));
    }

    List<JsonTree> list() {
        if (!(value instanceof List<?> list)) {
            throw new IllegalArgumentException("no list");
        }
        return list.stream().map(v -> new JsonTree(v)).toList();
    }

    String text() {
        if (!(value instanceof String text)) {
            throw new IllegalArgumentException("no text");
        }
        return text;
    }

    double number() {
        if (!(value instanceof Double number)) {
            throw new IllegalArgumentException("no number");
        }
        return number;
    }

    /** A number of mm as whole hundredths. */
    long hundredths() {
        double mm = number();
        if (!(Math.abs(mm) < 1e9)) {
            throw new IllegalArgumentException("no length");
        }
        return Math.round(mm * 100);
    }

    long whole() {
        double number = number();
        if (number != Math.rint(number) || Math.abs(number) > 1e9) {
            throw new IllegalArgumentException("no whole number");
        }
        return (long) number;
    }
}
