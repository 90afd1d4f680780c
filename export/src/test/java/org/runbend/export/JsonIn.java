package org.runbend.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A JSON file read into maps, lists, texts, doubles and booleans by another's parser; a key twice is an error. */
public final class JsonIn {
    private final Object value;

    private JsonIn(Object value) {
        this.value = value;
    }

    /** Reads the whole file. */
    public static JsonIn read(Path file) throws IOException {
        JsonFactory factory = JsonFactory.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .build();
        try (JsonParser json = factory.createParser(file.toFile())) {
            json.nextToken();
            return new JsonIn(value(json));
        }
    }

    private static Object value(JsonParser json) throws IOException {
        JsonToken token = json.currentToken();
        if (token == JsonToken.START_OBJECT) {
            Map<String, Object> map = new LinkedHashMap<>();
            for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
                json.nextToken();
                map.put(key, value(json));
            }
            return map;
        }
        if (token == JsonToken.START_ARRAY) {
            List<Object> list = new ArrayList<>();
            while (json.nextToken() != JsonToken.END_ARRAY) {
                list.add(value(json));
            }
            return list;
        }
        if (token.isNumeric()) {
            return json.getDoubleValue();
        }
        return token.isBoolean() ? (Object) json.getBooleanValue() : json.getText();
    }

    /** The value of a key; fails if there is none. */
    public JsonIn at(String key) {
        if (!has(key)) {
            throw new AssertionError("no key " + key + " in " + value);
        }
        return new JsonIn(((Map<?, ?>) value).get(key));
    }

    /** Whether there is such a key. */
    public boolean has(String key) {
        return ((Map<?, ?>) value).containsKey(key);
    }

    /** The entries of a list. */
    public List<JsonIn> list() {
        return ((List<?>) value).stream().map(v -> new JsonIn(v)).toList();
    }

    /** A number. */
    public double number() {
        return (Double) value;
    }

    /** A number that must be whole. */
    public long whole() {
        double number = number();
        if (number != Math.rint(number)) {
            throw new AssertionError(number + " is not whole");
        }
        return (long) number;
    }

    /** A text. */
    public String text() {
        return (String) value;
    }
}
