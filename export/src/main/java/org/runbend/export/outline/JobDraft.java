package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.runbend.export.drawing.Point;

/**
 * The beginning of a job file: what the drawing says, a comment at each guess, and an empty key with "fill in" for what no
 * drawing says. A job planner accepts it once these are filled in.
 */
public final class JobDraft {
    private static final int COLUMN = 36;
    private static final int WIDTH = 118;

    private static final Set<String> TURNS = Set.of("down", "up", "level");
    private static final Pattern CORNERS = Pattern.compile("([-\\d. ]+)\\|(.+)");

    private final FloorSketch sketch;
    private final String picture;
    private final StringBuilder out = new StringBuilder();

    private JobDraft(FloorSketch sketch, String picture) {
        this.sketch = sketch;
        this.picture = picture;
    }

    /**
     * The text of a job file.
     *
     * @param picture name of the picture that shows what was understood
     */
    public static String text(FloorSketch sketch, String picture) {
        JobDraft draft = new JobDraft(sketch, picture);
        draft.write();
        return draft.out.toString();
    }

    private void write() {
        comment(
                "",
                "A job begun from the drawing " + FloorReading.shown(sketch.drawing()) + " (" + sketch.form() + ").");
        comment(
                "",
                "\"fill in\" stands where a drawing says nothing, \"guess\" where something was concluded from it: look");
        comment(
                "",
                "at each before you plan. The picture " + FloorReading.shown(picture) + " shows what was understood.");
        comment("", "Lengths in mm, axes as in the drawing, seen from above.");
        leftOut();
        if (sketch.facts().containsKey("job")) {
            fact("job", "job", "");
        } else {
            key("job: " + quoted(title()), "guess: the name of the drawing");
        }
        fact("order", "order", "fill in: number of the order");
        fact("customer", "customer", "");
        fact("date", "date", "");
        fact("revision", "revision", "");
        key("catalog:", "fill in: file of the catalog, relative to this one");
        line("floor:");
        outline();
        marks();
        obstacles();
        unheated();
        supports();
        below();
        port();
        layout();
        line("pipe:");
        fact("pipe", "  product", "fill in: a pipe of the catalog");
        line("plates:");
        plates();
    }

    /** A line that a drawing of our own tells, or what is to be filled in; neither where there is nothing to say. */
    private void fact(String name, String key, String missing) {
        String value = sketch.facts().get(name);
        if (value != null) {
            line(key + ": " + quoted(value));
        } else if (!missing.isEmpty()) {
            key(key + ":", missing);
        }
    }

    private void port() {
        line("  port:");
        List<Point> at = OwnDrawing.points(sketch.facts().get("port"));
        if (at.isEmpty()) {
            key("    at:", "fill in: [x, y] where flow and return come through");
            return;
        }
        line("    at: " + xy(at.get(0)));
        List<Point> reach = OwnDrawing.points(sketch.facts().getOrDefault("reach", "") + " 0");
        reach.forEach(r -> line("    reach: " + n(r.x())));
        String turn = sketch.facts().getOrDefault("turn", "");
        if (TURNS.contains(turn)) {
            line("    turn: " + turn);
        }
        List<Point> holes = OwnDrawing.points(sketch.facts().get("holes"));
        if (holes.size() >= 2) {
            line("    holes:");
        }
        for (int i = 0; i + 1 < holes.size(); i += 2) {
            line("      - {flow: " + xy(holes.get(i)) + ", return: " + xy(holes.get(i + 1)) + "}");
        }
    }

    private void below() {
        List<String> all = sketch.facts().entrySet().stream()
                .filter(e -> OwnDrawing.BELOW.matcher(e.getKey()).matches())
                .sorted(Comparator.comparingInt(e -> Integer.parseInt(e.getKey().substring("below".length()))))
                .map(Map.Entry::getValue)
                .toList();
        if (!all.isEmpty()) {
            line("  below:");
        }
        for (String text : all) {
            Matcher m = CORNERS.matcher(text);
            if (m.matches()) {
                String corners =
                        OwnDrawing.points(m.group(1)).stream().map(JobDraft::xy).collect(Collectors.joining(", "));
                wrapped("    - {name: " + quoted(m.group(2)) + ", polygon: [" + corners + "]}");
            }
        }
    }

    private void layout() {
        List<Point> numbers = OwnDrawing.points(sketch.facts().getOrDefault("spacing", "") + " "
                + sketch.facts().getOrDefault("edge", ""));
        numbers.forEach(p -> line("layout: {spacing: " + n(p.x()) + ", edge: " + n(p.y()) + "}"));
    }

    private void plates() {
        String plates = sketch.facts().getOrDefault("plates", "");
        if (plates.isBlank()) {
            key("  product:", "fill in: a plate of the catalog, or a list of them");
            return;
        }
        line("  product: ["
                + Arrays.stream(plates.split(", *", -1)).map(JobDraft::quoted).collect(Collectors.joining(", ")) + "]");
    }

    private void supports() {
        if (!sketch.supports().isEmpty()) {
            line("  supports:");
        }
        for (FloorSketch.Support s : sketch.supports()) {
            line("    - {name: " + quoted(s.name()) + ", line: [" + xy(s.a()) + ", " + xy(s.b()) + "], width: "
                    + n(s.width()) + ", cross: " + s.cross() + "}");
        }
    }

    private String title() {
        String stem = sketch.drawing().replaceFirst("(?i)\\.dxf$", "");
        return stem.isBlank() ? "floor" : stem;
    }

    private void leftOut() {
        comment("", "");
        if (sketch.leftOut().isEmpty()) {
            comment("", "Nothing was left out.");
            return;
        }
        comment("", "Left out:");
        sketch.leftOut().forEach(l -> comment("", "  " + FloorReading.shown(l)));
    }

    private void outline() {
        sketch.guesses().forEach(g -> comment("  ", "guess: " + g));
        line("  outline:");
        List<JobForm.Side> sides = JobForm.sides(sketch.outline());
        int n = sketch.outline().path().vertices().size();
        for (int i = 0; i < sides.size(); i++) {
            key("    - " + written(sides.get(i)), i < n ? "" + i : "back to 0");
        }
    }

    private static String written(JobForm.Side side) {
        return side.through()
                .map(t -> "{arc: [" + xy(t) + ", " + xy(side.to()) + "]}")
                .orElseGet(() -> xy(side.to()));
    }

    private void marks() {
        if (!sketch.marks().isEmpty()) {
            if (sketch.facts().isEmpty()) {
                comment("  ", "guess: words beside the outline, each at the nearest side");
            }
            line("  marks:");
        }
        for (FloorSketch.Mark mark : sketch.marks()) {
            String where = mark.edge() < 0 ? "point: " + xy(mark.at()) : "edge: " + mark.edge();
            line("    - {" + where + ", text: " + quoted(mark.text()) + "}");
        }
        for (FloorSketch.Remark r : sketch.remarks()) {
            comment("  ", "the drawing says " + quoted(r.text()) + " at " + xy(r.at()));
        }
    }

    private void obstacles() {
        if (sketch.obstacles().isEmpty()) {
            return;
        }
        comment("  ", "guess: kinds by size and name, clearances are a proposal");
        line("  keepOut:");
        for (Obstacle o : sketch.obstacles()) {
            comment("    ", o.why());
            wrapped("    - {name: " + quoted(o.name()) + ", kind: " + o.kind() + ", clearance: " + n(o.clearance())
                    + ", " + shape(o) + "}");
        }
    }

    private static String shape(Obstacle o) {
        if (o.contour().isPresent()) {
            return "polygon: [" + points(o.contour().get()) + "]";
        }
        return o.radius() == 0
                ? "point: " + xy(o.centre())
                : "circle: {centre: " + xy(o.centre()) + ", radius: " + n(o.radius()) + "}";
    }

    private void unheated() {
        if (!sketch.unheated().isEmpty()) {
            line("  unheated:");
        }
        for (Obstacle u : sketch.unheated()) {
            comment("    ", u.why());
            wrapped("    - {name: " + quoted(u.name()) + ", " + shape(u) + "}");
        }
    }

    private static String points(Contour c) {
        return JobForm.sides(c).stream().map(JobDraft::written).collect(Collectors.joining(", "));
    }

    /** A long list of points goes on in the next line. */
    private void wrapped(String text) {
        String rest = text;
        while (rest.length() > WIDTH) {
            int cut = lastBetweenPoints(rest);
            if (cut < 20) {
                break;
            }
            line(rest.substring(0, cut + 1));
            rest = "       " + rest.substring(cut + 1);
        }
        line(rest);
    }

    /** The last place within the width where a point or an arc begins, 0 if there is none. */
    private static int lastBetweenPoints(String text) {
        for (int cut = WIDTH; cut > 0; cut--) {
            boolean begins = text.startsWith(", [", cut) || text.startsWith(", {arc", cut);
            if (begins && text.lastIndexOf("{arc", cut) <= text.lastIndexOf("]]}", cut)) {
                return cut;
            }
        }
        return 0;
    }

    private void line(String text) {
        out.append(text).append('\n');
    }

    private void comment(String indent, String text) {
        line(indent + (text.isEmpty() ? "#" : "# " + text.replaceAll("[\\p{Cc}\\p{Zl}\\p{Zp}]+", " ")));
    }

    private void key(String text, String remark) {
        line(text + " ".repeat(Math.max(1, COLUMN - text.length())) + "# " + remark);
    }

    private static String xy(Point p) {
        return FloorReading.shown(p);
    }

    private static String n(double value) {
        return FloorReading.n(value);
    }

    /** A text that is one in any case: in double quotes, with escapes. */
    private static String quoted(String text) {
        String line = FloorReading.shown(text);
        List<String> letters = new ArrayList<>();
        line.codePoints().forEach(c -> letters.add(letter(c)));
        return "\"" + String.join("", letters) + "\"";
    }

    private static String letter(int c) {
        if (c == '"' || c == '\\') {
            return "\\" + (char) c;
        }
        boolean plain =
                (c >= ' ' && c < 0x7F) || (c > 0xA0 && c < 0xD800) || (c >= 0xE000 && c < 0xFFFE && c != 0xFEFF);
        return plain ? Character.toString(c) : String.format(Locale.ROOT, "\\U%08X", c);
    }
}
