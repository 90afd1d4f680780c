package org.runbend.export.data;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.catalog.source.Plain;
import org.runbend.optimizer.boards.CutLayer;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.change.EarlierKit;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;

/** The kit of a {@code kit.json} that an earlier run wrote; numbers that are missing or no numbers make it none of ours. */
public final class OldKit {
    private static final long LARGEST = 20_000_000;

    /** Sizes that were written with three decimals differ by less, mm. */
    private static final double SAME = 0.01;

    private String fingerprint = "";
    private int contract;
    private String pipe = "";
    private Optional<EarlierKit.Place> place = Optional.empty();
    private final List<EarlierKit.Loop> loops = new ArrayList<>();
    private final List<Piece> pieces = new ArrayList<>();
    private double depth;
    private List<CutLayer> boards = List.of();

    private OldKit() {}

    /** A piece of plate as the file has it. */
    private record Piece(String product, double length, List<Groove> grooves) {}

    private record Groove(String loop, int element, double from) {}

    /**
     * The kit of a file.
     *
     * @throws BadInput if the file is no kit.json of ours, or one by the rules of another version
     */
    public static EarlierKit read(Path file) {
        OldKit kit = new OldKit();
        Optional<EarlierKit> read = Optional.empty();
        try {
            if (!Files.isRegularFile(file)) {
                throw new BadInput(
                        Fault.ofFile(file.toString(), Files.exists(file) ? "is not a regular file" : "no such file"));
            }
            if (Files.size(file) <= LARGEST) {
                try (JsonParser json = new JsonFactory().createParser(file.toFile())) {
                    kit.read(json);
                }
                read = kit.whole();
            }
        } catch (IOException | IllegalArgumentException | IndexOutOfBoundsException e) {
            read = Optional.empty();
        }
        if (read.isEmpty()) {
            throw new BadInput(Fault.ofFile(file.toString(), "is no kit.json that Runbend wrote"));
        }
        if (kit.contract != KitJson.CONTRACT) {
            throw new BadInput(Fault.ofFile(
                    file.toString(),
                    "is by contract " + kit.contract + ", this Runbend plans by contract " + KitJson.CONTRACT
                            + "; plan its job anew to have one"));
        }
        return read.get();
    }

    /**
     * Holds a kit against the job that is to be planned after it.
     *
     * @throws BadInput if its pipe is another, or lies at another spacing
     */
    public static void check(Path file, EarlierKit kit, Job job) {
        String pipe = job.pipe().product().sku();
        if (!kit.pipe().equals(pipe)) {
            throw new BadInput(Fault.ofFile(
                    file.toString(),
                    "is a kit of pipe " + Plain.quoted(kit.pipe()) + ", the job wants " + Plain.quoted(pipe)
                            + "; another pipe needs another groove, plan without --was"));
        }
        double spacing = job.layout().spacing();
        double before = kit.place().map(EarlierKit.Place::spacing).orElse(spacing);
        if (Math.abs(before - spacing) > SAME) {
            throw new BadInput(Fault.ofFile(
                    file.toString(),
                    "has runs " + Plain.number(before) + " mm apart, the job wants " + Plain.number(spacing)
                            + "; nothing of it would stay, plan without --was"));
        }
    }

    private Optional<EarlierKit> whole() {
        if (fingerprint.isEmpty() || loops.isEmpty()) {
            return Optional.empty();
        }
        List<EarlierKit.PlateCutBefore> plates = pieces.stream()
                .map(p -> new EarlierKit.PlateCutBefore(
                        p.product(),
                        p.length(),
                        p.grooves().stream().map(g -> groove(g, p.length())).toList()))
                .toList();
        return Optional.of(new EarlierKit(fingerprint, pipe, place, loops, plates, OldBoards.routed(boards, depth)));
    }

    private EarlierKit.Groove groove(Groove groove, double length) {
        EarlierKit.Loop loop = loops.stream()
                .filter(l -> l.name().equals(groove.loop()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no such loop"));
        if (!(loop.elements().get(groove.element()) instanceof Element.Run run)) {
            throw new IllegalArgumentException("a plate on a bend");
        }
        return new EarlierKit.Groove(run.along(groove.from()), run.along(groove.from() + length));
    }

    private void read(JsonParser json) throws IOException {
        if (json.nextToken() != JsonToken.START_OBJECT) {
            return;
        }
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            switch (key) {
                case "fingerprint" -> fingerprint = text(json);
                case "contract" -> contract = whole(json);
                case "pipe" -> pipe = product(json);
                case "lattice" -> place = Optional.of(place(json));
                case "loops" -> {
                    for (boolean more = opens(json, value); more; more = json.nextToken() == JsonToken.START_OBJECT) {
                        loops.add(loop(json));
                    }
                }
                case "plates" -> plates(json);
                case "channel" -> depth = depth(json);
                case "boards" -> boards = OldBoards.read(json);
                default -> json.skipChildren();
            }
        }
    }

    /** Whether a list begins with an object, which is entered. */
    static boolean opens(JsonParser json, JsonToken value) throws IOException {
        return value == JsonToken.START_ARRAY && json.nextToken() == JsonToken.START_OBJECT;
    }

    private static String product(JsonParser json) throws IOException {
        String product = "";
        for (String key = first(json); key != null; key = json.nextFieldName()) {
            json.nextToken();
            if (key.equals("product")) {
                product = text(json);
            } else {
                json.skipChildren();
            }
        }
        return product;
    }

    private static EarlierKit.Place place(JsonParser json) throws IOException {
        Point origin = null;
        double angle = Double.NaN;
        double spacing = Double.NaN;
        for (String key = first(json); key != null; key = json.nextFieldName()) {
            json.nextToken();
            switch (key) {
                case "origin" -> origin = point(json);
                case "angle" -> angle = number(json);
                case "spacing" -> spacing = number(json);
                default -> json.skipChildren();
            }
        }
        if (origin == null || Double.isNaN(angle) || !(spacing > 0)) {
            throw new IllegalArgumentException("no place");
        }
        return new EarlierKit.Place(origin, angle, spacing);
    }

    static String first(JsonParser json) throws IOException {
        if (json.currentToken() != JsonToken.START_OBJECT) {
            throw new IllegalArgumentException("no object");
        }
        return json.nextFieldName();
    }

    private EarlierKit.Loop loop(JsonParser json) throws IOException {
        String name = "";
        List<Element> elements = new ArrayList<>();
        List<Point> bare = new ArrayList<>();
        Point leads = new Point(0, 0);
        double cut = Double.NaN;
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            switch (key) {
                case "name" -> name = text(json);
                case "cutLength" -> cut = number(json);
                case "leadIn" -> leads = point(json);
                case "elements" -> {
                    for (boolean more = opens(json, value); more; more = json.nextToken() == JsonToken.START_OBJECT) {
                        elements.add(element(json));
                    }
                }
                case "bare" -> {
                    for (boolean more = opens(json, value); more; more = json.nextToken() == JsonToken.START_OBJECT) {
                        bare.add(at(json));
                    }
                }
                default -> json.skipChildren();
            }
        }
        return new EarlierKit.Loop(name, elements, (int) leads.x(), (int) leads.y(), cut, bare);
    }

    private static Point at(JsonParser json) throws IOException {
        Point at = null;
        for (String key = first(json); key != null; key = json.nextFieldName()) {
            json.nextToken();
            if (key.equals("at")) {
                at = point(json);
            } else {
                json.skipChildren();
            }
        }
        if (at == null) {
            throw new IllegalArgumentException("no place");
        }
        return at;
    }

    private void plates(JsonParser json) throws IOException {
        for (String key = first(json); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            if (key.equals("pieces")) {
                for (boolean more = opens(json, value); more; more = json.nextToken() == JsonToken.START_OBJECT) {
                    pieces.add(piece(json));
                }
            } else {
                json.skipChildren();
            }
        }
    }

    private static Piece piece(JsonParser json) throws IOException {
        String product = "";
        double length = Double.NaN;
        List<Groove> grooves = new ArrayList<>();
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            switch (key) {
                case "product" -> product = text(json);
                case "length" -> length = number(json);
                case "runs" -> {
                    for (boolean more = opens(json, value); more; more = json.nextToken() == JsonToken.START_OBJECT) {
                        grooves.add(groove(json));
                    }
                }
                default -> json.skipChildren();
            }
        }
        if (!(length >= 1) || grooves.isEmpty()) {
            throw new IllegalArgumentException("no piece of plate");
        }
        return new Piece(product, length, grooves);
    }

    private static Groove groove(JsonParser json) throws IOException {
        String loop = "";
        int element = -1;
        double from = Double.NaN;
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            json.nextToken();
            switch (key) {
                case "loop" -> loop = text(json);
                case "element" -> element = whole(json);
                case "from" -> from = number(json);
                default -> json.skipChildren();
            }
        }
        if (Double.isNaN(from)) {
            throw new IllegalArgumentException("no place of a groove");
        }
        return new Groove(loop, element, from);
    }

    private static double depth(JsonParser json) throws IOException {
        double depth = 0;
        for (String key = first(json); key != null; key = json.nextFieldName()) {
            json.nextToken();
            if (key.equals("depth")) {
                depth = number(json);
            } else {
                json.skipChildren();
            }
        }
        return depth;
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

    static Point point(JsonParser json) throws IOException {
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

    static String text(JsonParser json) throws IOException {
        if (json.currentToken() != JsonToken.VALUE_STRING) {
            throw new IllegalArgumentException("no text");
        }
        return json.getText();
    }

    private static int whole(JsonParser json) throws IOException {
        double value = number(json);
        if (value != Math.rint(value) || Math.abs(value) > 1e9) {
            throw new IllegalArgumentException("no whole number");
        }
        return (int) value;
    }

    static double number(JsonParser json) throws IOException {
        if (!json.currentToken().isNumeric() || !Double.isFinite(json.getDoubleValue())) {
            throw new IllegalArgumentException("no number");
        }
        return json.getDoubleValue();
    }
}
