package org.runbend.export.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.ChildRun;
import org.runbend.export.CommandRun;

/**
 * Every command that changes the ledger, killed at some moment and done again under the same request: its movement is there once
 * and everything adds up. {@code -Dcommand.kills=N} kills N of them.
 */
class StockKillTest {
    private static final int KILLS = Integer.getInteger("command.kills", 6);

    private static final String KIT = """
            {"contract": 2, "order": "ORDER", "fingerprint": "f-ORDER",
             "coils": [{"product": "PX-16", "length": 50000, "left": 31000, "cuts": [{"loop": "A", "length": 19000}]}],
             "plates": {"kerf": 3, "stock": [{"product": "SP-1", "length": 1200, "offcut": 394, "cuts": [400, 400]}]},
             "items": [{"sku": "EL-16", "quantity": 4}], "checks": []}
            """;

    @TempDir
    Path folder;

    private String shelf;
    private int requests;

    @Test
    void aKilledCommandIsDoneOnce() throws IOException, InterruptedException {
        shelf = folder.resolve("shelf.db").toString();
        assertEquals(0, CommandRun.of("stock", "init", "--stock", shelf).code());
        Random dice = new Random(9);
        int begun = 0;
        int kills = 0;
        for (int round = 0; kills < KILLS; round++) {
            for (List<String> command : round(round)) {
                boolean victim = kills < KILLS && dice.nextInt(3) == 0;
                List<String> words = words(command, "r" + requests++);
                int before = movements();
                if (victim) {
                    kills++;
                    begun += killed(words, dice) ? 1 : 0;
                    assertTrue(CommandRun.of("stock", "audit", "--stock", shelf)
                            .out()
                            .startsWith("All "));
                    int there = movements();
                    assertTrue(there == before || there == before + 1, command + ": " + before + ", " + there);
                }
                CommandRun again = CommandRun.of(words.toArray(String[]::new));
                assertEquals(0, again.code(), () -> command + ": " + again.err());
                assertEquals(before + 1, movements(), command::toString);
            }
        }
        assertTrue(CommandRun.of("stock", "audit", "--stock", shelf).out().startsWith("All "));
        assertTrue(begun > 0, "some were killed while they wrote");
    }

    /** Kills where the journal shows that it writes, or a little later, or at any moment; whether the journal was seen. */
    private boolean killed(List<String> words, Random dice) throws IOException, InterruptedException {
        Process process = ChildRun.start(folder.resolve("output.txt"), words);
        Path journal = Path.of(shelf + "-journal");
        boolean seen = false;
        if (dice.nextInt(4) > 0) {
            while (process.isAlive() && !seen) {
                seen = Files.exists(journal);
            }
            if (dice.nextBoolean()) {
                Thread.sleep(0, dice.nextInt(999_999));
            }
        } else {
            process.waitFor(dice.nextInt(2000), TimeUnit.MILLISECONDS);
        }
        process.toHandle().destroyForcibly();
        process.waitFor();
        return seen;
    }

    private List<String> words(List<String> command, String request) {
        List<String> words = new ArrayList<>(List.of("stock"));
        words.addAll(command);
        words.addAll(List.of("--stock", shelf, "--request", request));
        return words;
    }

    /** Each kind of movement once; words that follow from movements before are found out when they are wanted. */
    private Iterable<List<String>> round(int round) throws IOException {
        String order = "K-" + round;
        Path kit = Files.createDirectories(folder.resolve("kit" + round));
        Files.writeString(kit.resolve("kit.json"), KIT.replace("ORDER", order));
        Path note = Files.writeString(
                folder.resolve("note" + round + ".csv"),
                "kind,product,length,quantity\ncoil,PX-16,50 m,2\nplate,SP-1,1200,4\nitem,EL-16,," + (9 + round)
                        + "\n");
        List<String> steps = List.of(
                "receive --note " + note,
                "receive coil PX-16 50m 1",
                "quote " + kit,
                "reserve " + kit,
                "release " + order,
                "confirm " + kit,
                "spoil " + kit + " CUT",
                "pack " + order,
                "send " + order,
                "return " + order,
                "count item EL-16 " + (20 + round),
                "point item EL-16 --at " + (3 + round),
                "undo LAST");
        return () -> steps.stream().map(this::known).iterator();
    }

    private List<String> known(String step) {
        String words = step;
        if (step.endsWith(" LAST")) {
            words = step.replace("LAST", Integer.toString(movements()));
        } else if (step.endsWith(" CUT")) {
            String order = step.replaceAll(".*kit(\\d+) CUT", "K-$1");
            String cuts = CommandRun.of("stock", "orders", order, "--csv", "--stock", shelf)
                    .out();
            words = step.replace(
                    "CUT", cuts.lines().skip(1).findFirst().orElseThrow().replaceFirst(",.*", ""));
        }
        return List.of(words.split(" "));
    }

    private int movements() {
        return (int) CommandRun.of("stock", "history", "--csv", "--stock", shelf)
                .out()
                .lines()
                .skip(1)
                .map(l -> l.replaceFirst(",.*", ""))
                .distinct()
                .count();
    }
}
