package org.runbend.export.data;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.runbend.optimizer.boards.BoardsPlan.Joint;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsPlan.Spot;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.boards.CutLayer;
import org.runbend.optimizer.job.Point;

/** The boards of a {@code kit.json} that an earlier run wrote, as they lie on the floor. */
final class OldBoards {
    private static final Pattern LABEL = Pattern.compile("[A-Z][0-9]{1,5}");

    /** Where a part was cut from is not asked. */
    private static final Spot NOWHERE = new Spot(0, 0, 0, 0);

    private OldBoards() {}

    /**
     * The layers, from the bottom up.
     *
     * @throws IllegalArgumentException if they are none of ours
     */
    static List<CutLayer> read(JsonParser json) throws IOException {
        List<CutLayer> layers = new ArrayList<>();
        for (String key = OldKit.first(json); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            if (key.equals("layers")) {
                for (boolean more = OldKit.opens(json, value); more; more = isNext(json)) {
                    layers.add(layer(json));
                }
            } else {
                json.skipChildren();
            }
        }
        return layers;
    }

    /** The same layers with grooves of a depth, which stands elsewhere in the file. */
    static List<CutLayer> routed(List<CutLayer> layers, double depth) {
        return layers.stream()
                .map(l -> new CutLayer(l.role(), l.material(), l.name(), l.thickness(), depth, l.parts(), l.joints()))
                .toList();
    }

    private static boolean isNext(JsonParser json) throws IOException {
        return json.nextToken() == JsonToken.START_OBJECT;
    }

    private static CutLayer layer(JsonParser json) throws IOException {
        Role role = null;
        String material = "";
        String name = "";
        double thickness = Double.NaN;
        List<Part> parts = new ArrayList<>();
        List<Joint> joints = new ArrayList<>();
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            switch (key) {
                case "role" -> role = Role.valueOf(OldKit.text(json).toUpperCase(Locale.ROOT));
                case "material" -> material = OldKit.text(json);
                case "name" -> name = OldKit.text(json);
                case "thickness" -> thickness = OldKit.number(json);
                case "parts" -> {
                    for (boolean more = OldKit.opens(json, value); more; more = isNext(json)) {
                        parts.add(part(json));
                    }
                }
                case "joints" -> {
                    for (boolean more = OldKit.opens(json, value); more; more = isNext(json)) {
                        joints.add(joint(json));
                    }
                }
                default -> json.skipChildren();
            }
        }
        if (role == null || material.isEmpty() || !(thickness > 0) || parts.isEmpty()) {
            throw new IllegalArgumentException("no layer of boards");
        }
        return new CutLayer(role, material, name, thickness, 0, parts, joints);
    }

    private static Part part(JsonParser json) throws IOException {
        String label = "";
        List<Point> edge = List.of();
        List<List<Point>> openings = List.of();
        List<Round> rounds = new ArrayList<>();
        List<List<Point>> pockets = List.of();
        List<List<Point>> ramps = List.of();
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            JsonToken value = json.nextToken();
            switch (key) {
                case "label" -> label = OldKit.text(json);
                case "edge" -> edge = ring(json);
                case "openings" -> openings = rings(json, value);
                case "rounds" -> {
                    for (boolean more = OldKit.opens(json, value); more; more = isNext(json)) {
                        rounds.add(round(json));
                    }
                }
                case "pockets" -> pockets = rings(json, value);
                case "ramps" -> ramps = rings(json, value);
                default -> json.skipChildren();
            }
        }
        if (!LABEL.matcher(label).matches() || edge.isEmpty()) {
            throw new IllegalArgumentException("no part of a board");
        }
        return new Part(label, edge, openings, rounds, pockets, ramps, NOWHERE);
    }

    private static List<List<Point>> rings(JsonParser json, JsonToken value) throws IOException {
        List<List<Point>> rings = new ArrayList<>();
        for (boolean more = OldKit.opens(json, value); more; more = isNext(json)) {
            List<Point> edge = List.of();
            for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
                json.nextToken();
                if (key.equals("edge")) {
                    edge = ring(json);
                } else {
                    json.skipChildren();
                }
            }
            if (edge.isEmpty()) {
                throw new IllegalArgumentException("no edge");
            }
            rings.add(edge);
        }
        return rings;
    }

    private static List<Point> ring(JsonParser json) throws IOException {
        List<Point> ring = new ArrayList<>();
        if (json.currentToken() == JsonToken.START_ARRAY) {
            while (json.nextToken() != JsonToken.END_ARRAY) {
                ring.add(OldKit.point(json));
            }
        }
        if (ring.size() < 3) {
            throw new IllegalArgumentException("no closed line");
        }
        return ring;
    }

    private static Round round(JsonParser json) throws IOException {
        Point centre = null;
        double radius = Double.NaN;
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            json.nextToken();
            switch (key) {
                case "centre" -> centre = OldKit.point(json);
                case "radius" -> radius = OldKit.number(json);
                default -> json.skipChildren();
            }
        }
        if (centre == null || !(radius > 0)) {
            throw new IllegalArgumentException("no circle");
        }
        return new Round(centre, radius);
    }

    private static Joint joint(JsonParser json) throws IOException {
        Point from = null;
        Point to = null;
        for (String key = json.nextFieldName(); key != null; key = json.nextFieldName()) {
            json.nextToken();
            switch (key) {
                case "from" -> from = OldKit.point(json);
                case "to" -> to = OldKit.point(json);
                default -> json.skipChildren();
            }
        }
        if (from == null || to == null) {
            throw new IllegalArgumentException("no joint");
        }
        return new Joint(from, to);
    }
}
