package org.runbend.export.page;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.runbend.export.drawing.Decimals;

/**
 * Trees of maps, lists and texts as JSON and back. A text that is a short plain number goes out as a number and a number comes
 * back as that text, so the tree of a job file makes the way to the page and back unchanged.
 */
final class Json {
    private static final int DEEPEST = 40;
    private static final int LONGEST_NUMBER = 30;
    private static final int DIGITS = 4;
    /** What a double of a browser holds exactly as it is written. */
    private static final Pattern NUMBER = Pattern.compile("(?!-0$)-?(?:0|[1-9]\\d{0,8})(?:\\.\\d{0,5}[1-9])?");

    private Json() {}

    /**
     * The tree of a message; {@code true}, {@code false} and {@code null} become texts.
     *
     * @throws Refused if it is no JSON object, or an odd one
     */
    static Map<String, Object> read(byte[] bytes) {
        JsonFactory factory = JsonFactory.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .streamReadConstraints(StreamReadConstraints.builder()
                        .maxNestingDepth(DEEPEST)
                        .maxStringLength(Limits.MOST_BODY)
                        .build())
                .build();
        try (JsonParser json = factory.createParser(new String(bytes, StandardCharsets.UTF_8))) {
            if (json.nextToken() != JsonToken.START_OBJECT) {
                throw new Refused(400, "a JSON object is wanted");
            }
            Map<String, Object> tree = map(json);
            if (json.nextToken() != null) {
                throw new Refused(400, "one JSON object is wanted");
            }
            return tree;
        } catch (IOException e) {
            throw new Refused(400, "that is not the JSON that this page sends");
        }
    }

    private static Map<String, Object> map(JsonParser json) throws IOException {
        Map<String, Object> map = new LinkedHashMap<>();
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            json.nextToken();
            map.put(key, value(json));
        }
        return map;
    }

    private static Object value(JsonParser json) throws IOException {
        JsonToken token = json.currentToken();
        if (token == JsonToken.START_OBJECT) {
            return map(json);
        }
        if (token == JsonToken.START_ARRAY) {
            List<Object> list = new ArrayList<>();
            while (json.nextToken() != JsonToken.END_ARRAY) {
                list.add(value(json));
            }
            return list;
        }
        return token.isNumeric() ? number(json.getText()) : json.getText();
    }

    private static String number(String text) {
        BigDecimal number = text.length() > LONGEST_NUMBER ? null : new BigDecimal(text);
        if (number == null || Math.abs(number.scale()) > LONGEST_NUMBER) {
            throw new Refused(400, "a number of that many digits is of no use");
        }
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    /** A tree of maps, lists, texts, numbers, truth values and {@link Raw} as JSON in one line. */
    static String write(Object tree) {
        StringWriter out = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
            write(json, tree);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    /** A text as JSON, numbers too. */
    static String quoted(String text) {
        StringWriter out = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
            json.writeString(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    /**
     * JSON that is written as it is.
     *
     * @param json one value
     */
    record Raw(String json) {}

    private static void write(JsonGenerator json, Object value) throws IOException {
        if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                json.writeFieldName(String.valueOf(entry.getKey()));
                write(json, entry.getValue());
            }
            json.writeEndObject();
        } else if (value instanceof List<?> list) {
            json.writeStartArray();
            for (Object each : list) {
                write(json, each);
            }
            json.writeEndArray();
        } else if (value instanceof Number number) {
            json.writeRawValue(Decimals.of(number.doubleValue(), DIGITS));
        } else if (value instanceof Boolean truth) {
            json.writeBoolean(truth);
        } else if (value instanceof Raw raw) {
            json.writeRawValue(raw.json());
        } else if (value instanceof String text && NUMBER.matcher(text).matches()) {
            json.writeRawValue(text);
        } else {
            json.writeString(String.valueOf(value));
        }
    }
}
