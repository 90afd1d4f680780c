package org.runbend.catalog.ledger.sql;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.LedgerStore;

/**
 * The ledger in one SQLite file on a local disk.
 *
 * <p>A change begins with {@code BEGIN IMMEDIATE}, so no two come between each other and none has to be begun anew; others wait
 * up to 30 s. The journal is a rollback journal and {@code synchronous} is EXTRA, which is FULL and the folder forced to
 * the disk once the journal is gone: a change that was told is on the disk. A write-ahead log would save a little time in a place where a
 * change a minute is much; against it: a ledger at rest is one file that can be copied, one that cannot be written can still be
 * read, and nothing is kept in memory that processes share.
 */
public final class SqliteStore implements LedgerStore {
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    /** "Runb" in ASCII: the file is a ledger. */
    private static final long APPLICATION = 0x52756E62;

    private static final String HIDDEN = ".runbend-";
    private static final int HEADER = 100;
    private static final int PATIENCE_MILLISECONDS = 30_000;
    private static final Set<String> NETWORKS = Set.of(
            "nfs", "nfs4", "cifs", "smb3", "smbfs", "smb2", "9p", "afs", "ncpfs", "fuse.sshfs", "webdav", "davfs");

    private final Path file;
    private final Sql sql;
    private final SqlBooks books;

    private SqliteStore(Path file, Sql sql) {
        this.file = file;
        this.sql = sql;
        this.books = new SqlBooks(sql);
    }

    /**
     * Makes a new, empty ledger; the file is there whole or not at all.
     *
     * @throws LedgerRefused if something is in its place, or the folder cannot be written
     */
    public static void create(Path file) {
        Path target = file.toAbsolutePath();
        if (target.getFileName() != null) {
            clearUp(target);
        }
        if (Files.exists(target)) {
            throw new LedgerRefused(file + ": there is something already: a new ledger needs a new name");
        }
        Path fresh = target.resolveSibling(HIDDEN + ProcessHandle.current().pid() + ending(target));
        try {
            Files.deleteIfExists(fresh);
            Files.createFile(fresh);
            Migrations.run(url(fresh), "sqlite", List.of(), Map.of());
            try (Sql sql = Sql.open(url(fresh), Map.of())) {
                sql.run("PRAGMA application_id = " + APPLICATION);
            }
            try (FileChannel channel = FileChannel.open(fresh, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            place(fresh, target);
        } catch (FileAlreadyExistsException e) {
            throw new LedgerRefused(file + ": there is something already: a new ledger needs a new name", e);
        } catch (IOException e) {
            throw new LedgerRefused(file + ": cannot be made there: " + reason(e), e);
        } catch (Trouble e) {
            throw refused(file, e);
        } catch (LedgerRefused e) {
            throw new LedgerRefused(file + ": " + e.getMessage(), e);
        } finally {
            remove(fresh);
            remove(fresh.resolveSibling(fresh.getFileName() + "-journal"));
        }
    }

    private static String ending(Path target) {
        return "-" + Integer.toHexString(target.getFileName().hashCode()) + ".tmp";
    }

    /** Takes away what processes that are gone have left of making this ledger. */
    private static void clearUp(Path target) {
        Pattern left =
                Pattern.compile(Pattern.quote(HIDDEN) + "(\\d{1,9})" + Pattern.quote(ending(target)) + "(-journal)?");
        try (Stream<Path> files = Files.list(target.getParent())) {
            for (Path file : files.toList()) {
                Matcher name = left.matcher(file.getFileName().toString());
                if (name.matches()
                        && ProcessHandle.of(Long.parseLong(name.group(1))).isEmpty()) {
                    remove(file);
                }
            }
        } catch (IOException e) {
            // whether a ledger can be made there is said when it is made
        }
    }

    private static String reason(IOException e) {
        return e instanceof java.nio.file.NoSuchFileException
                ? "no such folder"
                : "the folder cannot be written or is full";
    }

    private static void place(Path fresh, Path target) throws IOException {
        try {
            Files.createLink(target, fresh); // fails where another was faster
        } catch (UnsupportedOperationException e) {
            Files.move(fresh, target);
        } catch (FileAlreadyExistsException e) {
            throw e;
        } catch (IOException e) { // some disks know no links
            Files.move(fresh, target);
        }
        try (FileChannel folder = FileChannel.open(target.getParent(), StandardOpenOption.READ)) {
            folder.force(true);
        } catch (IOException e) {
            // Not all systems open folders; there the name reaches the disk when the system likes.
        }
    }

    private static void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // a hidden file stays, which harms nobody
        }
    }

    /**
     * Opens a ledger.
     *
     * @throws LedgerRefused if the file is none, cut short, or of a newer version
     */
    public static SqliteStore open(Path file) {
        checkFile(file);
        Sql sql;
        try {
            sql = Sql.open(url(file), Map.of());
        } catch (Trouble e) {
            throw refused(file, e);
        }
        try {
            prepare(file, sql);
            return new SqliteStore(file, sql);
        } catch (Trouble e) {
            sql.close();
            throw refused(file, e);
        } catch (LedgerRefused e) {
            sql.close();
            throw e;
        }
    }

    private static void prepare(Path file, Sql sql) {
        sql.run("PRAGMA busy_timeout = " + PATIENCE_MILLISECONDS);
        sql.run("PRAGMA foreign_keys = ON");
        sql.run("PRAGMA synchronous = EXTRA");
        sql.run("PRAGMA fullfsync = ON");
        long application = sql.rows("PRAGMA application_id", r -> r.number("application_id"))
                .get(0);
        if (application != APPLICATION) {
            throw new LedgerRefused(file + ": is a database, but no ledger of Runbend");
        }
        long version = Migrations.version(sql);
        if (version > Migrations.NEWEST) {
            throw new LedgerRefused(file + ": is a ledger of a newer Runbend (its tables are of version " + version
                    + ", this Runbend knows " + Migrations.NEWEST + "): use that one");
        }
        if (version < Migrations.NEWEST) {
            Migrations.run(url(file), "sqlite", List.of(), Map.of());
        }
    }

    /** What can be said of a file before any database looks at it. */
    private static void checkFile(Path file) {
        if (!Files.exists(file)) {
            throw new LedgerRefused(file + ": no such ledger; 'runbend stock init --stock " + file + "' makes one");
        }
        if (!Files.isRegularFile(file)) {
            throw new LedgerRefused(file + ": is no file; a ledger is one");
        }
        byte[] head;
        long size;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(HEADER);
            size = Files.size(file);
        } catch (IOException e) {
            throw new LedgerRefused(file + ": cannot be read", e);
        }
        if (head.length < HEADER || !Arrays.equals(head, 0, MAGIC.length, MAGIC, 0, MAGIC.length)) {
            throw new LedgerRefused(file + ": is no ledger of Runbend" + (size == 0 ? " but an empty file" : ""));
        }
        ByteBuffer numbers = ByteBuffer.wrap(head);
        int page = numbers.getShort(16) & 0xFFFF;
        long pages = numbers.getInt(28) & 0xFFFFFFFFL;
        boolean unfinished = Files.exists(file.resolveSibling(file.getFileName() + "-journal"));
        if (!unfinished && (page == 1 ? 65_536L : page) * pages > size) {
            throw new LedgerRefused(file + ": is cut short: it should have " + page * pages + " bytes and has " + size
                    + "; bring it back from a copy");
        }
    }

    private static String url(Path file) {
        // names with ? or % in them would be read as parameters
        return "jdbc:sqlite:file:" + file.toAbsolutePath().toUri().getRawPath();
    }

    /** A word on a disk that is shared over a network, where locks and the order of writes cannot be trusted. */
    public static Optional<String> warning(Path file) {
        try {
            String type = Files.getFileStore(file).type().toLowerCase(Locale.ROOT);
            return NETWORKS.contains(type)
                    ? Optional.of(file + " lies on a disk shared over a network (" + type
                            + "), where a ledger can be lost: keep it on a local disk, or use PostgreSQL")
                    : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    @Override
    public <T> T change(Function<Books, T> work) {
        return run("BEGIN IMMEDIATE", work);
    }

    @Override
    public <T> T look(Function<Books, T> work) {
        return run("BEGIN", work);
    }

    private <T> T run(String begin, Function<Books, T> work) {
        boolean done = false;
        boolean begun = false;
        try {
            sql.run(begin);
            begun = true;
            T answer = work.apply(books);
            sql.run("COMMIT");
            done = true;
            return answer;
        } catch (Trouble e) {
            throw refused(file, e);
        } finally {
            if (begun && !done) {
                sql.rollBack();
            }
        }
    }

    private static LedgerRefused refused(Path file, Trouble e) {
        String why =
                switch (e.kind()) {
                    case BUSY ->
                        "somebody else has been writing for " + PATIENCE_MILLISECONDS / 1000
                                + " s; nothing was changed: try again";
                    case FULL -> "the disk is full; nothing was changed: make room and do it again";
                    case READ_ONLY ->
                        "cannot be written; nothing was changed: see who may write the file and its folder";
                    case BROKEN -> "is damaged or its disk fails; nothing was changed: bring it back from a copy";
                    case FOREIGN -> "is no ledger of Runbend";
                    case GONE -> "cannot be opened: see who may read the file and write its folder";
                    case RULE -> "the ledger does not allow this, and nothing was changed (" + e.getMessage() + ")";
                    default -> "cannot be used; nothing was changed (" + e.getMessage() + ")";
                };
        return new LedgerRefused(file + ": " + why, e);
    }

    @Override
    public void close() {
        sql.close();
    }
}
