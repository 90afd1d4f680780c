package org.runbend.export.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The keys of a kind of file as its JSON Schema has them: path, what is wanted, default, meaning. */
final class KeyTable {
    private static final int KEY = 26;
    private static final int WIDTH = 100;
    private static final int DEEPEST = 8;

    private final Map<?, ?> root;
    private final List<String> lines = new ArrayList<>();

    private KeyTable(Map<?, ?> root) {
        this.root = root;
    }

    /** Lines of a table made from a schema that lies beside this class. */
    static List<String> of(String schema) {
        try (InputStream in = KeyTable.class.getResourceAsStream(schema);
                JsonParser json = new JsonFactory().createParser(in)) {
            json.nextToken();
            KeyTable table = new KeyTable((Map<?, ?>) value(json));
            table.keys(table.root, "", 0);
            return table.lines;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Object value(JsonParser json) throws IOException {
        switch (json.currentToken()) {
            case START_OBJECT -> {
                Map<String, Object> map = new LinkedHashMap<>();
                while (json.nextToken() != JsonToken.END_OBJECT) {
                    String name = json.currentName();
                    json.nextToken();
                    map.put(name, value(json));
                }
                return map;
            }
            case START_ARRAY -> {
                List<Object> list = new ArrayList<>();
                while (json.nextToken() != JsonToken.END_ARRAY) {
                    list.add(value(json));
                }
                return list;
            }
            default -> {
                return json.getText();
            }
        }
    }

    private void keys(Map<?, ?> schema, String path, int depth) {
        List<?> required = schema.get("required") instanceof List<?> list ? list : List.of();
        if (depth > DEEPEST || !(schema.get("properties") instanceof Map<?, ?> properties)) {
            return;
        }
        for (Map.Entry<?, ?> e : properties.entrySet()) {
            if (e.getValue() instanceof Map<?, ?> own) {
                Map<?, ?> key = resolved(own);
                String name = path + e.getKey();
                line(
                        name,
                        kind(own) + (required.contains(e.getKey()) ? ", required" : "") + fallback(own, key),
                        own,
                        key);
                below(key, name, depth);
            }
        }
    }

    /** Keys of a mapping, of the mappings of a list, and of the ways in which a value may be written. */
    private void below(Map<?, ?> key, String name, int depth) {
        keys(key, name + ".", depth + 1);
        if (key.get("items") instanceof Map<?, ?> items) {
            below(resolved(items), name + "[]", depth + 1);
        }
        for (Map<?, ?> way : ways(key)) {
            below(resolved(way), name, depth + 1);
        }
    }

    private List<Map<?, ?>> ways(Map<?, ?> key) {
        List<Map<?, ?>> ways = new ArrayList<>();
        for (String word : List.of("anyOf", "oneOf")) {
            if (key.get(word) instanceof List<?> list) {
                list.forEach(way -> {
                    if (way instanceof Map<?, ?> map) {
                        ways.add(map);
                    }
                });
            }
        }
        return ways;
    }

    private Map<?, ?> resolved(Map<?, ?> schema) {
        if (!(schema.get("$ref") instanceof String ref)) {
            return schema;
        }
        Map<?, ?> at = root;
        for (String part : ref.replaceFirst("^#/", "").split("/", -1)) {
            if (!(at.get(part) instanceof Map<?, ?> next)) {
                return schema;
            }
            at = next;
        }
        return at;
    }

    /** What is wanted: the name of a definition says it shortest. */
    private String kind(Map<?, ?> key) {
        if (key.get("$ref") instanceof String ref && resolved(key) != key) {
            String name = ref.substring(ref.lastIndexOf('/') + 1);
            return name.replaceAll("(\\p{Lower})(\\p{Upper})", "$1 $2").toLowerCase(Locale.ROOT);
        }
        if (key.get("enum") instanceof List<?> words) {
            return words.stream().map(String::valueOf).collect(Collectors.joining(" | "));
        }
        if (key.get("const") != null) {
            return String.valueOf(key.get("const"));
        }
        List<Map<?, ?>> ways = ways(key);
        if (!ways.isEmpty()) {
            return ways.stream().map(this::kind).distinct().collect(Collectors.joining(" or "));
        }
        Object type = key.get("type");
        String word = type instanceof List<?> list
                ? list.stream().map(String::valueOf).collect(Collectors.joining(" or "))
                : String.valueOf(type);
        return switch (word) {
            case "object" -> "mapping";
            case "array" ->
                key.get("items") instanceof Map<?, ?> items && items.get("$ref") != null
                        ? "list of " + kind(items)
                        : "list";
            case "string" -> "text";
            case "integer" -> "whole number";
            case "null" -> "text";
            default -> word;
        };
    }

    private static String fallback(Map<?, ?> own, Map<?, ?> key) {
        Object value = own.get("default") != null ? own.get("default") : key.get("default");
        return value == null ? "" : ", default " + value;
    }

    private void line(String name, String kind, Map<?, ?> own, Map<?, ?> key) {
        Object text = own.get("description") != null ? own.get("description") : key.get("description");
        String words = kind + (text == null ? "" : ": " + text);
        List<String> wrapped = wrapped(words, WIDTH - KEY - 2);
        String first = name.length() <= KEY ? name + " ".repeat(KEY - name.length() + 2) + wrapped.get(0) : name;
        lines.add(first);
        for (String rest : wrapped.subList(name.length() <= KEY ? 1 : 0, wrapped.size())) {
            lines.add(" ".repeat(KEY + 2) + rest);
        }
    }

    private static List<String> wrapped(String words, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.split(" ", -1)) {
            if (line.length() > 0 && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
