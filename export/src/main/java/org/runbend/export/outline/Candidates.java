package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import org.runbend.export.drawing.Point;

/**
 * The closed lines of a drawing that could be its floor, numbered, and the choice among them. Frames of sheets and outer
 * faces of walls are known as such; where several could be meant nothing is chosen.
 */
final class Candidates {
    static final double SQUARE_METRE = 1e6;
    static final double LARGEST = 25 * SQUARE_METRE;
    /** Smaller closed lines are no floors, mm2. */
    private static final double SMALLEST = 0.1 * SQUARE_METRE;

    /** Closed lines beside each other of at least this share of the largest could be the floor as well. */
    private static final double ALIKE = 0.3;

    private static final double LEAST_RIVAL = 0.5 * SQUARE_METRE;
    private static final int MOST = 40;
    private static final int MOST_THINGS = 500;
    private static final int MOST_NAMED = 8;
    private static final Pattern WALL =
            Pattern.compile("(?i).*(wall|wand|mauer|mur|pared|muro|face|outer|inner|outside|inside|aussen|innen).*");

    private final List<Candidate> all = new ArrayList<>();
    private final List<String> guesses;
    private final SheetFrames frames;

    /** Candidates among closed lines, which come largest first. */
    Candidates(
            List<Contour> contours,
            List<Contour> opened,
            DrawnShapes figures,
            Predicate<String> isUnheated,
            List<String> guesses) {
        this.guesses = guesses;
        List<Contour> large = contours.stream()
                .filter(c -> c.weight() >= SMALLEST && !isUnheated.test(c.layer()))
                .limit(MOST)
                .toList();
        frames = new SheetFrames(large, figures.words, things(contours, figures));
        for (Contour c : large) {
            String what = frames.isFrame(c) ? "frame of the sheet" : opened.contains(c) ? face(c, opened) : "";
            all.add(new Candidate(all.size() + 1, c, what));
        }
    }

    /** Middles of small closed lines and points; of very many the first. */
    private static List<Point> things(List<Contour> contours, DrawnShapes figures) {
        List<Point> things = new ArrayList<>();
        contours.stream()
                .filter(c -> c.weight() < SMALLEST)
                .limit(MOST_THINGS)
                .forEach(c -> things.add(c.box().centre()));
        figures.spots.stream().limit(MOST_THINGS).forEach(s -> things.add(s.at()));
        return things;
    }

    private static String face(Contour c, List<Contour> opened) {
        boolean outer = opened.stream().anyMatch(o -> o.area() < c.area() && c.boxCovers(o));
        return outer ? "outer face of a wall" : "inner face of a wall";
    }

    List<Candidate> all() {
        return all;
    }

    boolean isEmpty() {
        return all.isEmpty();
    }

    /** How each is taken, in one line. */
    String words(List<Candidate> some) {
        String more = some.size() > MOST_NAMED ? " and " + (some.size() - MOST_NAMED) + " more" : "";
        return some.stream().limit(MOST_NAMED).map(Candidate::words).collect(Collectors.joining("; ")) + more;
    }

    /** The one with a number. */
    Contour numbered(int number) {
        if (number < 1 || number > all.size()) {
            throw new NoOutline(
                    "there is no --contour " + number + ", closed lines large enough for a floor are "
                            + (all.isEmpty() ? "none" : words(all)),
                    all);
        }
        return all.get(number - 1).contour();
    }

    /** The smallest one round a place. */
    Contour around(Point at) {
        return all.stream()
                .map(Candidate::contour)
                .filter(c -> covers(c, at))
                .min(Comparator.comparingDouble(Contour::area))
                .orElseThrow(() -> new NoOutline(
                        "no closed line is around " + FloorReading.shown(at)
                                + ", those large enough for a floor are "
                                + (all.isEmpty() ? "none" : words(all)),
                        all));
    }

    private static boolean covers(Contour c, Point at) {
        Polygon polygon = c.polygon();
        return polygon.isValid() && polygon.covers(polygon.getFactory().createPoint(new Coordinate(at.x(), at.y())));
    }

    /** The one that a person would take; of none or several likely ones none. */
    Contour chosen(Predicate<Contour> isWanted) {
        List<Candidate> left =
                all.stream().filter(c -> isWanted.test(c.contour())).toList();
        Candidate best = face(withoutOuterFaces(withoutFrames(left)));
        List<Candidate> rivals = left.stream()
                .filter(c -> c.what().isEmpty() && isRival(c.contour(), best.contour()))
                .toList();
        if (rivals.isEmpty() && best.what().isEmpty() && frames.isDoubtful(best.contour())) {
            rivals = left.stream()
                    .filter(c -> c.what().isEmpty()
                            && c.number() != best.number()
                            && best.contour().boxCovers(c.contour())
                            && c.contour().weight() >= LEAST_RIVAL)
                    .toList();
        }
        if (!rivals.isEmpty()) {
            List<Candidate> several = new ArrayList<>(List.of(best));
            several.addAll(rivals);
            throw several(several);
        }
        return best.contour();
    }

    private NoOutline several(List<Candidate> some) {
        return new NoOutline(
                "several closed lines could be the floor: " + words(some)
                        + "; say which, or say --at X,Y for a place on it, or --layer NAME",
                all);
    }

    private static boolean isRival(Contour c, Contour best) {
        boolean large = c.weight() >= ALIKE * best.weight() && c.weight() >= LEAST_RIVAL;
        boolean apart = !best.boxCovers(c) && !c.boxCovers(best);
        return large && apart && c.weight() <= LARGEST;
    }

    /** Frames go, and what is too large for a floor if something in it is not. */
    private List<Candidate> withoutFrames(List<Candidate> some) {
        List<Candidate> left = new ArrayList<>(some);
        for (Candidate c : some) {
            boolean frame = c.what().startsWith("frame");
            boolean tooLarge = c.contour().weight() > LARGEST
                    && some.stream()
                            .anyMatch(o -> o.contour().weight() <= LARGEST
                                    && o.contour().weight() >= LEAST_RIVAL);
            if ((frame || tooLarge) && left.size() > 1) {
                left.remove(c);
                guesses.add("a closed line of " + FloorReading.metres(c.contour()) + " on layer "
                        + FloorReading.shown(c.contour().layer())
                        + (frame
                                ? " was taken for the frame of the sheet"
                                : " is too large for a floor and was taken for a frame")
                        + "; --contour " + c.number() + " takes it for the floor");
            }
        }
        return left;
    }

    private List<Candidate> withoutOuterFaces(List<Candidate> some) {
        List<Candidate> left = new ArrayList<>(some);
        for (Candidate c : some) {
            if (c.what().startsWith("outer face") && left.size() > 1) {
                left.remove(c);
                guesses.add("its outer face encloses " + FloorReading.metres(c.contour()) + ", --contour " + c.number()
                        + " takes that for the floor");
            }
        }
        return left;
    }

    /** Of lines near each other all round the innermost, as skin, core and lining of a wall are drawn. */
    private Candidate face(List<Candidate> some) {
        Candidate outer = some.get(0);
        Candidate inner = outer;
        for (Candidate next : some.subList(1, some.size())) {
            boolean plain = inner.what().isEmpty()
                    && Walls.thickness(inner.contour(), next.contour()).isPresent();
            if (plain && Walls.thickness(outer.contour(), next.contour()).isPresent()) {
                boolean sameLayer =
                        inner.contour().layer().equalsIgnoreCase(next.contour().layer());
                if (!sameLayer && !isWall(inner) && !isWall(next)) {
                    throw several(List.of(inner, next));
                }
                inner = next;
            }
        }
        if (inner.number() != outer.number()) {
            guesses.add("the line round it (" + FloorReading.metres(outer.contour())
                    + ") was taken for the outer face of a wall "
                    + Walls.spread(
                            Walls.thickness(outer.contour(), inner.contour()).orElseThrow())
                    + " thick; --contour " + outer.number() + " takes that for the floor");
        }
        return inner;
    }

    private static boolean isWall(Candidate c) {
        return WALL.matcher(c.contour().layer()).matches();
    }
}
