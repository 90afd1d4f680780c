package org.runbend.export.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;

/** Pipe that goes into the box as a whole coil, and unopened coils on the shelf in a length that the catalog does not list. */
class UnopenedCoilsTest {
    @TempDir
    Path folder;

    private String shelf;

    @BeforeEach
    void shelf() {
        shelf = folder.resolve("shelf.db").toString();
        stock("init");
    }

    private String stock(String command) {
        List<String> words = new ArrayList<>(List.of("stock"));
        words.addAll(List.of(command.split(" ", -1)));
        words.addAll(List.of("--stock", shelf));
        CommandRun run = CommandRun.of(words.toArray(String[]::new));
        assertEquals(0, run.code(), run::err);
        return run.out();
    }

    private Path job(Path folder, String order) throws IOException {
        Files.createDirectories(folder);
        Files.copy(Path.of("../examples/workshop.yaml"), folder.resolve("workshop.yaml"));
        String closet = Files.readString(Path.of("../examples/closet.yaml"));
        return Files.writeString(folder.resolve("1.yaml"), closet.replace("KC-2035", order));
    }

    /** The loop is cut from the coil that lies there, by the metre; what is left has an id. */
    @Test
    void planned() throws IOException {
        stock("receive coil PX-10 35m 1");
        stock("receive plate SP-10 1000 9");
        stock("receive coil PX-10 20m 1"); // listed: it costs what a new one costs
        Path job = job(folder.resolve("jobs"), "HF-1");
        String kit = folder.resolve("kit").toString();
        CommandRun plan = CommandRun.of("plan", job.toString(), "--stock", shelf, "--out", kit, "--quiet");
        assertTrue(plan.code() < 2, plan::err);
        JsonIn coil = JsonIn.read(Path.of(kit, "kit.json")).at("coils").list().get(0);
        assertEquals("whole 35 m", coil.at("id").text());
        assertEquals("shelf", coil.at("restGoesTo").text());
        stock("reserve " + kit);
        String cut = stock("confirm " + kit);
        assertTrue(cut.contains("on the shelf: opened coil C1 (PX-10), "), cut);
        String left = stock("list --csv");
        assertTrue(left.contains("opened,C1,PX-10,"), left);
        assertTrue(left.contains("coil,,PX-10,20000"), left);
        assertFalse(left.contains("35000"), left);
        String box = JsonIn.read(Path.of(kit, "kit.json")).at("items").list().stream()
                .filter(i -> i.at("sku").text().equals("PX-10"))
                .map(i -> i.at("name").text())
                .findFirst()
                .orElseThrow();
        assertTrue(box.matches(".*, cut of [0-9.]+ m from a coil of 35 m, the rest stays in the workshop"), box);
    }

    /** One coil lies there for two orders: one of them is cut from it, the other gets a whole one that is bought. */
    @Test
    void ofADay() throws IOException {
        stock("receive coil PX-10 19m 1");
        Path orders = folder.resolve("orders");
        Path first = job(orders, "HF-1");
        Files.writeString(orders.resolve("2.yaml"), Files.readString(first).replace("HF-1", "HF-2"));
        Path day = folder.resolve("monday");
        for (String again : List.of("", " --resume")) {
            String words = "batch " + orders + " --stock " + shelf + " --out " + day + " --laid "
                    + folder.resolve("laid") + again;
            CommandRun batch = CommandRun.of(words.split(" ", -1));
            assertEquals(0, batch.code(), batch::err);
            List<JsonIn> coils = JsonIn.read(day.resolve("day.json")).at("stock").list().stream()
                    .filter(s -> s.at("kind").text().equals("coil"))
                    .toList();
            List<String> told = coils.stream()
                    .map(c -> c.at("cuts").list().get(0).at("order").text() + " "
                            + (int) c.at("length").number() + " "
                            + c.at("restGoesTo").text())
                    .toList();
            assertEquals(List.of("HF-1 19000 shelf", "HF-2 10000 customer"), told);
            String buy = Files.readString(day.resolve("buy-list.csv"));
            assertTrue(buy.contains("coil,PX-10,10000,1,0,1,"), buy);
            assertTrue(buy.contains("coil,PX-10,19000,1,1,0,"), buy);
        }
        JsonIn kit = JsonIn.read(day.resolve("orders").resolve("HF-1").resolve("kit.json"));
        assertEquals("whole 19 m", kit.at("coils").list().get(0).at("id").text());
        assertTrue(stock("orders --csv").contains("HF-1,confirmed,"));
    }
}
