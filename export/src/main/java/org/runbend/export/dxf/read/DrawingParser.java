package org.runbend.export.dxf.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Walks through the sections of a file in whatever order they come; unknown sections are passed over. */
final class DrawingParser {
    private static final int FIRST_WITH_UNICODE = 1021;
    private static final int FOREIGN_BLOCK = 4;
    private static final int MESH = 16 | 64;
    private static final int SOLID = 8;
    private static final int FRAME_VERTEX = 16;

    private final TagSource source;
    private final EntityTags tags = new EntityTags();
    private final Parsed parsed = new Parsed();
    /** Whether the source stands at a group 0 that nobody has looked at yet. */
    private boolean pending;

    DrawingParser(TagSource source) {
        this.source = source;
    }

    Parsed parse() {
        while (nextZero()) {
            String word = source.name();
            if (word.equals("EOF")) {
                return parsed;
            }
            if (word.equals("SECTION")) {
                section();
            }
        }
        throw source.broken("the file ends without EOF; it was cut off, have it sent again");
    }

    /** Goes to the next group 0. */
    private boolean nextZero() {
        if (pending) {
            pending = false;
            return true;
        }
        while (source.next()) {
            if (source.code() == 0) {
                return true;
            }
        }
        return false;
    }

    private void section() {
        if (!source.next()) {
            return;
        }
        if (source.code() != 2) {
            pending = source.code() == 0;
            return;
        }
        switch (source.name()) {
            case "HEADER" -> header();
            case "TABLES" -> tables();
            case "BLOCKS" -> blocks();
            case "ENTITIES" -> entities(parsed.model, true);
            default -> skip();
        }
    }

    private void skip() {
        while (nextZero()) {
            if (isEnd(source.name())) {
                return;
            }
        }
    }

    /** Whether a section ends here; an end of the file or a new section without ENDSEC is left for the caller. */
    private boolean isEnd(String word) {
        pending = word.equals("EOF") || word.equals("SECTION");
        return pending || word.equals("ENDSEC");
    }

    private void header() {
        String variable = "";
        while (source.next()) {
            if (source.code() == 0) {
                pending = true;
                break;
            }
            if (source.code() == 9) {
                variable = source.name();
            } else {
                headerValue(variable);
            }
        }
        int number = parsed.version.matches("AC\\d{4}") ? Integer.parseInt(parsed.version.substring(2)) : 0;
        source.letters(Letters.page(parsed.page), number >= FIRST_WITH_UNICODE);
    }

    private void headerValue(String variable) {
        int code = source.code();
        if (variable.equals("$ACADVER") && code == 1) {
            parsed.version = source.name();
        } else if (variable.equals("$DWGCODEPAGE") && code == 3) {
            parsed.page = source.name();
        } else if (variable.equals("$INSUNITS") && code == 70) {
            parsed.unit = DrawingUnit.ofCode(source.whole());
        } else if (variable.equals("$MEASUREMENT") && code == 70) {
            parsed.metric = Optional.of(source.whole() == 1);
        } else if (code >= 10 && code < 60) {
            source.number(); // a header with broken numbers comes from a program that cannot be trusted with the rest
        }
    }

    private void tables() {
        while (nextZero()) {
            String word = source.name();
            if (isEnd(word)) {
                return;
            }
            if (word.equals("LAYER")) {
                pending = tags.read(source, true);
                boolean off = tags.get(62, 7) < 0;
                parsed.layers.putIfAbsent(Parsed.key(tags.name), new Parsed.Layer(tags.name, tags.flag(70, 1), off));
            }
        }
    }

    private void blocks() {
        while (nextZero()) {
            String word = source.name();
            if (isEnd(word)) {
                return;
            }
            if (word.equals("BLOCK")) {
                block();
            }
        }
    }

    private void block() {
        pending = tags.read(source, true);
        List<Raw> content = new ArrayList<>();
        Parsed.Block block = new Parsed.Block(
                tags.name, tags.get(10, 0), tags.get(20, 0), tags.get(30, 0), tags.flag(70, FOREIGN_BLOCK), content);
        String key = Parsed.key(block.name());
        boolean model = key.equals("*MODEL_SPACE") || key.equals("$MODEL_SPACE");
        entities(model ? parsed.model : content, model);
        parsed.blocks.putIfAbsent(key, block);
    }

    /** Entities up to the end of the section or block. */
    private void entities(List<Raw> into, boolean model) {
        while (nextZero()) {
            String word = source.name();
            if (word.equals("ENDBLK")) {
                return;
            }
            if (isEnd(word)) {
                pending |= !model; // a block that is not closed ends the section of blocks as well
                return;
            }
            entity(into, model, word);
        }
    }

    private void entity(List<Raw> into, boolean model, String type) {
        pending = tags.read(source, RawReader.reads(type));
        if (tags.paper && model) {
            parsed.paper++;
            skipParts(type);
            return;
        }
        if (model) {
            parsed.counts.merge(type, 1, Integer::sum);
        }
        boolean invisible = tags.invisible;
        Raw raw = type.equals("POLYLINE") ? polyline() : RawReader.read(tags);
        if (invisible) {
            parsed.invisible++;
        } else {
            into.add(raw);
        }
        if (type.equals("INSERT")) {
            attributes(into);
        }
    }

    /** Vertices and attributes of what is left out are left out with it. */
    private void skipParts(String type) {
        if (type.equals("POLYLINE")) {
            polyline();
        } else if (type.equals("INSERT")) {
            attributes(new ArrayList<>());
        }
    }

    private Raw polyline() {
        Raw.Head head = RawReader.head(tags);
        Placement plane = tags.plane();
        double z = tags.get(30, 0);
        boolean closed = tags.flag(70, 1);
        boolean solid = tags.flag(70, SOLID);
        boolean mesh = tags.flag(70, MESH);
        double[] triples = vertices(solid);
        tags.restore(head);
        if (mesh) {
            return RawReader.other(tags, " mesh");
        }
        return RawReader.polyline(tags, solid ? Placement.IDENTITY : plane, z, triples, closed, solid);
    }

    private double[] vertices(boolean solid) {
        double[] triples = new double[12];
        int n = 0;
        while (pending && source.name().equals("VERTEX")) {
            pending = tags.read(source, true);
            if (tags.flag(70, FRAME_VERTEX)) {
                continue;
            }
            if (3 * n == triples.length) {
                triples = Arrays.copyOf(triples, 6 * n);
            }
            triples[3 * n] = tags.get(10, Double.NaN);
            triples[3 * n + 1] = tags.get(20, Double.NaN);
            triples[3 * n + 2] = solid ? tags.get(30, 0) : tags.get(42, 0);
            n++;
        }
        endOfParts();
        return Arrays.copyOf(triples, 3 * n);
    }

    private void attributes(List<Raw> into) {
        boolean any = false;
        while (pending && source.name().equals("ATTRIB")) {
            any = true;
            pending = tags.read(source, true);
            if (!tags.flag(70, 1) && !tags.invisible && !tags.paper) {
                into.add(RawReader.read(tags));
            }
        }
        if (any) {
            endOfParts();
        }
    }

    private void endOfParts() {
        if (pending && source.name().equals("SEQEND")) {
            pending = tags.read(source, false);
        }
    }
}
