package org.runbend.export.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.ledger.PostgresServer;
import org.runbend.export.ChildRun;
import org.runbend.export.CommandRun;

/**
 * Every command that changes the ledger, killed at some moment while the ledger is open: it opens again, the movement is there whole or
 * not at all, and the same words bring about what they had brought about unkilled, which a twin of the ledger tells.
 * {@code -Dledger.commands.kills=N} kills N commands on each kind of ledger.
 */
class CommandKillTest {
    private static final Integer ASKED = Integer.getInteger("ledger.commands.kills");
    private static final int ON_SQLITE = ASKED == null ? 6 : ASKED;
    private static final int ON_POSTGRES = ASKED == null ? 2 : ASKED;
    private static final int KILLED = 128 + 9;
    /** A statement with what is forced to the disk for it takes about so long. */
    private static final int JITTER = 4_000_000;

    private static final String INIT = "stock init --note NOTE LEDGER";

    private static final String BATCH = "batch --out ";

    private static final String KIT = """
            {"contract": 2, "order": "ORDER", "fingerprint": "f-ORDER",
             "coils": [{"product": "PX-16", "length": 50000, "left": 31000, "cuts": [{"loop": "A", "length": 19000}]}],
             "plates": {"kerf": 3, "stock": [{"product": "SP-1", "length": 1200, "offcut": 394, "cuts": [400, 400]}]},
             "items": [{"sku": "EL-16", "quantity": 4}], "checks": []}
            """;

    @TempDir
    Path folder;

    private final AtomicLong statements = new AtomicLong();
    private CountingDriver counting;
    private final Map<String, Integer> kills = new TreeMap<>();
    private int done;
    private int came;
    private Random dice;
    private long initTakes;

    @BeforeEach
    void count() throws SQLException {
        counting = CountingDriver.register(statements::incrementAndGet);
    }

    @AfterEach
    void countNoMore() throws SQLException {
        DriverManager.deregisterDriver(counting);
        if (ASKED != null) {
            say(done + " killed, the movement of " + came + " was there: " + kills);
        }
    }

    @SuppressWarnings("SystemOut") // who asks for many wants to know
    private static void say(String figures) {
        System.out.println(figures);
    }

    @Test
    void onSqlite() throws IOException, InterruptedException {
        dice = new Random(9);
        kill(ON_SQLITE, new LedgerTwin.Files(folder));
    }

    @Test
    void onPostgres() throws IOException, InterruptedException {
        dice = new Random(10);
        try (PostgresServer server = PostgresServer.start()) {
            kill(ON_POSTGRES, new LedgerTwin.Databases(server, folder));
        }
    }

    private void kill(int wanted, LedgerTwin.Kind kind) throws IOException, InterruptedException {
        LedgerTwin twin = new LedgerTwin(kind.place("twin"), folder);
        LedgerTwin real = new LedgerTwin(kind.place("real"), folder);
        for (LedgerTwin ledger : List.of(twin, real)) {
            assertEquals(0, ledger.run("stock init LEDGER").code());
        }
        for (int round = 0; done < wanted; round++) {
            List<String> steps = steps(round);
            Set<Integer> victims = victims(steps.size(), wanted - done);
            for (int i = 0; i < steps.size(); i++) {
                String step = steps.get(i);
                if (victims.contains(i) && step.equals(INIT)) {
                    killInit(new LedgerTwin(kind.place("twin-" + round), folder), kind.place("real-" + round), kind);
                } else if (!step.equals(INIT)
                        && (victims.contains(i) || !step.startsWith(BATCH))) { // a batch takes long
                    step(twin, real, step, "r" + round + "-" + i, victims.contains(i));
                }
            }
        }
        for (LedgerTwin ledger : List.of(twin, real)) {
            CommandRun audit = ledger.run("stock audit LEDGER");
            assertTrue(audit.out().startsWith("All "), audit::out);
        }
    }

    /** Which steps of a round are killed: all of them, or the first and the last, init and batch, and some between. */
    private Set<Integer> victims(int steps, int left) {
        List<Integer> between = new ArrayList<>();
        for (int i = 1; i < steps - 1; i++) {
            between.add(i);
        }
        Collections.shuffle(between, dice);
        List<Integer> all = new ArrayList<>(left < 4 ? List.of() : List.of(0, steps - 1));
        all.addAll(between);
        return new HashSet<>(all.subList(0, Math.min(left, all.size())));
    }

    private void step(LedgerTwin twin, LedgerTwin real, String step, String request, boolean isVictim)
            throws IOException, InterruptedException {
        String before = twin.seen();
        assertEquals(before, real.seen());
        String words = twin.known(step).replace("REQUEST", "--request " + request);
        long first = statements.get();
        CommandRun unkilled = twin.run(words);
        assertEquals(0, unkilled.code(), () -> words + ": " + unkilled.err());
        long all = statements.get() - first;
        String after = twin.seen();
        if (isVictim) {
            if (step.startsWith(BATCH)) {
                copyKits(twin.day(step, "."), real.day(step, "."));
            }
            long nanos = dice.nextBoolean() ? 0 : dice.nextInt(JITTER);
            child(real, words, (1 + (long) dice.nextInt((int) all)) + ":" + nanos);
            String there = real.seen();
            came += there.equals(after) ? 1 : 0;
            assertTrue(there.equals(before) || there.equals(after), () -> words + " left\n" + there);
        }
        CommandRun again = real.run(words);
        assertEquals(0, again.code(), () -> words + ": " + again.err());
        assertEquals(after, real.seen(), words);
        if (step.startsWith(BATCH)) {
            assertEquals(Files.readString(twin.day(step, "day.json")), Files.readString(real.day(step, "day.json")));
        }
    }

    /** Kits as an earlier run would have left them: the floors need not be laid again, the day is not there. */
    private static void copyKits(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.toList()) {
                Path copy = to.resolve(from.relativize(file).toString());
                if (Files.isDirectory(file)) {
                    Files.createDirectories(copy);
                } else if (!file.getParent().equals(from) || file.endsWith("batch.txt")) {
                    Files.copy(file, copy);
                }
            }
        }
    }

    private void child(LedgerTwin ledger, String words, String moment) throws IOException, InterruptedException {
        List<String> all = new ArrayList<>(List.of(moment));
        all.addAll(ledger.words(words));
        Path said = folder.resolve("output.txt");
        int code = ChildRun.start(said, KilledRun.class, all).waitFor();
        assertTrue(code == KILLED || code == 0, () -> words + ": " + said);
        if (code == KILLED) {
            done++;
            kills.merge(words.replaceFirst("^stock ", "").replaceFirst(" .*", ""), 1, Integer::sum);
        }
    }

    /** Killed anywhere between nothing and a ledger with its first goods; the tables are made by a library, so time says where. */
    private void killInit(LedgerTwin twin, LedgerTwin.Place place, LedgerTwin.Kind kind)
            throws IOException, InterruptedException {
        assertEquals(0, twin.run(INIT).code());
        if (initTakes == 0) {
            long begin = System.nanoTime();
            LedgerTwin other = new LedgerTwin(kind.place("measured"), folder);
            assertEquals(
                    0,
                    ChildRun.start(folder.resolve("output.txt"), other.words(INIT))
                            .waitFor());
            initTakes = System.nanoTime() - begin;
        }
        LedgerTwin real = new LedgerTwin(place, folder);
        child(real, INIT, "0:" + (long) (dice.nextDouble() * initTakes));
        if (dice.nextBoolean()) {
            String there = real.seen();
            came += there.equals(twin.seen()) ? 1 : 0;
            assertTrue(there.isEmpty() || there.equals(LedgerTwin.EMPTY) || there.equals(twin.seen()), there);
        }
        CommandRun again = real.run(INIT);
        assertEquals(0, again.code(), again::err);
        assertEquals(twin.seen(), real.seen());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(
                    List.of(),
                    files.filter(f -> f.getFileName().toString().startsWith(".runbend-"))
                            .toList(),
                    "nothing half-made is left");
        }
    }

    /** Each command that changes the ledger once, init first and batch last. */
    private List<String> steps(int round) throws IOException {
        String order = "K-" + round;
        Path kit = Files.createDirectories(folder.resolve("kit" + round));
        Files.writeString(kit.resolve("kit.json"), KIT.replace("ORDER", order));
        Path note = Files.writeString(
                folder.resolve("note" + round + ".csv"),
                "kind,product,length,quantity\ncoil,PX-16,50 m,2\nplate,SP-1,1200,4\nplate,SP-10,1000,6\nopened,PX-10,22 m,1\n"
                        + "item,EL-16,," + (9 + round) + "\n");
        Files.copy(note, folder.resolve("note.csv"), StandardCopyOption.REPLACE_EXISTING);
        Path orders = Files.createDirectories(folder.resolve("orders" + round));
        String catalog = Files.readString(Path.of("../examples/workshop.yaml"));
        Files.writeString(orders.resolve("workshop.yaml"), catalog.replace("supply: whole", "supply: cut"));
        Files.writeString(
                orders.resolve("o.yaml"),
                Files.readString(Path.of("../examples/closet.yaml")).replace("KC-2035", "B-" + round));
        String batch = BATCH + "OUT-" + round + " " + orders + " LEDGER --day day-" + round + " --laid "
                + folder.resolve("laid") + " --resume --quiet";
        List<String> steps = new ArrayList<>(List.of(
                INIT,
                "receive --note " + note,
                "receive coil PX-16 50m 1",
                "quote " + kit,
                "reserve " + kit,
                "release " + order,
                "confirm " + kit,
                "spoil " + kit + " CUT-OF-" + order,
                "pack " + order,
                "send " + order,
                "return " + order,
                "count item EL-16 " + (20 + round),
                "point item EL-16 --at " + (3 + round),
                "undo LAST"));
        if (round > 0) { // the day before
            steps.addAll(List.of("confirm OUT-" + (round - 1), "pack B-" + (round - 1)));
        }
        steps.replaceAll(s -> s.equals(INIT) ? s : "stock " + s + " LEDGER REQUEST");
        steps.add(batch);
        return steps;
    }
}
