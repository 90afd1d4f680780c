package org.runbend.export.data;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.optimizer.job.Point;

/** Writes JSON key by key: lines end in LF, numbers are plain decimals with 3 to 6 places. */
final class JsonOut {
    private static final int MOST = 6;
    private static final int LEAST = 3;

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final JsonGenerator out;

    JsonOut() throws IOException {
        DefaultPrettyPrinter.Indenter lines = new DefaultIndenter("  ", "\n");
        Separators separators = Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                .withRootSeparator("\n");
        out = new JsonFactory()
                .createGenerator(bytes)
                .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
                .setPrettyPrinter(new DefaultPrettyPrinter(separators).withObjectIndenter(lines));
    }

    byte[] finish() throws IOException {
        out.writeRaw('\n');
        out.close();
        return bytes.toByteArray();
    }

    JsonOut open() throws IOException {
        out.writeStartObject();
        return this;
    }

    JsonOut open(String key) throws IOException {
        out.writeObjectFieldStart(key);
        return this;
    }

    JsonOut close() throws IOException {
        out.writeEndObject();
        return this;
    }

    JsonOut text(String key, String value) throws IOException {
        out.writeStringField(key, value);
        return this;
    }

    JsonOut text(String key, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            text(key, value.get());
        }
        return this;
    }

    JsonOut whole(String key, long value) throws IOException {
        out.writeNumberField(key, value);
        return this;
    }

    JsonOut flag(String key, boolean value) throws IOException {
        out.writeBooleanField(key, value);
        return this;
    }

    JsonOut wholes(String key, List<Integer> values) throws IOException {
        out.writeArrayFieldStart(key);
        for (int v : values) {
            out.writeNumber(v);
        }
        out.writeEndArray();
        return this;
    }

    JsonOut whole(String key, OptionalInt value) throws IOException {
        if (value.isPresent()) {
            whole(key, value.getAsInt());
        }
        return this;
    }

    /** A decimal; null where there is no number. */
    JsonOut number(String key, double value) throws IOException {
        out.writeFieldName(key);
        if (Double.isFinite(value)) {
            out.writeNumber(decimal(value));
        } else {
            out.writeNull();
        }
        return this;
    }

    JsonOut point(String key, Point p) throws IOException {
        out.writeArrayFieldStart(key);
        out.writeNumber(decimal(p.x()));
        out.writeNumber(decimal(p.y()));
        out.writeEndArray();
        return this;
    }

    /** A list of places. */
    JsonOut points(String key, List<Point> places) throws IOException {
        out.writeArrayFieldStart(key);
        for (Point p : places) {
            out.writeStartArray();
            out.writeNumber(decimal(p.x()));
            out.writeNumber(decimal(p.y()));
            out.writeEndArray();
        }
        out.writeEndArray();
        return this;
    }

    JsonOut numbers(String key, List<Double> values) throws IOException {
        out.writeArrayFieldStart(key);
        for (double v : values) {
            out.writeNumber(decimal(v));
        }
        out.writeEndArray();
        return this;
    }

    JsonOut texts(String key, List<String> values) throws IOException {
        out.writeArrayFieldStart(key);
        for (String v : values) {
            out.writeString(v);
        }
        out.writeEndArray();
        return this;
    }

    /** A list of objects; the writer fills one between its braces. */
    <T> JsonOut list(String key, List<T> values, Writer<T> writer) throws IOException {
        out.writeArrayFieldStart(key);
        for (T v : values) {
            out.writeStartObject();
            writer.write(v);
            out.writeEndObject();
        }
        out.writeEndArray();
        return this;
    }

    private static BigDecimal decimal(double value) {
        // The exact binary value: Double.toString differs between JDK releases.
        BigDecimal rounded = new BigDecimal(value).setScale(MOST, RoundingMode.HALF_EVEN);
        BigDecimal bare = rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
        return bare.scale() < LEAST ? bare.setScale(LEAST) : bare;
    }

    /** Fills one object of a list. */
    interface Writer<T> {
        void write(T value) throws IOException;
    }
}
