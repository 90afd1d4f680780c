package org.runbend.export.relay;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.SchedulerName;
import com.github.kagkarlsson.scheduler.serializer.Serializer;
import com.github.kagkarlsson.scheduler.task.ExecutionComplete;
import com.github.kagkarlsson.scheduler.task.ExecutionOperations;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.runbend.catalog.ledger.LedgerRefused;

/**
 * Floors to be laid as jobs of db-scheduler in a PostgreSQL database. A floor is taken by one worker at a time; one whose worker gave
 * no sign of life is taken by another, and after three attempts it is given up. What came of it is there once for each batch. All
 * times are those of the database, so that clocks of machines do not matter. A worker takes floors of its own version alone.
 */
public final class Relay implements AutoCloseable {
    /** How often a floor is tried. */
    public static final int ATTEMPTS = 3;

    private static final long TABLES = 0x52756E63;
    private static final Duration POLL = Duration.ofMillis(300);
    private static final Duration PULSE = Duration.ofSeconds(5);
    private static final int MISSED = 4;
    private static final int LINES = 8;
    private static final Duration PATIENCE = Duration.ofSeconds(15);
    private static final String GIVEN_UP = "its worker was lost " + ATTEMPTS + " times";

    private final HikariDataSource base;
    private final String place;
    private final String version;
    private final ServerClock clock;
    private final Duration pulse;

    private Relay(String url, Map<String, String> login, String version, Duration pulse) {
        this.place = url.replaceFirst("[?].*", "");
        HikariConfig lines = new HikariConfig();
        lines.setJdbcUrl(url);
        login.forEach(lines::addDataSourceProperty);
        lines.setMaximumPoolSize(LINES);
        lines.setMinimumIdle(1);
        lines.setConnectionTimeout(PATIENCE.toMillis());
        try {
            base = new HikariDataSource(lines);
        } catch (HikariPool.PoolInitializationException e) {
            throw unreachable(e);
        }
        this.version = version;
        this.pulse = pulse;
        this.clock = new ServerClock(this::databaseTime);
    }

    /**
     * Opens a relay, and makes its tables where there are none.
     *
     * @param url of the database
     * @param login its user and password, as the ledger has them
     * @param version of this program
     * @throws LedgerRefused if it cannot be reached or does not allow it
     */
    public static Relay open(String url, Map<String, String> login, String version) {
        return open(url, login, version, PULSE);
    }

    /** As above, with workers that give a sign of life so often; after four that are missing they are given up. */
    static Relay open(String url, Map<String, String> login, String version, Duration pulse) {
        Relay relay = new Relay(url, login, version, pulse);
        try {
            relay.makeTables();
            return relay;
        } catch (LedgerRefused e) {
            relay.close();
            throw e;
        }
    }

    /**
     * What came of a floor.
     *
     * @param answers loops and covers by their keys, if it was laid
     * @param fault why it was given up, if it was
     */
    public record Result(Map<String, String> answers, Optional<String> fault) {}

    /** Lays a floor; runs on any thread. */
    @FunctionalInterface
    public interface Laying {
        /** The answers that laying the floor asked for. */
        Map<String, String> lay(FloorText floor) throws Exception;
    }

    /** A worker that takes floors until it is closed; one in work is then left to others. */
    public interface Worker extends AutoCloseable {
        @Override
        void close();
    }

    /** Hands floors over under names; those that are there already under the batch's name are not handed over again. */
    public void put(String batch, Map<String, FloorText> floors) {
        SchedulerClient client = SchedulerClient.Builder.create(base, task((floor, id) -> {}))
                .serializer(new Utf8())
                .tableName("runbend_relay.jobs")
                .build();
        floors.forEach((name, floor) -> {
            asked(
                    "INSERT INTO runbend_relay.floors (batch, floor) VALUES (?, ?) ON CONFLICT DO NOTHING",
                    rows -> null,
                    batch,
                    name);
            client.scheduleIfNotExists(new TaskInstance<>(task(), id(batch, name), floor.text()), clock.now());
        });
    }

    /** What came of the floors of a batch so far, by their names; those that are named are left out. */
    public Map<String, Result> results(String batch, Set<String> known) {
        Map<String, Result> results = new HashMap<>();
        asked(
                "SELECT floor, answers, fault FROM runbend_relay.floors WHERE batch = ? AND (answers IS NOT NULL OR fault IS NOT"
                        + " NULL) AND floor <> ALL (string_to_array(?, ' '))",
                rows -> results.put(
                        rows.getString(1),
                        new Result(
                                AnswerText.of(Optional.ofNullable(rows.getString(2))),
                                Optional.ofNullable(rows.getString(3)))),
                batch,
                String.join(" ", known));
        return results;
    }

    /** Deletes what is kept of a batch, floors that nobody has taken among it. */
    public void forget(String batch) {
        asked("DELETE FROM runbend_relay.jobs WHERE task_instance LIKE ? || '/%'", rows -> null, like(batch));
        asked("DELETE FROM runbend_relay.floors WHERE batch = ?", rows -> null, batch);
    }

    private static String like(String text) {
        return text.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_");
    }

    /**
     * Begins to take floors.
     *
     * @param threads how many at once
     * @param name of this worker
     * @param laying lays them
     * @param told hears of each that was laid or failed, a line
     */
    public Worker work(int threads, String name, Laying laying, Consumer<String> told) {
        Scheduler scheduler = Scheduler.create(base, task((data, id) -> one(data, id, name, laying, told)))
                .serializer(new Utf8())
                .tableName("runbend_relay.jobs")
                .schedulerName(new SchedulerName.Fixed(name))
                .clock(clock::now)
                .threads(threads)
                .pollingInterval(POLL)
                .pollUsingLockAndFetch(0.5, 1.0)
                .heartbeatInterval(pulse)
                .missedHeartbeatsLimit(MISSED)
                .shutdownMaxWait(Duration.ofSeconds(1))
                .build();
        scheduler.start();
        return scheduler::stop;
    }

    private interface Step {
        void run(String data, String id) throws Exception;
    }

    private String task() {
        return "floors of " + version;
    }

    private OneTimeTask<String> task(Step step) {
        return Tasks.oneTime(task(), String.class)
                .onFailure(this::failed)
                .onDeadExecution(this::revive)
                .execute((instance, context) -> {
                    try {
                        step.run(instance.getData(), instance.getId());
                    } catch (RuntimeException e) {
                        throw e;
                    } catch (Exception e) {
                        throw new IllegalStateException(e);
                    }
                });
    }

    private void one(String data, String id, String name, Laying laying, Consumer<String> told) throws Exception {
        String batch = batch(id);
        String floor = floor(id);
        List<Integer> attempt = new ArrayList<>();
        asked(
                "UPDATE runbend_relay.floors SET attempts = attempts + 1 WHERE batch = ? AND floor = ? AND answers IS NULL AND"
                        + " fault IS NULL RETURNING attempts",
                rows -> attempt.add(rows.getInt(1)),
                batch,
                floor);
        if (attempt.isEmpty()) {
            return; // it was laid meanwhile, or nobody wants it any more
        }
        if (attempt.get(0) > ATTEMPTS) {
            giveUp(batch, floor, GIVEN_UP);
            return;
        }
        Map<String, String> answers = laying.lay(FloorText.of(data));
        asked(
                "UPDATE runbend_relay.floors SET answers = ?, worker = ? WHERE batch = ? AND floor = ? AND answers IS NULL",
                rows -> null,
                AnswerText.of(answers),
                name,
                batch,
                floor);
        told.accept("laid a floor of " + batch);
    }

    /** A floor whose worker was lost is for others at once, by the database's time: the library would take this machine's. */
    private void revive(ExecutionComplete lost, ExecutionOperations<String> operations) {
        operations.reschedule(lost, clock.now());
    }

    private void giveUp(String batch, String floor, String why) {
        asked(
                "UPDATE runbend_relay.floors SET fault = ? WHERE batch = ? AND floor = ? AND answers IS NULL",
                rows -> null,
                why,
                batch,
                floor);
    }

    private void failed(ExecutionComplete complete, ExecutionOperations<String> operations) {
        String id = complete.getExecution().taskInstance.getId();
        List<Integer> attempts = new ArrayList<>();
        asked(
                "SELECT attempts FROM runbend_relay.floors WHERE batch = ? AND floor = ?",
                rows -> attempts.add(rows.getInt(1)),
                batch(id),
                floor(id));
        if (!attempts.isEmpty() && attempts.get(0) < ATTEMPTS) {
            operations.reschedule(complete, clock.now());
            return;
        }
        String why = complete.getCause().map(Relay::reason).orElse(GIVEN_UP);
        giveUp(batch(id), floor(id), why);
        operations.remove();
    }

    private static String reason(Throwable e) {
        Throwable deepest = e;
        while (deepest.getCause() != null) {
            deepest = deepest.getCause();
        }
        return String.valueOf(deepest.getMessage() == null ? deepest.getClass().getSimpleName() : deepest.getMessage())
                .lines()
                .findFirst()
                .orElse("");
    }

    private static String id(String batch, String floor) {
        return batch + "/" + floor;
    }

    private static String batch(String id) {
        return id.substring(0, id.lastIndexOf('/'));
    }

    private static String floor(String id) {
        return id.substring(id.lastIndexOf('/') + 1);
    }

    private void makeTables() {
        asked(
                String.join(
                        ";",
                        "SELECT pg_advisory_xact_lock(" + TABLES + ")", // two that make them at once would collide
                        "CREATE SCHEMA IF NOT EXISTS runbend_relay",
                        "CREATE TABLE IF NOT EXISTS runbend_relay.floors (batch text NOT NULL, floor text NOT NULL, attempts"
                                + " int NOT NULL DEFAULT 0, answers text, fault text, worker text, PRIMARY KEY (batch, floor))",
                        "CREATE TABLE IF NOT EXISTS runbend_relay.jobs (task_name text NOT NULL, task_instance text NOT NULL,"
                                + " task_data bytea, execution_time timestamptz NOT NULL, picked boolean NOT NULL, picked_by"
                                + " text, last_success timestamptz, last_failure timestamptz, consecutive_failures int,"
                                + " last_heartbeat timestamptz, version bigint NOT NULL, priority smallint, PRIMARY KEY"
                                + " (task_name, task_instance))",
                        "CREATE INDEX IF NOT EXISTS jobs_by_time ON runbend_relay.jobs (execution_time)",
                        "CREATE INDEX IF NOT EXISTS jobs_by_pulse ON runbend_relay.jobs (last_heartbeat)"),
                rows -> null);
    }

    private Instant databaseTime() {
        List<Long> micros = new ArrayList<>();
        asked(
                "SELECT CAST(EXTRACT(EPOCH FROM clock_timestamp()) * 1000000 AS bigint)",
                rows -> micros.add(rows.getLong(1)));
        return Instant.EPOCH.plus(Duration.ofNanos(micros.get(0) * 1000));
    }

    private interface RowReader {
        Object read(ResultSet rows) throws SQLException;
    }

    /** One statement on a connection of its own. */
    private void asked(String sql, RowReader reader, String... values) {
        try (Connection connection = base.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setString(i + 1, values[i]);
            }
            if (statement.execute()) {
                try (ResultSet rows = statement.getResultSet()) {
                    while (rows.next()) {
                        reader.read(rows);
                    }
                }
            }
        } catch (SQLException e) {
            throw unreachable(e);
        }
    }

    private LedgerRefused unreachable(Exception e) {
        return new LedgerRefused(
                place + ": floors cannot be handed over (" + reason(e)
                        + "): see whether the database runs, and whether this user may make tables",
                e);
    }

    /** Gives back its lines to the database. */
    @Override
    public void close() {
        base.close();
    }

    /** Texts as they are: nothing of a job is made into an object unseen. */
    private static final class Utf8 implements Serializer {
        @Override
        public byte[] serialize(Object data) {
            return data == null ? new byte[0] : data.toString().getBytes(StandardCharsets.UTF_8);
        }

        @Override
        public <T> T deserialize(Class<T> type, byte[] bytes) {
            return type.cast(new String(bytes == null ? new byte[0] : bytes, StandardCharsets.UTF_8));
        }
    }
}
