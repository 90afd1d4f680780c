package org.runbend.export.relay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.PostgresServer;

/** Floors over a real PostgreSQL server: none is lost, none is laid for nothing, whatever becomes of workers. */
@SuppressWarnings("try") // a worker is there to be closed
class RelayTest {
    private static final int FLOORS = 200;
    private static final int WORKERS = 4;

    private static PostgresServer server;

    @BeforeAll
    static void start() throws IOException {
        server = PostgresServer.start();
    }

    @AfterAll
    static void stop() throws IOException {
        if (server != null) {
            server.close();
        }
    }

    private final List<Relay> open = new ArrayList<>();

    @AfterEach
    void closeAll() {
        open.forEach(Relay::close);
    }

    static Relay relay(String url, String version) {
        return Relay.open(url, RelayProcess.login(url, PostgresServer.USER), version, Duration.ofMillis(500));
    }

    private Relay relay(String url) {
        open.add(relay(url, "test"));
        return open.get(open.size() - 1);
    }

    private static Map<String, FloorText> floors(int many) {
        Map<String, FloorText> floors = new TreeMap<>();
        for (int i = 0; i < many; i++) {
            floors.put("floor-" + i, new FloorText("job-" + i, Map.of("job-" + i, new byte[] {(byte) i, 0, -1})));
        }
        return floors;
    }

    private static Map<String, Relay.Result> wait(Relay relay, String batch, int many) throws InterruptedException {
        for (int i = 0; ; i++) {
            Map<String, Relay.Result> results = relay.results(batch, Set.of());
            if (results.size() >= many) {
                return results;
            }
            assertTrue(i < 1200, results.size() + " of " + many + " floors after two minutes");
            Thread.sleep(100);
        }
    }

    private static Process worker(String url, String name) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Xmx128m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        RelayProcess.class.getName(),
                        url,
                        name,
                        "60")
                .redirectErrorStream(true)
                .start();
    }

    /** Two of four workers are killed once each of them has laid a floor: every floor has its one answer all the same. */
    @Test
    void killedWorkersLoseNothing() throws Exception {
        String url = server.database();
        Relay relay = relay(url);
        relay.put("monday", floors(FLOORS));
        List<Process> workers = new ArrayList<>();
        try {
            for (int i = 0; i < WORKERS; i++) {
                workers.add(worker(url, "worker-" + i));
            }
            for (Process killed : workers.subList(0, 2)) {
                BufferedReader said = killed.inputReader(StandardCharsets.UTF_8);
                assertEquals("laid a floor of monday", said.readLine());
                killed.destroyForcibly();
            }
            Map<String, Relay.Result> results = wait(relay, "monday", FLOORS);
            for (int i = 0; i < FLOORS; i++) {
                Relay.Result result = results.get("floor-" + i);
                assertEquals(Optional.empty(), result.fault());
                assertEquals(Set.of("job-" + i), result.answers().keySet());
            }
            assertEquals(FLOORS, results.size());
            relay.forget("monday");
            assertEquals(Map.of(), relay.results("monday", Set.of()));
        } finally {
            workers.forEach(Process::destroyForcibly);
        }
    }

    /** Handed over twice, as after a crash of the batch, a floor is laid once; another batch's floors are its own. */
    @Test
    void aBatchCanBeginAgain() throws Exception {
        Relay relay = relay(server.database());
        AtomicInteger laid = new AtomicInteger();
        relay.put("a%b", floors(5));
        relay.put("a_b", floors(2));
        try (Relay.Worker worker =
                relay.work(2, "one", floor -> Map.of(floor.job(), "" + laid.incrementAndGet()), word -> {})) {
            wait(relay, "a%b", 5);
            wait(relay, "a_b", 2);
            relay.put("a%b", floors(6));
            assertEquals(6, wait(relay, "a%b", 6).size());
            relay.put("last", floors(1)); // when it is done, the five others were looked at and left
            wait(relay, "last", 1);
        }
        assertEquals(9, laid.get());
        relay.forget("a_b");
        assertEquals(6, relay.results("a%b", Set.of()).size());
        assertEquals(5, relay.results("a%b", Set.of("floor-3")).size());
    }

    /** What fails three times is given up, with the reason; what fails twice is laid. */
    @Test
    void threeAttempts() throws Exception {
        Relay relay = relay(server.database());
        AtomicInteger attempts = new AtomicInteger();
        relay.put("bad", floors(1));
        try (Relay.Worker worker = relay.work(
                1,
                "one",
                floor -> {
                    throw new IllegalStateException("attempt " + attempts.incrementAndGet());
                },
                word -> {})) {
            Relay.Result result = wait(relay, "bad", 1).get("floor-0");
            assertEquals(Optional.of("attempt 3"), result.fault());
            assertEquals(Map.of(), result.answers());
        }
        relay.put("shaky", floors(1));
        AtomicInteger shaky = new AtomicInteger();
        try (Relay.Worker worker = relay.work(
                1,
                "two",
                floor -> {
                    if (shaky.incrementAndGet() < 3) {
                        throw new IOException("not yet");
                    }
                    return Map.of("k", "v");
                },
                word -> {})) {
            assertEquals(
                    Map.of("k", "v"), wait(relay, "shaky", 1).get("floor-0").answers());
        }
    }

    /** A worker of another version leaves floors alone. */
    @Test
    void versionsDoNotMix() throws Exception {
        String url = server.database();
        Relay relay = relay(url);
        Relay other = relay(url, "newer");
        open.add(other);
        relay.put("old", floors(1));
        other.put("new", floors(1));
        try (Relay.Worker worker = other.work(1, "newer", floor -> Map.of("by", "newer"), word -> {})) {
            wait(other, "new", 1);
            assertEquals(Map.of(), relay.results("old", Set.of()));
        }
        try (Relay.Worker worker = relay.work(1, "older", floor -> Map.of("by", "older"), word -> {})) {
            assertEquals(
                    Map.of("by", "older"), wait(relay, "old", 1).get("floor-0").answers());
        }
    }

    /** The time is the server's, however wrong this machine's clock is. */
    @Test
    void timeIsTheServers() {
        AtomicReference<Instant> server = new AtomicReference<>(Instant.EPOCH);
        ServerClock clock = new ServerClock(server::get);
        Instant first = clock.now();
        assertTrue(!first.isBefore(Instant.EPOCH) && first.isBefore(Instant.EPOCH.plusSeconds(60)), first::toString);
        assertTrue(!clock.now().isBefore(first));
        assertTrue(new ServerClock(() -> Instant.EPOCH.plusSeconds(600)).now().isAfter(first));
    }

    @Test
    void noServerIsOneLine() {
        LedgerRefused refused = assertThrows(
                LedgerRefused.class, () -> relay("jdbc:postgresql://127.0.0.1:1/shelf?user=" + PostgresServer.USER));
        assertTrue(
                refused.getMessage().startsWith("jdbc:postgresql://127.0.0.1:1/shelf: floors cannot be handed over ("),
                refused::getMessage);
        assertEquals(1, refused.getMessage().lines().count());
    }
}
