package org.runbend.export.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.ledger.PostgresServer;
import org.runbend.export.CommandRun;

/** A day laid with workers is the day laid alone. */
class WorkersDayTest {
    @TempDir
    Path folder;

    private Path orders() throws IOException {
        Path orders = Files.createDirectories(folder.resolve("shop/orders"));
        Files.copy(Path.of("../examples/workshop.yaml"), folder.resolve("shop/workshop.yaml"));
        for (int i = 1; i <= 3; i++) {
            Files.writeString(
                    orders.resolve("o" + i + ".yaml"), """
                    job: Locker %d
                    order: L-%d
                    catalog: ../workshop.yaml
                    floor:
                      outline: [[0, 0], [%d, 0], [%d, 700], [0, 700]]
                      port: {at: [0, 350]}
                    pipe: {product: PX-16}
                    plates: {product: SP-1}
                    """.formatted(i, i, 900 + 150 * (i / 2), 900 + 150 * (i / 2)));
        }
        Files.writeString(orders.resolve("o4.yaml"), """
                job: Too small
                order: L-4
                catalog: ../workshop.yaml
                floor:
                  outline: [[0, 0], [120, 0], [120, 110], [0, 110]]
                  port: {at: [0, 50]}
                pipe: {product: PX-16}
                plates: {product: SP-1}
                """);
        return orders;
    }

    private CommandRun batch(Path orders, String day, String... more) {
        String[] words = {
            "batch",
            orders.toString(),
            "--out",
            folder.resolve(day).toString(),
            "--day",
            "monday",
            "--laid",
            folder.resolve("laid-" + day).toString()
        };
        String[] all = new String[words.length + more.length];
        System.arraycopy(words, 0, all, 0, words.length);
        System.arraycopy(more, 0, all, words.length, more.length);
        return CommandRun.of(all);
    }

    @Test
    void sameDayWithWorkers() throws IOException {
        Path orders = orders();
        CommandRun alone = batch(orders, "alone");
        assertEquals(1, alone.code(), alone::err);
        try (PostgresServer server = PostgresServer.start()) {
            String url = server.database();
            Path password = folder.resolve("pw");
            Files.writeString(password, PostgresServer.USER);
            String[] stock = {"--stock", url, "--password-file", password.toString()};
            assertEquals(
                    0,
                    CommandRun.of("stock", "init", stock[0], stock[1], stock[2], stock[3])
                            .code());
            CommandRun shared = batch(orders, "shared", "--workers", stock[0], stock[1], stock[2], stock[3]);
            assertEquals(1, shared.code(), shared::err);
            assertEquals(alone.err(), shared.err());
            assertTrue(
                    shared.out().contains("3 orders, 3 different floors, 0 of them laid anew, 1 left out"),
                    shared::out);
            for (int i = 1; i <= 3; i++) {
                assertEquals(
                        Files.readString(folder.resolve("alone/orders/L-" + i + "/kit.json")),
                        Files.readString(folder.resolve("shared/orders/L-" + i + "/kit.json")));
            }
            CommandRun idle = CommandRun.of("worker", "--idle", "1", stock[0], stock[1], stock[2], stock[3]);
            assertEquals(0, idle.code(), idle::err);
            assertTrue(idle.out().startsWith("waiting for floors"), idle::out);
        }
    }

    @Test
    void workersNeedADatabase() throws IOException {
        CommandRun file = batch(
                orders(),
                "file",
                "--workers",
                "--stock",
                folder.resolve("shelf.db").toString());
        assertEquals(2, file.code());
        assertEquals(
                "--stock: " + folder.resolve("shelf.db")
                        + " is a file; workers meet in a database, jdbc:postgresql://...",
                file.err().strip());
        assertEquals(2, CommandRun.of("worker", "--threads", "0").code());
    }
}
