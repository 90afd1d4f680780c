package org.runbend.export.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;

/** One floor as eight customers send it: turned, mirrored and measured from elsewhere. */
class TurnedFloorsTest {
    /** x and y of the image by those of the floor: all eight of the square's symmetries. */
    private static final int[][] MATRICES = {
        {1, 0, 0, 1},
        {0, -1, 1, 0},
        {-1, 0, 0, -1},
        {0, 1, -1, 0},
        {-1, 0, 0, 1},
        {1, 0, 0, -1},
        {0, 1, 1, 0},
        {0, -1, -1, 0}
    };

    private static final int[][] OUTLINE = {{0, 0}, {1300, 0}, {1300, 800}, {900, 800}, {900, 1100}, {0, 1100}};

    @TempDir
    Path folder;

    private static String job(int image) {
        int[] m = MATRICES[image];
        List<String> corners = new ArrayList<>();
        for (int[] c : OUTLINE) {
            corners.add(place(m, image, c));
        }
        return String.format(
                Locale.ROOT,
                """
                job: Image %d
                order: T-%d
                catalog: workshop.yaml
                floor:
                  outline: [%s]
                  keepOut: [{name: post, kind: pillar, circle: {centre: %s, radius: 40}, clearance: 40}]
                  port: {at: %s}
                layout: {spacing: 150}
                pipe: {product: PX-16}
                plates: {product: SP-1}
                """,
                image,
                image,
                String.join(", ", corners),
                place(m, image, new int[] {620, 430}),
                place(m, image, new int[] {0, 500}));
    }

    private static String place(int[] m, int image, int[] at) {
        int x = m[0] * at[0] + m[1] * at[1] + 137 * image;
        int y = m[2] * at[0] + m[3] * at[1] - 61 * image;
        return "[" + x + ", " + y + "]";
    }

    private Path orders(int images) throws IOException {
        Path orders = Files.createDirectory(folder.resolve("orders-" + images));
        Files.copy(Path.of("../examples/workshop.yaml"), orders.resolve("workshop.yaml"));
        for (int i = 0; i < images; i++) {
            Files.writeString(orders.resolve("o" + i + ".yaml"), job(i));
        }
        return orders;
    }

    private CommandRun batch(Path orders, String day) {
        CommandRun run = CommandRun.of(
                "batch",
                orders.toString(),
                "--out",
                folder.resolve(day).toString(),
                "--laid",
                folder.resolve("laid").toString());
        assertEquals(0, run.code(), run::err);
        return run;
    }

    private JsonIn kit(String day, int image) throws IOException {
        return JsonIn.read(folder.resolve(day).resolve("orders/T-" + image).resolve("kit.json"));
    }

    /**
     * Which end of the port is flow does not turn with the floor, nor which of equally good places of the lattice is taken, so that
     * two or three loops are laid for six images. All kits have the same pipe and pieces of plate, and a kit is the same whether its loop was laid, known from an image, or kept for another day.
     */
    @Test
    void imagesAreLaidOnce() throws IOException {
        CommandRun first = batch(orders(6), "first");
        int laid = Integer.parseInt(first.out().replaceAll("(?s).*floors, (\\d+) of them laid anew.*", "$1"));
        assertTrue(laid >= 1 && laid <= 3, first::out);
        Set<String> kits = new HashSet<>();
        for (int i = 0; i < 6; i++) {
            JsonIn kit = kit("first", i);
            kits.add(kit.at("loops").list().get(0).at("cutLength").number() + " "
                    + kit.at("plates").at("pieces").list().stream()
                            .map(p -> String.valueOf(p.at("length").number()))
                            .sorted()
                            .collect(Collectors.joining(" ")));
        }
        assertEquals(1, kits.size(), kits::toString);
        String whole = Files.readString(folder.resolve("first/orders/T-3/kit.json"));
        assertTrue(batch(orders(4), "kept").out().contains("4 different floors, 0 of them laid anew"));
        assertEquals(whole, Files.readString(folder.resolve("kept/orders/T-3/kit.json")));
        // damaged answers are none, and another day's do no harm
        try (Stream<Path> answers = Files.list(folder.resolve("laid"))) {
            for (Path a : answers.toList()) {
                byte[] bytes = Files.readAllBytes(a);
                bytes[bytes.length / 2] ^= 1;
                Files.write(a, bytes);
            }
        }
        Files.writeString(folder.resolve("laid/x"), "nothing of ours", StandardCharsets.UTF_8);
        assertTrue(!batch(orders(2), "anew").out().contains(" 0 of them laid anew"));
        whole = Files.readString(folder.resolve("first/orders/T-1/kit.json"));
        assertEquals(whole, Files.readString(folder.resolve("anew/orders/T-1/kit.json")));
    }
}
