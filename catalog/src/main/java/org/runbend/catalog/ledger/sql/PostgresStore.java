package org.runbend.catalog.ledger.sql;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.LedgerStore;

/**
 * The ledger in a PostgreSQL database, in a schema of its own.
 *
 * <p>Changes are SERIALIZABLE; one that another's came between is done over, a few times. So that this is rare, writers first wait
 * for each other on an advisory lock, which a process that is killed gives back.
 */
public final class PostgresStore implements LedgerStore {
    /** How a place begins that is a database. */
    public static final String SCHEME = "jdbc:postgresql:";

    private static final String SCHEMA = "runbend";
    /** "Runb" in ASCII. */
    private static final long WRITERS = 0x52756E62;

    private static final int TRIES = 20;
    private static final int PATIENCE_SECONDS = 30;
    /** After this long without a word the server counts as gone: far more than any wait for a lock. */
    private static final int SILENCE_SECONDS = 4 * PATIENCE_SECONDS;

    /** The longest pause between two tries; they begin with a millisecond and double. */
    private static final int LONGEST_PAUSE_MILLIS = 64;

    private final String url;
    private final Map<String, String> properties;
    private Sql sql;
    private SqlBooks books;

    private PostgresStore(String url, Map<String, String> properties) {
        this.url = url;
        this.properties = properties;
        connect();
    }

    /**
     * Makes the tables.
     *
     * @throws LedgerRefused if they are there, or the database cannot be reached or does not allow it
     */
    public static void create(String url, Optional<String> password) {
        Map<String, String> properties = properties(url, password);
        try {
            try (Sql sql = Sql.open(url, properties)) {
                if (hasTables(sql)) {
                    throw new LedgerRefused("there is a ledger already");
                }
            }
            Migrations.run(url, "postgresql", List.of(SCHEMA), properties);
        } catch (Trouble e) {
            throw refused(url, e);
        } catch (LedgerRefused e) {
            throw new LedgerRefused(plain(url) + ": " + e.getMessage(), e);
        }
    }

    /**
     * Opens a ledger.
     *
     * @throws LedgerRefused if the database cannot be reached, has no ledger, or one of a newer version
     */
    public static PostgresStore open(String url, Optional<String> password) {
        try {
            return new PostgresStore(url, properties(url, password));
        } catch (Trouble e) {
            throw refused(url, e);
        }
    }

    /**
     * With what a line to a database is opened: {@code user}, {@code password} if there is one, and the driver's own.
     *
     * @throws LedgerRefused if the address holds a password
     */
    public static Map<String, String> properties(String url, Optional<String> password) {
        if (url.toLowerCase(Locale.ROOT).matches(".*[?&](password|sslpassword)=.*") || url.matches(".*//[^/]*@.*")) {
            throw new LedgerRefused(
                    plain(url) + ": a password does not belong in the address: name a file with --password-file, or set"
                            + " RUNBEND_STOCK_PASSWORD");
        }
        Map<String, String> all = new HashMap<>();
        password.ifPresent(p -> all.put("password", p));
        all.put("ApplicationName", "runbend");
        all.put("connectTimeout", "10");
        all.put("socketTimeout", String.valueOf(SILENCE_SECONDS));
        all.put("tcpKeepAlive", "true");
        if (!url.contains("user=")) {
            all.put("user", System.getProperty("user.name"));
        } else {
            all.put("user", url.replaceFirst(".*[?&]user=([^&]*).*", "$1"));
        }
        return all;
    }

    private void connect() {
        sql = Sql.open(url, properties);
        books = new SqlBooks(sql);
        try {
            check();
        } catch (RuntimeException e) {
            sql.close();
            throw e;
        }
    }

    private static boolean hasTables(Sql sql) {
        return sql.rows(
                                "SELECT COUNT(*) AS n FROM information_schema.tables WHERE table_schema = ? AND table_name ="
                                        + " 'flyway_schema_history'",
                                r -> r.number("n"),
                                SCHEMA)
                        .get(0)
                > 0;
    }

    private void check() {
        if (!hasTables(sql)) {
            throw new LedgerRefused(
                    plain(url) + ": has no ledger; 'runbend stock init --stock " + plain(url) + "' makes one");
        }
        sql.run("SET search_path TO " + SCHEMA);
        sql.run("SET lock_timeout = '" + PATIENCE_SECONDS + "s'");
        long version = Migrations.version(sql);
        if (version > Migrations.NEWEST) {
            throw new LedgerRefused(plain(url) + ": is a ledger of a newer Runbend (its tables are of version "
                    + version + ", this Runbend knows " + Migrations.NEWEST + "): use that one");
        }
        if (version < Migrations.NEWEST) {
            Migrations.run(url, "postgresql", List.of(SCHEMA), properties);
        }
    }

    @Override
    public <T> T change(Function<Books, T> work) {
        reconnectIfNeeded();
        try {
            sql.run("SELECT pg_advisory_lock(" + WRITERS + ")");
            try {
                return again("BEGIN ISOLATION LEVEL SERIALIZABLE", true, work);
            } finally {
                unlock();
            }
        } catch (Trouble e) {
            throw refused(url, e);
        }
    }

    @Override
    public <T> T look(Function<Books, T> work) {
        reconnectIfNeeded();
        try {
            return again("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY", false, work);
        } catch (Trouble e) {
            throw refused(url, e);
        }
    }

    /** After a broken line the next call gets a new one. */
    private void reconnectIfNeeded() {
        if (sql != null) {
            return;
        }
        try {
            connect();
        } catch (Trouble e) {
            sql = null;
            throw refused(url, e);
        }
    }

    private void unlock() {
        if (sql != null) {
            try {
                sql.run("SELECT pg_advisory_unlock(" + WRITERS + ")");
            } catch (Trouble e) {
                drop();
            }
        }
    }

    private void drop() {
        sql.close();
        sql = null;
    }

    private <T> T again(String begin, boolean changes, Function<Books, T> work) {
        for (int attempt = 1; ; attempt++) {
            try {
                return once(begin, changes, work);
            } catch (Trouble e) {
                if (e.kind() != Trouble.Kind.AGAIN || attempt == TRIES) {
                    throw e;
                }
                pause(attempt);
            }
        }
    }

    /** Lets the other one, who was there first, get on before this one asks again. */
    private static void pause(int attempt) {
        try {
            Thread.sleep(Math.min(1L << (attempt - 1), LONGEST_PAUSE_MILLIS));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt(); // it is asked again at once
        }
    }

    private <T> T once(String begin, boolean changes, Function<Books, T> work) {
        boolean done = false;
        boolean committing = false;
        try {
            sql.run(begin);
            T answer = work.apply(books);
            committing = changes;
            sql.run("COMMIT");
            done = true;
            return answer;
        } catch (Trouble e) {
            if (e.kind() == Trouble.Kind.GONE) {
                drop();
                if (committing) {
                    throw new CommitLost(e);
                }
            }
            throw e;
        } finally {
            if (!done && sql != null) {
                sql.rollBack();
            }
        }
    }

    /** The address without what stands behind it. */
    private static String plain(String url) {
        return url.replaceFirst("//[^/]*@", "//").replaceFirst("[?].*", "");
    }

    private static LedgerRefused refused(String url, Trouble e) {
        String why =
                switch (e.kind()) {
                    case BUSY ->
                        "somebody else has been writing for " + PATIENCE_SECONDS + " s; nothing was changed: try again";
                    case AGAIN -> "others were faster " + TRIES + " times; nothing was changed: try again";
                    case FULL -> "the database's disk is full; nothing was changed: make room and do it again";
                    case READ_ONLY -> "this user may not write; nothing was changed";
                    case BROKEN -> "the database is damaged; nothing was changed";
                    case GONE ->
                        "cannot be reached; nothing was changed: see whether the database runs, and its address";
                    case DENIED ->
                        "the database refuses this user or password: name a file with --password-file, or set"
                                + " RUNBEND_STOCK_PASSWORD";
                    case RULE -> "the ledger does not allow this, and nothing was changed (" + e.getMessage() + ")";
                    default -> "cannot be used; nothing was changed (" + e.getMessage() + ")";
                };
        return new LedgerRefused(plain(url) + ": " + why, e);
    }

    @Override
    public void close() {
        if (sql != null) {
            drop();
        }
    }
}
