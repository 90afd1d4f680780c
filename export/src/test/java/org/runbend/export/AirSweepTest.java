package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Sweeps cutter and plates over seeded floors: regions of JTS, made from kit.json alone, against the things that the test
 * itself put on the floor. What is cut stays off every thing and wall, and the air is what the plan's checks say.
 */
class AirSweepTest {
    private static final GeometryFactory SHAPES = new GeometryFactory();
    private static final int FLOORS = Integer.getInteger("sweep.floors", 8);
    /** Chords of half a degree of arcs and of 32 a quarter round things of up to 200 mm. */
    private static final double CHORDS = 0.15;

    @TempDir
    Path folder;

    /** A thing on the floor: its words in the job, and its bare shape. */
    private record Thing(String words, Geometry shape) {}

    private static Geometry disc(double x, double y, double radius) {
        return SHAPES.createPoint(new Coordinate(x, y)).buffer(radius, 32);
    }

    private static Geometry box(double x, double y, double w, double h) {
        return SHAPES.createPolygon(new Coordinate[] {
            new Coordinate(x, y),
            new Coordinate(x + w, y),
            new Coordinate(x + w, y + h),
            new Coordinate(x, y + h),
            new Coordinate(x, y)
        });
    }

    private static Thing thing(Random random, int width, int height) {
        int x = 250 + random.nextInt(width - 400);
        int y = 150 + random.nextInt(height - 300);
        String clearance =
                random.nextInt(3) == 0 ? ", clearance: " + List.of(0, 20, 70).get(random.nextInt(3)) : "";
        return switch (random.nextInt(5)) {
            case 0 -> new Thing(words("bolt, point: [%d, %d]", x, y) + clearance, disc(x, y, 15));
            case 1 -> new Thing(words("anchor, point: [%d, %d]", x, y) + clearance, disc(x, y, 40));
            case 2 -> new Thing(words("vent, point: [%d, %d]", x, y) + clearance, disc(x, y, 5));
            case 3 -> {
                int r = 15 + random.nextInt(60);
                yield new Thing(
                        words("drain, circle: {centre: [%d, %d], radius: %d}", x, y, r) + clearance, disc(x, y, r));
            }
            default ->
                new Thing(
                        words(
                                        "pillar, polygon: [[%d, %d], [%d, %d], [%d, %d], [%d, %d]]",
                                        x, y, x + 90, y, x + 90, y + 60, x, y + 60)
                                + clearance,
                        box(x, y, 90, 60));
        };
    }

    private static String words(String format, Object... numbers) {
        return String.format(Locale.ROOT, format, numbers);
    }

    @Test
    void whatIsCutKeepsOffThingsAndWalls() throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        int swept = 0;
        for (int seed = 0; seed < FLOORS; seed++) {
            Random random = new Random(seed);
            int width = 1500 + 300 * random.nextInt(4);
            int height = 1200 + 150 * random.nextInt(4);
            List<Thing> things = new ArrayList<>();
            for (int i = random.nextInt(4); i > 0; i--) {
                things.add(thing(random, width, height));
            }
            Path job = Files.writeString(folder.resolve("job" + seed + ".yaml"), job(random, width, height, things));
            Path out = folder.resolve("kit" + seed);
            CommandRun run = CommandRun.of("plan", job.toString(), "--out", out.toString(), "--quiet");
            assertTrue(run.code() <= 2, () -> run.err());
            if (run.code() < 2) {
                sweep(JsonIn.read(out.resolve("kit.json")), things, box(0, 0, width, height), "floor " + seed);
                swept++;
            }
        }
        assertTrue(swept >= FLOORS / 2, swept + " of " + FLOORS + " floors were planned");
    }

    private static String job(Random random, int width, int height, List<Thing> things) {
        StringBuilder keepOut = new StringBuilder();
        for (int i = 0; i < things.size(); i++) {
            keepOut.append(i > 0 ? ", " : "").append("{name: thing ").append(i).append(", kind: ");
            keepOut.append(things.get(i).words()).append('}');
        }
        int y = 300 + random.nextInt(height - 600);
        String holes =
                switch (random.nextInt(4)) {
                    case 0 -> words(", holes: [{flow: [60, %d], return: [60, %d]}]", y - 40, y + 40);
                    case 1 -> words(", holes: [{flow: [75, %d], return: [75, %d]}]", y - 75, y + 75);
                    default -> "";
                };
        String turn = holes.isEmpty() ? List.of("down", "up", "level").get(random.nextInt(3)) : "down";
        return "job: Swept\norder: S-1\ncatalog: workshop.yaml\nfloor:\n"
                + words("  outline: [[0, 0], [%d, 0], [%d, %d], [0, %d]]\n", width, width, height, height)
                + "  keepOut: [" + keepOut + "]\n"
                + words("  port: {at: [0, %d], reach: 400, turn: %s%s}\n", y, turn, holes)
                + "layout: {edge: " + List.of(75, 60, 40).get(random.nextInt(3)) + "}\n"
                + "pipe: {product: PX-16, tails: [900, 1100]}\nplates: {product: [SP-1, SP-2]}\nbuild: {insulation: 30}\n";
    }

    private static void sweep(JsonIn kit, List<Thing> things, Geometry floor, String name) {
        JsonIn channel = kit.at("channel");
        double half = channel.at("bendWidth").number() / 2;
        boolean wall = kit.at("port").at("turn").text().equals("level");
        List<Geometry> cut = new ArrayList<>();
        List<Geometry> inner = new ArrayList<>();
        for (JsonIn loop : kit.at("loops").list()) {
            List<JsonIn> elements = loop.at("elements").list();
            int first = (int) loop.at("leadIn").list().get(0).whole();
            int last = elements.size() - (int) loop.at("leadIn").list().get(1).whole();
            for (int i = 0; i < elements.size(); i++) {
                Geometry groove = line(elements.get(i)).buffer(half, 32);
                cut.add(groove);
                if (!wall || (i >= first && i < last)) {
                    inner.add(groove);
                }
            }
        }
        List<Geometry> slots = new ArrayList<>();
        for (JsonIn hole : kit.at("port").at("holes").list()) {
            Geometry slot = SHAPES.createLineString(new Coordinate[] {
                        at(hole.at("slot").at("from")), at(hole.at("slot").at("to"))
                    })
                    .buffer(hole.at("slot").at("width").number() / 2, 32);
            slots.add(slot);
            cut.add(slot);
            if (!wall) {
                Coordinate middle = at(hole.at("at"));
                Geometry pocket = disc(middle.x, middle.y, channel.at("pad").number() / 2);
                cut.add(pocket);
                inner.add(pocket);
                inner.add(slot);
            }
        }
        List<Geometry> bodies = bodies(kit);
        double groove = Double.POSITIVE_INFINITY;
        double plates = Double.POSITIVE_INFINITY;
        for (Thing thing : things) {
            for (Geometry g : cut) {
                assertTrue(g.intersection(thing.shape()).getArea() < 1, name + ": cut into " + thing.words());
                groove = Math.min(groove, g.distance(thing.shape()));
            }
            for (Geometry body : bodies) {
                assertTrue(body.intersection(thing.shape()).getArea() < 1, name + ": a plate on " + thing.words());
                plates = Math.min(plates, body.distance(thing.shape()));
            }
        }
        double edge = Double.POSITIVE_INFINITY;
        for (Geometry g : inner) {
            assertTrue(floor.buffer(0.01).covers(g), name + ": cut outside the floor");
            edge = Math.min(edge, g.distance(floor.getBoundary()));
        }
        for (Geometry body : bodies) {
            for (Geometry slot : slots) {
                assertTrue(body.intersection(slot).getArea() < 1, name + ": a plate over a slot");
            }
        }
        claims(kit, "least air between groove and things", groove, name);
        claims(kit, "least air between plates and things", plates, name);
        claims(kit, "least air between groove and outline", edge, name);
    }

    private static void claims(JsonIn kit, String check, double swept, String name) {
        for (JsonIn c : kit.at("checks").list()) {
            if (c.at("name").text().equals(check)) {
                assertEquals(swept, c.at("value").number(), CHORDS, name + ": " + check);
                return;
            }
        }
        assertEquals(Double.POSITIVE_INFINITY, swept, name + " does not say: " + check);
    }

    private static List<Geometry> bodies(JsonIn kit) {
        List<Geometry> bodies = new ArrayList<>();
        for (JsonIn piece : kit.at("plates").at("pieces").list()) {
            double length = piece.at("length").number();
            List<Coordinate[]> grooves = new ArrayList<>();
            for (JsonIn place : piece.at("runs").list()) {
                JsonIn run = kit.at("loops").list().get(0).at("elements").list().get((int)
                        place.at("element").whole());
                Coordinate a = at(run.at("from"));
                Coordinate b = at(run.at("to"));
                double from = place.at("from").number();
                grooves.add(new Coordinate[] {along(a, b, from), along(a, b, from + length)});
            }
            Coordinate[] line = grooves.get(0);
            if (grooves.size() > 1) {
                Coordinate[] other = grooves.get(1);
                boolean against = line[0].distance(other[0]) > line[0].distance(other[1]);
                line = new Coordinate[] {
                    middle(line[0], other[against ? 1 : 0]), middle(line[1], other[against ? 0 : 1])
                };
            }
            double half = piece.at("width").number() / 2;
            double nx = -(line[1].y - line[0].y) / length * half;
            double ny = (line[1].x - line[0].x) / length * half;
            bodies.add(SHAPES.createPolygon(new Coordinate[] {
                new Coordinate(line[0].x + nx, line[0].y + ny),
                new Coordinate(line[1].x + nx, line[1].y + ny),
                new Coordinate(line[1].x - nx, line[1].y - ny),
                new Coordinate(line[0].x - nx, line[0].y - ny),
                new Coordinate(line[0].x + nx, line[0].y + ny)
            }));
        }
        return bodies;
    }

    private static Coordinate along(Coordinate a, Coordinate b, double distance) {
        double share = distance / a.distance(b);
        return new Coordinate(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y));
    }

    private static Coordinate middle(Coordinate a, Coordinate b) {
        return new Coordinate((a.x + b.x) / 2, (a.y + b.y) / 2);
    }

    private static Coordinate at(JsonIn point) {
        return new Coordinate(point.list().get(0).number(), point.list().get(1).number());
    }

    private static Geometry line(JsonIn e) {
        Coordinate from = at(e.at("from"));
        Coordinate to = at(e.at("to"));
        if (e.at("kind").text().equals("run")) {
            return SHAPES.createLineString(new Coordinate[] {from, to});
        }
        Coordinate centre = at(e.at("centre"));
        double turn = e.at("turn").number();
        int steps = (int) Math.ceil(2 * Math.abs(turn)) + 1;
        double start = Math.atan2(from.y - centre.y, from.x - centre.x);
        Coordinate[] points = new Coordinate[steps + 1];
        for (int i = 0; i <= steps; i++) {
            double angle = start + Math.toRadians(turn) * i / steps;
            points[i] = new Coordinate(
                    centre.x + e.at("radius").number() * Math.cos(angle),
                    centre.y + e.at("radius").number() * Math.sin(angle));
        }
        return SHAPES.createLineString(points);
    }
}
