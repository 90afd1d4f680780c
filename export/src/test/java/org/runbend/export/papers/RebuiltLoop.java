package org.runbend.export.papers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Rebuilds loops from the text of a fitting sheet, as a person would who has nothing else: once from runs and bends in the order
 * of flow, once from the running measures on the snapped lines, where arcs follow from tangents alone. It shares no line with
 * what wrote the sheet.
 */
final class RebuiltLoop {
    private static final String N = "(-?\\d+(?:\\.\\d+)?)";
    private static final Pattern RUN = Pattern.compile(
            "^\\s*([A-Z])(\\d+)\\s+(along|across)\\s+" + N + "\\s+" + N + "\\s+" + N + "\\s+" + N + "\\b.*");
    private static final Pattern SLANT = Pattern.compile(
            "^\\s*([A-Z])(\\d+)\\s+aslant\\s+" + N + " /\\s*" + N + "\\s+" + N + " /\\s*" + N + "\\s+" + N + "\\b.*");
    private static final Pattern BEND = Pattern.compile("^\\s*([A-Z])b(\\d+)\\s+(run|bend|hole)\\s?([A-Z]?b?)(\\d*)\\s+"
            + N + "\\s+" + N + "\\s+" + N + "\\s+" + N + "\\s+(left|right)\\s+" + N + " to " + N + "\\s*$");
    private static final Pattern ON_LINE = Pattern.compile(N + " to " + N + " run ([A-Z])(\\d+)");
    private static final Pattern MEET = Pattern.compile(N + " bends ([A-Z])b(\\d+) and [A-Z]b\\d+ meet");
    private static final Pattern SLANT_LINE =
            Pattern.compile("run ([A-Z])(\\d+)\\s+" + N + " / " + N + "\\s+" + N + " / " + N);
    private static final Pattern SLANT_MEET =
            Pattern.compile("bends ([A-Z])b(\\d+) and [A-Z]b\\d+ meet\\s+" + N + " / " + N);

    /** A place along and across, mm. */
    record Place(double along, double across) {
        double off(Place o) {
            return Math.hypot(along - o.along, across - o.across);
        }
    }

    /** The corners of a loop: where each run and each bend begins, then where the last one ends. */
    record Chain(List<Place> joints) {}

    private RebuiltLoop() {}

    /** From the tables of runs and bends; what they say twice must agree. */
    static NavigableMap<String, Chain> fromTables(String text) {
        NavigableMap<String, NavigableMap<Integer, Place[]>> runs = new TreeMap<>();
        NavigableMap<String, NavigableMap<Integer, Bend>> bends = new TreeMap<>();
        for (String line : text.lines().toList()) {
            Matcher run = RUN.matcher(line);
            Matcher slant = SLANT.matcher(line);
            Matcher bend = BEND.matcher(line);
            if (run.matches()) {
                double offset = number(run, 4);
                boolean along = run.group(3).equals("along");
                Place from = along ? new Place(number(run, 5), offset) : new Place(offset, number(run, 5));
                Place to = along ? new Place(number(run, 6), offset) : new Place(offset, number(run, 6));
                assertEquals(number(run, 7), from.off(to), 0.11, line);
                put(runs, run, new Place[] {from, to});
            } else if (slant.matches()) {
                put(runs, slant, new Place[] {
                    new Place(number(slant, 3), number(slant, 4)), new Place(number(slant, 5), number(slant, 6))
                });
            } else if (bend.matches()) {
                int after = bend.group(3).equals("run") ? Integer.parseInt(bend.group(5)) : 0;
                bends.computeIfAbsent(bend.group(1), k -> new TreeMap<>())
                        .put(
                                Integer.parseInt(bend.group(2)),
                                new Bend(
                                        bend.group(3),
                                        after,
                                        new Place(number(bend, 6), number(bend, 7)),
                                        number(bend, 8),
                                        number(bend, 9) * (bend.group(10).equals("left") ? 1 : -1),
                                        number(bend, 11),
                                        number(bend, 12)));
            }
        }
        NavigableMap<String, Chain> loops = new TreeMap<>();
        runs.forEach((name, its) -> loops.put(name, chain(its, bends.getOrDefault(name, new TreeMap<>()))));
        return loops;
    }

    private record Bend(String kind, int after, Place centre, double radius, double turn, double from, double to) {
        Place end(Place start) {
            double a = Math.toRadians(turn);
            double x = start.along - centre.along;
            double y = start.across - centre.across;
            return new Place(
                    centre.along + x * Math.cos(a) - y * Math.sin(a),
                    centre.across + x * Math.sin(a) + y * Math.cos(a));
        }
    }

    /** Each run, then the bends that follow it; the pipe's readings must grow as the pipe does. */
    private static Chain chain(NavigableMap<Integer, Place[]> runs, NavigableMap<Integer, Bend> bends) {
        List<Place> joints = new ArrayList<>();
        List<Bend> left = new ArrayList<>(bends.values());
        double metre = 0;
        Place at = null;
        for (int number = runs.firstKey(); number <= runs.lastKey(); number++) {
            Place[] run = runs.get(number);
            assertTrue(run != null, "run " + number + " is missing");
            if (at != null) {
                assertEquals(0, at.off(run[0]), 0.5, "begin of run " + number);
            }
            joints.add(run[0]);
            at = run[1];
            metre += run[0].off(run[1]);
            boolean first = true;
            while (!left.isEmpty()
                    && (first
                            ? left.get(0).kind.equals("run") && left.get(0).after == number
                            : left.get(0).kind.equals("bend"))) {
                Bend bend = left.remove(0);
                assertEquals(bend.radius, bend.centre.off(at), 0.5, "radius of the bend after run " + number);
                assertEquals(bend.from, metre / 1000, 0.0101, "pipe at the bend after run " + number);
                metre += bend.radius * Math.toRadians(Math.abs(bend.turn));
                assertEquals(bend.to, metre / 1000, 0.0101, "pipe at the end of the bend after run " + number);
                joints.add(at);
                at = bend.end(at);
                first = false;
            }
        }
        assertEquals(List.of(), left, "bends that follow nothing");
        joints.add(at);
        return new Chain(joints);
    }

    /** From the lines alone: which way a run goes and how bends lead on follows from tangents. */
    static NavigableMap<String, Chain> fromLines(String text) {
        int begin = text.indexOf("Lines to snap, and where runs begin");
        int end = text.indexOf("Runs in the order of flow");
        NavigableMap<String, NavigableMap<Integer, Place[]>> runs = new TreeMap<>();
        NavigableMap<String, NavigableMap<Integer, Meeting>> meets = new TreeMap<>();
        boolean along = true;
        boolean slant = false;
        double offset = 0;
        StringBuilder row = new StringBuilder();
        for (String line : text.substring(begin, end).lines().toList()) {
            if (line.contains("line along") || line.contains("line across") || line.contains("slanting")) {
                read(row, along, slant, offset, runs, meets);
                along = line.contains("line along");
                slant = line.contains("slanting");
            } else if (line.strip().startsWith("\u2610")) {
                read(row, along, slant, offset, runs, meets);
                String rest = line.strip().substring(1).strip();
                if (!slant) {
                    String[] parts = rest.split("\\s+", 2);
                    offset = Double.parseDouble(parts[0]);
                    rest = parts.length > 1 ? parts[1] : "";
                }
                row.append(rest).append(' ');
            } else if (row.length() > 0 && !line.contains("page ") && !line.isBlank()) {
                row.append(line.strip()).append(' ');
            }
        }
        read(row, along, slant, offset, runs, meets);
        NavigableMap<String, Chain> loops = new TreeMap<>();
        runs.forEach((name, its) -> loops.put(
                name,
                trace(
                        its,
                        new ArrayList<>(
                                meets.getOrDefault(name, new TreeMap<>()).values()))));
        return loops;
    }

    /** Where two bends meet, and the direction of pipe there if a line tells it. */
    private record Meeting(Place at, Place direction) {}

    private static void read(
            StringBuilder row,
            boolean along,
            boolean slant,
            double offset,
            NavigableMap<String, NavigableMap<Integer, Place[]>> runs,
            NavigableMap<String, NavigableMap<Integer, Meeting>> meets) {
        String text = row.toString().replaceAll("\\s+", " ");
        row.setLength(0);
        if (slant) {
            Matcher run = SLANT_LINE.matcher(text);
            while (run.find()) {
                put(runs, run, new Place[] {
                    new Place(number(run, 3), number(run, 4)), new Place(number(run, 5), number(run, 6))
                });
            }
            Matcher meet = SLANT_MEET.matcher(text);
            while (meet.find()) {
                meets.computeIfAbsent(meet.group(1), k -> new TreeMap<>())
                        .put(
                                Integer.parseInt(meet.group(2)),
                                new Meeting(new Place(number(meet, 3), number(meet, 4)), null));
            }
            return;
        }
        Matcher run = ON_LINE.matcher(text);
        while (run.find()) {
            Place from = along ? new Place(number(run, 1), offset) : new Place(offset, number(run, 1));
            Place to = along ? new Place(number(run, 2), offset) : new Place(offset, number(run, 2));
            runs.computeIfAbsent(run.group(3), k -> new TreeMap<>())
                    .put(Integer.parseInt(run.group(4)), new Place[] {from, to});
        }
        Matcher meet = MEET.matcher(text);
        while (meet.find()) {
            Place at = along ? new Place(number(meet, 1), offset) : new Place(offset, number(meet, 1));
            meets.computeIfAbsent(meet.group(2), k -> new TreeMap<>())
                    .put(Integer.parseInt(meet.group(3)), new Meeting(at, along ? new Place(1, 0) : new Place(0, 1)));
        }
    }

    private static Chain trace(NavigableMap<Integer, Place[]> runs, List<Meeting> meets) {
        List<Place[]> order = new ArrayList<>(runs.values());
        for (boolean turned : new boolean[] {false, true}) {
            List<Place> joints = new ArrayList<>();
            if (follow(order, 0, turned, meets, 0, joints)) {
                return new Chain(joints);
            }
        }
        throw new AssertionError("no way through " + order.size() + " runs and " + meets.size() + " meetings of bends");
    }

    private static boolean follow(
            List<Place[]> runs, int run, boolean turned, List<Meeting> meets, int meet, List<Place> joints) {
        Place from = runs.get(run)[turned ? 1 : 0];
        Place to = runs.get(run)[turned ? 0 : 1];
        joints.add(from);
        if (run == runs.size() - 1) {
            joints.add(to);
            return meet == meets.size();
        }
        if (onwards(runs, run, meets, meet, joints, to, unit(from, to))) {
            return true;
        }
        joints.remove(joints.size() - 1);
        return false;
    }

    /** From a place with a direction: the next run by one arc or none, or the next meeting by one arc. */
    private static boolean onwards(
            List<Place[]> runs, int run, List<Meeting> meets, int meet, List<Place> joints, Place at, double[] way) {
        for (boolean turned : new boolean[] {false, true}) {
            Place next = runs.get(run + 1)[turned ? 1 : 0];
            Place beyond = runs.get(run + 1)[turned ? 0 : 1];
            boolean straight = next.off(at) < 0.2;
            double[] then = straight ? way : arrival(at, way, next);
            if (isAlike(then, unit(next, beyond))) {
                int size = joints.size();
                if (!straight) {
                    joints.add(at);
                }
                if (follow(runs, run + 1, turned, meets, meet, joints)) {
                    return true;
                }
                while (joints.size() > size) {
                    joints.remove(joints.size() - 1);
                }
            }
        }
        if (meet < meets.size()) {
            Meeting m = meets.get(meet);
            double[] then = arrival(at, way, m.at);
            if (m.direction == null || isAlike(then, array(m.direction, 1)) || isAlike(then, array(m.direction, -1))) {
                joints.add(at);
                if (onwards(runs, run, meets, meet + 1, joints, m.at, then)) {
                    return true;
                }
                joints.remove(joints.size() - 1);
            }
        }
        return false;
    }

    /** Direction at the end of the arc that leaves a place in a direction and comes to another: the first one mirrored in the chord. */
    private static double[] arrival(Place at, double[] way, Place to) {
        double[] chord = unit(at, to);
        double dot = chord[0] * way[0] + chord[1] * way[1];
        return new double[] {2 * dot * chord[0] - way[0], 2 * dot * chord[1] - way[1]};
    }

    private static boolean isAlike(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] > 0.9995;
    }

    private static double[] array(Place p, int sign) {
        return new double[] {sign * p.along, sign * p.across};
    }

    private static double[] unit(Place a, Place b) {
        double length = a.off(b);
        return new double[] {(b.along - a.along) / length, (b.across - a.across) / length};
    }

    private static void put(NavigableMap<String, NavigableMap<Integer, Place[]>> runs, Matcher m, Place[] run) {
        runs.computeIfAbsent(m.group(1), k -> new TreeMap<>()).put(Integer.parseInt(m.group(2)), run);
    }

    private static double number(Matcher m, int group) {
        return Double.parseDouble(m.group(group));
    }
}
