package org.runbend.catalog.ledger;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A PostgreSQL server of this machine's own packages, in a folder of its own, on a port of its own. Where none is installed, tests are
 * skipped with a word, and fail where the environment says {@code CI=true}.
 */
public final class PostgresServer implements AutoCloseable {
    /** Name and password of the user. */
    public static final String USER = "bench";

    private static final int PATIENCE_SECONDS = 60;

    private final Path programs;
    private final Path folder;
    private final int port;
    private final boolean asRoot;
    private int databases;

    private PostgresServer(Path programs, Path folder, int port, boolean asRoot) {
        this.programs = programs;
        this.folder = folder;
        this.port = port;
        this.asRoot = asRoot;
    }

    /** Starts a server; skips the test where there is none to start. */
    public static PostgresServer start() throws IOException {
        Path programs = programs();
        if (programs == null && "true".equals(System.getenv("CI"))) {
            fail("PostgreSQL is not installed, but CI must have it");
        }
        assumeTrue(programs != null, "PostgreSQL is not installed");
        boolean asRoot = "root".equals(System.getProperty("user.name"));
        Path folder = Files.createTempDirectory("runbend-postgres-");
        Files.writeString(folder.resolve("password"), USER);
        int port;
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = socket.getLocalPort();
        }
        PostgresServer server = new PostgresServer(programs, folder, port, asRoot);
        if (asRoot) { // it refuses to run as root
            run(List.of("chown", "-R", "postgres", folder.toString()));
        }
        server.program(
                "initdb",
                "-D",
                server.data(),
                "-U",
                USER,
                "-A",
                "scram-sha-256",
                "--pwfile",
                folder.resolve("password").toString(),
                "--no-sync",
                "-E",
                "UTF8",
                "--locale=C");
        server.begin();
        return server;
    }

    /** Begins to serve, for the first time or after {@link #stop}. */
    public void begin() {
        program(
                "pg_ctl",
                "-D",
                data(),
                "-w",
                "-l",
                folder.resolve("log").toString(),
                "-o",
                "-p " + port + " -k " + folder + " -c listen_addresses=127.0.0.1 -c fsync=off",
                "start");
    }

    /** Ends at once, as after a loss of power. */
    public void stop() {
        program("pg_ctl", "-D", data(), "-w", "-m", "immediate", "stop");
    }

    private String data() {
        return folder.resolve("data").toString();
    }

    /** The address of a new, empty database. */
    public String database() {
        return database("template1");
    }

    /** The address of a new database that is a copy of another. */
    public String database(String template) {
        String name = "shelf" + ++databases;
        psql("CREATE DATABASE " + name + " TEMPLATE " + template);
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + name + "?user=" + USER;
    }

    /** The name of a database in its address. */
    public static String name(String address) {
        return address.replaceFirst(".*/([^/?]+)[?].*", "$1");
    }

    /** Runs a statement on the database that every server has. */
    public void psql(String sql) {
        psql("template1", sql);
    }

    /** Runs a statement on a database. */
    public void psql(String database, String sql) {
        List<String> command = new ArrayList<>(
                List.of("env", "PGPASSWORD=" + USER, programs.resolve("psql").toString()));
        command.addAll(List.of("-h", "127.0.0.1", "-p", "" + port, "-U", USER, "-d", database, "-qc", sql));
        run(command);
    }

    private void program(String name, String... arguments) {
        List<String> command = new ArrayList<>(asRoot ? List.of("runuser", "-u", "postgres", "--") : List.of());
        command.add(programs.resolve(name).toString());
        command.addAll(List.of(arguments));
        run(command);
    }

    private static Path programs() throws IOException {
        Path all = Path.of("/usr/lib/postgresql");
        if (!Files.isDirectory(all)) {
            return null;
        }
        try (Stream<Path> versions = Files.list(all)) {
            return versions.map(v -> v.resolve("bin"))
                    .filter(b -> Files.isExecutable(b.resolve("initdb")))
                    .max(Comparator.comparing(Path::toString))
                    .orElse(null);
        }
    }

    private static void run(List<String> command) {
        try {
            Path output = Files.createTempFile("runbend-postgres", ".out");
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(output.toFile())
                    .directory(new java.io.File("/"))
                    .start();
            process.getOutputStream().close();
            boolean ended = process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
            String said = Files.readString(output, StandardCharsets.UTF_8);
            Files.delete(output);
            if (!ended || process.exitValue() != 0) {
                process.destroyForcibly();
                throw new IllegalStateException(command + ": " + said);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() throws IOException {
        try {
            stop();
        } catch (IllegalStateException e) {
            // it is stopped already
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
