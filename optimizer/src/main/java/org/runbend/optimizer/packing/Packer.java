package org.runbend.optimizer.packing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.PackedSize;
import org.runbend.catalog.product.Packing;

/**
 * Puts lines into cartons: every line goes whole into one, each of its things must go in square, and together they fill at
 * most four fifths of it (loosely packed boxes with padding, common practice) and weigh no more than carton and carrier allow.
 *
 * <p>First fit by decreasing length, once for each carton as the one opened first choice, then each carton exchanged for
 * the smallest that still holds its lines; the way with the fewest parcels is taken, of those the one of least volume. A
 * heuristic; {@link #atLeast} says how many parcels any way takes.
 */
public final class Packer {
    private static final double FILL = 0.8;
    private static final double ROUNDING = 1e-9;

    private final Packing packing;

    /** For a workshop's cartons. */
    public Packer(Packing packing) {
        this.packing = packing;
    }

    /** Parcels in the order of the first place in each; lines in them in the order of their places. */
    public List<Parcel> pack(List<PackedLine> lines) {
        if (lines.isEmpty()) {
            return List.of();
        }
        if (packing.cartons().isEmpty()) {
            return List.of(parcel(Optional.empty(), lines));
        }
        List<Box> best = null;
        for (Packing.Carton first : packing.cartons()) {
            List<Box> boxes = fill(lines, first);
            if (best == null || COST.compare(boxes, best) < 0) {
                best = boxes;
            }
        }
        return best.stream()
                .map(b -> parcel(Optional.ofNullable(b.carton), b.lines))
                .sorted(Comparator.comparing(p -> p.lines().get(0), BY_PLACE))
                .toList();
    }

    /**
     * No way of packing takes fewer parcels: what no carton holds travels by itself; of the rest by weight, by room, and by lines
     * of which no carton holds any two.
     */
    public int atLeast(List<PackedLine> lines) {
        if (lines.isEmpty() || packing.cartons().isEmpty()) {
            return Math.min(1, lines.size());
        }
        List<PackedLine> boxed = lines.stream().filter(l -> isHeld(List.of(l))).toList();
        double weight = boxed.stream().mapToDouble(PackedLine::sum).sum();
        double volume = boxed.stream().mapToDouble(PackedLine::volume).sum();
        double most = packing.cartons().stream().mapToDouble(this::most).max().orElseThrow();
        double room = packing.cartons().stream()
                .mapToDouble(c -> FILL * c.inside().volume())
                .max()
                .orElseThrow();
        int byMeasure = (int) Math.ceil(Math.max(weight / most, volume / room) - ROUNDING);
        return lines.size() - boxed.size() + Math.max(byMeasure, apart(boxed));
    }

    /** How many lines were found of which no carton holds any two. */
    private int apart(List<PackedLine> boxed) {
        List<PackedLine> apart = new ArrayList<>();
        boxed.stream()
                .sorted(Comparator.comparingLong((PackedLine l) ->
                        -boxed.stream().filter(m -> !isHeld(List.of(l, m))).count()))
                .filter(l -> apart.stream().noneMatch(m -> isHeld(List.of(l, m))))
                .forEach(apart::add);
        return apart.size();
    }

    private boolean isHeld(List<PackedLine> lines) {
        return packing.cartons().stream().anyMatch(c -> holds(c, lines));
    }

    private double most(Packing.Carton c) {
        return packing.carrier()
                .map(limit -> Math.min(c.most(), limit.weight() - c.weight()))
                .orElse(c.most());
    }

    private boolean holds(Packing.Carton c, List<PackedLine> all) {
        return all.stream()
                        .allMatch(l -> l.size().map(s -> s.fitsInto(c.inside())).orElse(true))
                && all.stream().mapToDouble(PackedLine::volume).sum()
                        <= FILL * c.inside().volume()
                && all.stream().mapToDouble(PackedLine::sum).sum() <= most(c);
    }

    private static final Comparator<List<Box>> COST = Comparator.comparingInt((List<Box> b) -> b.size())
            .thenComparingDouble(b -> b.stream().mapToDouble(Box::volume).sum());

    /** Places as people count them: A2 before A10; what has none comes last. */
    static final Comparator<PackedLine> BY_PLACE = Comparator.comparing(
            (PackedLine l) -> l.place().map(Packer::countable).orElse("\uFFFF"));

    private static String countable(String place) {
        StringBuilder out = new StringBuilder();
        StringBuilder digits = new StringBuilder();
        for (int i = 0; i < place.length(); i++) {
            char c = place.charAt(i);
            if (Character.isDigit(c)) {
                digits.append(c);
            } else {
                out.append(padded(digits)).append(c);
                digits.setLength(0);
            }
        }
        return out.append(padded(digits)).toString();
    }

    private static String padded(StringBuilder digits) {
        return digits.length() == 0 ? "" : "0".repeat(Math.max(0, 12 - digits.length())) + digits;
    }

    private List<Box> fill(List<PackedLine> lines, Packing.Carton first) {
        List<PackedLine> order = lines.stream()
                .sorted(Comparator.comparingDouble((PackedLine l) -> -longest(l))
                        .thenComparingDouble(l -> -l.volume()))
                .toList();
        List<Box> boxes = new ArrayList<>();
        for (PackedLine line : order) {
            Optional<Box> open = boxes.stream().filter(b -> b.takes(line)).findFirst();
            if (open.isEmpty()) {
                Box box = new Box(opened(line, first));
                boxes.add(box);
                open = Optional.of(box);
            }
            open.get().lines.add(line);
        }
        for (Box box : boxes) {
            packing.cartons().stream()
                    .filter(c -> box.carton != null && box.goesInto(c))
                    .findFirst()
                    .ifPresent(c -> box.carton = c);
            box.lines.sort(BY_PLACE.thenComparing(lines::indexOf));
        }
        return boxes;
    }

    /** The carton wanted if it holds the line, else the smallest that does, else none. */
    private Packing.Carton opened(PackedLine line, Packing.Carton first) {
        Box empty = new Box(first);
        if (empty.takes(line)) {
            return first;
        }
        return packing.cartons().stream()
                .filter(c -> new Box(c).takes(line))
                .findFirst()
                .orElse(null);
    }

    private static double longest(PackedLine line) {
        return line.size().map(s -> s.sides().get(0)).orElse(0.0);
    }

    private Parcel parcel(Optional<Packing.Carton> carton, List<PackedLine> lines) {
        List<PackedLine> sorted = lines.stream().sorted(BY_PLACE).toList();
        Parcel parcel = new Parcel(carton, sorted, Optional.empty());
        Optional<PackedSize> size = carton.map(Packing.Carton::inside)
                .or(() -> sorted.size() == 1 ? sorted.get(0).size() : Optional.empty());
        Optional<Boolean> sendable = packing.carrier().flatMap(c -> size.map(s -> c.takes(s, parcel.weight())));
        return new Parcel(carton, sorted, sendable);
    }

    /** A carton that is being filled; without a carton what lies in it travels by itself. */
    private final class Box {
        private final List<PackedLine> lines = new ArrayList<>();
        private Packing.Carton carton;

        Box(Packing.Carton carton) {
            this.carton = carton;
        }

        boolean takes(PackedLine line) {
            if (carton == null) {
                return false;
            }
            List<PackedLine> all = new ArrayList<>(lines);
            all.add(line);
            return holds(carton, all);
        }

        boolean goesInto(Packing.Carton other) {
            return holds(other, lines);
        }

        double volume() {
            return carton == null ? lines.get(0).volume() : carton.inside().volume();
        }
    }
}
