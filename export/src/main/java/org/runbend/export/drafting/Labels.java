package org.runbend.export.drafting;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;

/**
 * Puts short texts where they cover neither each other nor pipe, plates and things: the first such place is taken. Where
 * there is none beside its thing, a text goes to the nearest free place and a thin line leads back.
 */
final class Labels extends Obstacles {
    /** Between the places that are looked at farther off, by the height of the text. */
    private static final double STEP = 1.6;

    private static final int STEPS = 26;
    /** So many steps off, a line that crosses nothing is better than a nearer one that crosses pipe. */
    private static final int NEAR = 8;

    private static final int DIRECTIONS = 48;
    /** What a line across pipe is worse than one that crosses none, in heights of letters. */
    private static final double CROSSING = 10;

    /** Likewise of one across a text. */
    static final double ACROSS_TEXT = 100;

    private final SheetBuilder sheet;
    private double strain;
    private boolean turns;
    private Optional<Extent> page = Optional.empty();
    private Optional<List<Point>> ground = Optional.empty();

    Labels(SheetBuilder sheet) {
        this.sheet = sheet;
    }

    /** Texts stay in this box where they can. */
    void keepIn(Extent box) {
        page = Optional.of(box);
    }

    /** Texts that stand farther off may be read from the right. */
    void mayTurn() {
        turns = true;
    }

    /** From now on texts stand on this ground where they can. */
    void keepWithin(List<Point> ring) {
        ground = Optional.of(List.copyOf(ring));
    }

    /** Writes the text at the best of the places; a line leads back to the middle of them from farther off. */
    void put(List<Text> places) {
        Text first = places.get(0);
        Area at = Area.of(first);
        put(places, at.box().centre());
    }

    /** Writes the text at the first place free of texts, pipe and things, plates may lie there; or farther off. */
    void putOn(List<Text> places, Point thing) {
        places.stream().filter(this::isOffPipe).findFirst().ifPresentOrElse(this::write, () -> put(places, thing));
    }

    /** Likewise, but on a plate only where no place is free of plates too. */
    void putBeside(List<Text> places, Point thing) {
        places.stream().filter(this::isFree).findFirst().ifPresentOrElse(this::write, () -> putOn(places, thing));
    }

    /** Writes the text in its thing if it has room there, whatever else shuns that. */
    void putIn(List<Text> places, Extent thing) {
        Text level = places.get(0);
        Text upright = new Text(level.at(), level.height(), 90, level.anchor(), level.string());
        (turns ? Stream.of(level, upright) : Stream.of(level))
                .filter(t -> t.extent().width() < thing.width() && t.extent().height() < thing.height())
                .filter(this::isOffTexts)
                .findFirst()
                .ifPresentOrElse(this::write, () -> put(places));
    }

    /** Writes the text at the first free place, or at one farther off, from where a line leads to the thing. */
    void put(List<Text> places, Point thing) {
        put(places, List.of(thing));
    }

    /** Likewise for a thing that a line may lead to at several points, the best of them first. */
    void put(List<Text> places, List<Point> thing) {
        Text like = places.get(0);
        Predicate<Text> any = t -> true;
        Predicate<Text> own = t -> isNearestToItsOwn(t, thing.get(0));
        for (Predicate<Text> whose : isNamed(thing.get(0)) ? List.of(own, any) : List.of(any)) {
            for (Predicate<Text> place : wishes()) {
                Optional<Text> near = places.stream().filter(whose.and(place)).findFirst();
                if (near.isPresent()) {
                    write(near.get());
                    return;
                }
            }
            if (putFarther(like, thing, whose)) {
                return;
            }
        }
        Point end = thing.get(0);
        // on a plate rather than on pipe, on anything rather than on another text
        write(places.stream()
                .filter(this::isOffTexts)
                .findFirst()
                .or(() -> farther(like, end, STEPS, this::isOffTexts))
                .orElse(like));
    }

    /** Where a text may stand, the best first: off thin lines, then across them; on its ground, then anywhere. */
    private List<Predicate<Text>> wishes() {
        Predicate<Text> clear = t -> isFree(t) && isOffLines(t);
        Predicate<Text> across = t -> isFree(t) && isAcrossLines(t);
        return ground.isEmpty()
                ? List.of(clear, across)
                : List.of(clear.and(this::isOnGround), across.and(this::isOnGround));
    }

    /** A line that crosses nothing, else one that crosses pipe, else one that crosses no text, else one that crosses what it must. */
    private boolean putFarther(Text like, List<Point> thing, Predicate<Text> whose) {
        Predicate<Segment> clear = s -> isClear(s, like.height());
        Predicate<Segment> offPipe = clear.and(s -> crossesNoPipe(s, like.height()));
        List<Way> ways = List.of(
                new Way(NEAR, offPipe.and(s -> crossesNoPlate(s, like.height()))),
                new Way(turns ? NEAR : STEPS / 2, offPipe),
                new Way(STEPS, clear),
                new Way(STEPS, this::crossesNoText),
                new Way(STEPS, s -> true));
        List<Predicate<Text>> places = wishes().stream().map(whose::and).toList();
        if (ground.isEmpty()) {
            return ways.stream().anyMatch(w -> places.stream().anyMatch(p -> putFarther(like, thing, w, p)));
        }
        Predicate<Text> anywhere = whose.and(t -> isFree(t) && isAcrossLines(t));
        return ways.stream().limit(3).anyMatch(w -> places.stream().anyMatch(p -> putFarther(like, thing, w, p)))
                || ways.stream().anyMatch(w -> putFarther(like, thing, w, anywhere));
    }

    private boolean putFarther(Text like, List<Point> thing, Way way, Predicate<Text> place) {
        for (Point end : thing) {
            Optional<Text> far = farther(like, end, way.steps, t -> place.test(t) && way.isGood.test(leader(t, end)));
            if (far.isPresent()) {
                lead(far.get(), end);
                write(far.get());
                return true;
            }
        }
        return false;
    }

    /** How far off a text may stand, in steps, and what its leader has to keep to. */
    private record Way(int steps, Predicate<Segment> isGood) {}

    private boolean isOnGround(Text text) {
        return ground.map(ring -> Area.of(text).corners().stream().allMatch(c -> Places.isInside(c, ring)))
                .orElse(true);
    }

    private Optional<Text> farther(Text like, Point thing, int steps, Predicate<Text> isGood) {
        for (int step = 1; step <= steps; step++) {
            for (boolean upright : turns ? new boolean[] {false, true} : new boolean[] {false}) {
                for (int k = 0; k < DIRECTIONS; k++) {
                    int turn = k % 2 == 0 ? k : -k - 1;
                    Text text = away(like, thing, step, 45 + turn * 180.0 / DIRECTIONS, upright);
                    if (isOnPage(text) && isGood.test(text)) {
                        return Optional.of(text);
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** A text some steps from its thing in a direction, level or read from the right. */
    private static Text away(Text like, Point thing, int step, double direction, boolean upright) {
        double h = like.height();
        Point at = thing.polar((1 + step * STEP) * h, direction);
        double angle = upright ? 90 : 0;
        double along = Math.cos(Math.toRadians(direction - angle));
        double across = Math.sin(Math.toRadians(direction - angle));
        Anchor anchor = along > 0.3
                ? Anchor.MIDDLE_LEFT
                : along < -0.3 ? Anchor.MIDDLE_RIGHT : across > 0 ? Anchor.BOTTOM_CENTRE : Anchor.TOP_CENTRE;
        return new Text(at, h, angle, anchor, like.string());
    }

    private boolean isOnPage(Text text) {
        Extent e = text.extent();
        return page.map(p ->
                        e.minX() >= p.minX() && e.maxX() <= p.maxX() && e.minY() >= p.minY() && e.maxY() <= p.maxY())
                .orElse(true);
    }

    private static Segment leader(Text text, Point thing) {
        return new Segment(text.at().polar(AIR * text.height(), text.at().angleTo(thing)), thing);
    }

    /** How far texts stand from what they name, in heights of letters; a line across pipe counts as more, one across another text as much more. */
    double strain() {
        return strain;
    }

    /** A thin line from the thing to the text, which other texts leave free. */
    private void lead(Text text, Point thing) {
        double gap = AIR * text.height();
        if (text.at().distance(thing) > 2 * gap) {
            Segment line = leader(text, thing);
            sheet.add(Layer.NOTE, line);
            block(line);
            strain += line.a().distance(thing) / text.height();
            strain += crossesNoPipe(line, text.height()) ? 0 : CROSSING;
            strain += crossesNoText(line) ? 0 : ACROSS_TEXT;
        }
    }

    private void write(Text text) {
        block(text);
        sheet.add(Layer.NOTE, text);
    }

    /** A text in the middle of something, or over, under, right or left of it. */
    static List<Text> around(Extent box, double gap, double height, String string) {
        Point c = box.centre();
        return List.of(
                Text.level(c, height, Anchor.MIDDLE_CENTRE, string),
                Text.level(new Point(c.x(), box.maxY() + gap), height, Anchor.BOTTOM_CENTRE, string),
                Text.level(new Point(c.x(), box.minY() - gap), height, Anchor.TOP_CENTRE, string),
                Text.level(new Point(box.maxX() + gap, c.y()), height, Anchor.MIDDLE_LEFT, string),
                Text.level(new Point(box.minX() - gap, c.y()), height, Anchor.MIDDLE_RIGHT, string));
    }
}
