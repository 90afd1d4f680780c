package org.runbend.export.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.ledger.PostgresServer;
import org.runbend.export.ChildRun;
import org.runbend.export.CommandRun;
import org.runbend.export.bench.FloorsBench;
import org.runbend.export.cli.Runbend;

/**
 * Real floors over real workers, two of four killed while they lay: {@code -Drelay.floors=40} lays so many. With
 * {@code -Drelay.clocks=10m} the clocks of the others are so much late and early (needs the program faketime).
 */
@EnabledIfSystemProperty(named = "relay.floors", matches = "\\d+")
class LostWorkersTest {
    private static final int FLOORS = Integer.getInteger("relay.floors", 40);
    private static final String CLOCKS = System.getProperty("relay.clocks", "");
    private static final int WORKERS = 4;

    @TempDir
    Path folder;

    private final List<Process> workers = new ArrayList<>();
    private final Random dice = new Random(5);
    private CompletableFuture<CommandRun> batch = new CompletableFuture<>();

    /** Tells the time of its machine, as a worker there sees it. */
    static final class Clock {
        @SuppressWarnings("SystemOut") // who started it listens
        public static void main(String[] args) {
            System.out.println(System.currentTimeMillis());
        }
    }

    private Path orders() throws IOException {
        Path orders = Files.createDirectories(folder.resolve("orders"));
        Files.copy(Path.of("../examples/workshop.yaml"), folder.resolve("workshop.yaml"));
        Random floors = new Random(20);
        for (int i = 0; i < FLOORS; i++) {
            Files.writeString(
                    orders.resolve("o" + i + ".yaml"), FloorsBench.text(Path.of("../workshop.yaml"), i, floors));
        }
        return orders;
    }

    /** What stands before the words of a worker, so that its clock is wrong. */
    private static List<String> under(int worker) {
        return CLOCKS.isEmpty() || worker < 2
                ? List.of()
                : List.of(
                        "env",
                        "FAKETIME_DONT_FAKE_MONOTONIC=1",
                        "FAKETIME_FORCE_MONOTONIC_FIX=0", // else waits of a JVM end at once
                        "faketime",
                        "-f",
                        (worker == 2 ? "+" : "-") + CLOCKS);
    }

    private Path said(int worker) {
        return folder.resolve("worker-" + worker + ".txt");
    }

    private void start(List<String> stock) throws IOException, InterruptedException {
        for (int i = 0; i < WORKERS; i++) {
            if (!under(i).isEmpty()) {
                Path told = folder.resolve("clock.txt");
                assertEquals(
                        0,
                        ChildRun.start(told, under(i), Clock.class, List.of()).waitFor());
                long wrong = Long.parseLong(Files.readString(told).strip()) - System.currentTimeMillis();
                assertTrue(Math.abs(wrong) > 60_000, "the clock is wrong by " + wrong + " ms");
                report("worker " + i + " has a clock that is wrong by " + wrong + " ms");
            }
            List<String> words = new ArrayList<>(List.of("worker", "--threads", "1"));
            words.addAll(stock);
            workers.add(ChildRun.start(said(i), under(i), Runbend.class, words));
        }
        for (int i = 0; i < WORKERS; i++) {
            waitFor(i, "waiting for floors");
        }
    }

    private void waitFor(int worker, String word) throws IOException, InterruptedException {
        while (!Files.readString(said(worker)).contains(word)) {
            assertTrue(
                    workers.get(worker).isAlive() && !batch.isDone(), () -> "too late for '" + word + "' of " + worker);
            Thread.sleep(20);
        }
    }

    @SuppressWarnings("SystemOut") // who asks for it wants to know
    private static void report(String figures) {
        System.out.println(figures);
    }

    private CommandRun run(String words, List<String> stock) {
        List<String> all = new ArrayList<>(List.of(words.split(" ", -1)));
        all.addAll(stock);
        return CommandRun.of(all.toArray(String[]::new));
    }

    @Test
    void noneIsLostAndNoneIsLaidTwice() throws Exception {
        Path orders = orders();
        try (PostgresServer server = PostgresServer.start()) {
            String url = server.database();
            Path password = Files.writeString(folder.resolve("pw"), PostgresServer.USER);
            List<String> stock = List.of("--stock", url, "--password-file", password.toString());
            assertEquals(0, run("stock init", stock).code());
            start(stock);
            server.psql(PostgresServer.name(url), """
                    CREATE TABLE laid (floor text, worker text, attempts int);
                    CREATE FUNCTION note() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN
                      INSERT INTO laid VALUES (NEW.floor, NEW.worker, NEW.attempts); RETURN NEW; END $$;
                    CREATE TRIGGER noted AFTER UPDATE OF answers ON runbend_relay.floors FOR EACH ROW
                      WHEN (NEW.answers IS NOT NULL) EXECUTE FUNCTION note();
                    """);
            String shared = "batch " + orders + " --out " + folder.resolve("shared") + " --day monday --laid "
                    + folder.resolve("laid-1") + " --workers";
            batch = CompletableFuture.supplyAsync(() -> run(shared, stock));
            killTwo();
            CommandRun done = batch.get();
            check(orders, done, url);
        } finally {
            workers.forEach(w -> w.descendants().forEach(ProcessHandle::destroyForcibly));
            workers.forEach(w -> w.toHandle().destroyForcibly());
        }
    }

    /** Each once it has laid a floor and, most likely, begun another. */
    private void killTwo() throws IOException, InterruptedException {
        for (int i = 0; i < 2; i++) {
            waitFor(i, "laid a floor");
            Thread.sleep(dice.nextInt(400));
            workers.get(i).toHandle().destroyForcibly();
            workers.get(i).waitFor();
        }
    }

    private void check(Path orders, CommandRun shared, String url)
            throws IOException, SQLException, InterruptedException, ExecutionException {
        CommandRun alone = run(
                "batch " + orders + " --out " + folder.resolve("alone") + " --day monday --laid "
                        + folder.resolve("laid-2"),
                List.of());
        assertEquals(alone.code(), shared.code(), shared::err);
        assertEquals(alone.err(), shared.err());
        assertTrue(shared.out().contains(" 0 of them laid anew"), shared::out);
        Set<String> kits = new TreeSet<>();
        try (var folders = Files.list(folder.resolve("alone/orders"))) {
            folders.map(f -> f.getFileName().toString())
                    .filter(f -> !f.startsWith("."))
                    .forEach(kits::add);
        }
        for (String kit : kits) {
            assertEquals(
                    Files.readString(folder.resolve("alone/orders/" + kit + "/kit.json")),
                    Files.readString(folder.resolve("shared/orders/" + kit + "/kit.json")));
        }
        try (Connection connection = DriverManager.getConnection(url, PostgresServer.USER, PostgresServer.USER);
                Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery("SELECT COUNT(*), COUNT(DISTINCT floor), COUNT(DISTINCT worker),"
                                + " COUNT(*) FILTER (WHERE attempts > 1), MAX(attempts) FROM laid")) {
            rows.next();
            report(rows.getInt(1) + " answers for " + rows.getInt(2) + " floors by " + rows.getInt(3) + " workers, "
                    + rows.getInt(4) + " of them at a second or third attempt; " + kits.size() + " kits");
            assertEquals(rows.getInt(1), rows.getInt(2), "no floor has two answers");
            assertTrue(rows.getInt(4) > 0, "somebody was killed in the middle of a floor");
        }
    }
}
