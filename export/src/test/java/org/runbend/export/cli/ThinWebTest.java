package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;

/** Material between two channels that is thinner than the catalog allows is said, on the terminal and in kit.json. */
class ThinWebTest {
    @TempDir
    Path folder;

    /**
     * Teeth, worked by hand. Pads of 32 mm at the ends of runs that lie 160 mm apart leave 128 mm; runs 145 mm apart, in
     * channels as wide as at bends, 16 + 4 mm, leave 125 mm.
     */
    @ParameterizedTest
    @CsvSource({
        "'[80, 100], [1000, 100], [1000, 260], [80, 260]', 129, warn, 128",
        "'[80, 100], [1000, 100], [1000, 260], [80, 260]', 127, ok, 128",
        "'[80, 100], [1100, 100], [1100, 550], [955, 550], [955, 260], [80, 260]', 126, warn, 125",
        "'[80, 100], [1100, 100], [1100, 550], [955, 550], [955, 260], [80, 260]', 124, ok, 125"
    })
    void isSaid(String loop, int least, String verdict, double web) throws IOException {
        String shop = Files.readString(Path.of("..", "examples", "workshop.yaml"));
        assertTrue(shop.contains("leastWeb: 10,"));
        Files.writeString(folder.resolve("shop.yaml"), shop.replace("leastWeb: 10,", "leastWeb: " + least + ","));
        Path job = Files.writeString(folder.resolve("job.yaml"), """
                job: Tooth
                order: T-1
                catalog: shop.yaml
                floor: {outline: [[0, 0], [1200, 0], [1200, 900], [0, 900]], port: {at: [0, 180]}}
                layout: {spacing: 145, loop: [%s]}
                pipe: {product: PX-16}
                plates: {product: SP-1, coverage: 0%%}
                """.formatted(loop));
        CommandRun run = CommandRun.of(
                "plan", job.toString(), "--out", folder.resolve("kit").toString());
        assertEquals(0, run.code(), run::err);
        List<JsonIn> checks = JsonIn.read(folder.resolve("kit").resolve("kit.json"))
                .at("checks")
                .list();
        JsonIn check = checks.stream()
                .filter(c -> c.at("name").text().equals("least web between channels"))
                .findFirst()
                .orElseThrow();
        assertEquals(verdict, check.at("verdict").text());
        assertEquals(web, check.at("value").number(), 0.05);
        assertEquals(
                verdict.equals("warn"),
                run.out().lines().anyMatch(l -> l.startsWith("warn  least web between channels: ")),
                run.out());
    }
}
