package org.runbend.export.cli;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A hidden folder that a new kit is built in: a {@code journal}, locked while its run lives, and the folder {@code kit}.
 * What a killed run left is told by the journal that nobody locks; it is cleared up, never by guess: only files that the
 * journal lists are deleted, whatever else is found goes back to the output folder.
 */
final class WorkFolder implements AutoCloseable {
    private static final String PREFIX = ".runbend-";
    private static final Pattern NAME = Pattern.compile("\\.runbend-(\\d{1,18})-\\d+");
    private static final String JOURNAL = "journal";
    /** Stands in the work folder while files are replaced one by one. */
    private static final String IN_PLACE = "in-place";

    private final Path self;
    private final Path target;
    private final Journal journal;
    private final FileChannel lock;
    private final Swap swap;
    private final Steps steps;

    private WorkFolder(Path self, Path target, Journal journal, FileChannel lock, Swap swap, Steps steps) {
        this.self = self;
        this.target = target;
        this.journal = journal;
        this.lock = lock;
        this.swap = swap;
        this.steps = steps;
    }

    /** Makes one in the folder {@code home}, which lies on the file system of the output folder {@code target}. */
    static WorkFolder create(Path home, Path target, Journal journal, Swap swap, Steps steps) throws IOException {
        steps.before("make the work folder");
        Path self =
                Files.createTempDirectory(home, PREFIX + ProcessHandle.current().pid() + "-");
        FileChannel channel = null;
        try {
            channel = FileChannel.open(self.resolve(JOURNAL), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            lock(channel);
            steps.before("write the journal");
            Disk.write(channel, journal.bytes());
            Files.createDirectory(self.resolve("kit"));
            return new WorkFolder(self, target, journal, channel, swap, steps);
        } catch (IOException e) {
            if (channel != null) {
                channel.close();
            }
            removeBare(self);
            throw e;
        }
    }

    /** Whether the file is locked now; not if a living run holds it, or the file system has no locks. */
    private static boolean lock(FileChannel channel) {
        try {
            return channel.tryLock() != null; // closing the channel ends the lock
        } catch (IOException | OverlappingFileLockException e) {
            return false;
        }
    }

    /** The folder of the new kit; after an exchange that of the old one. */
    Path kit() {
        return self.resolve("kit");
    }

    static boolean isOne(String name) {
        return NAME.matcher(name).matches();
    }

    /** Finishes or takes back what killed runs began on an output folder, wherever they had their work folders. */
    static void heal(List<Path> homes, Path target, Swap swap, Steps steps) throws IOException {
        for (Path home : homes) {
            for (Path left : leftIn(home)) {
                heal(left, target, swap, steps);
            }
        }
    }

    private static List<Path> leftIn(Path home) throws IOException {
        List<Path> left = new ArrayList<>();
        if (Files.isDirectory(home) && Files.isReadable(home)) {
            try (DirectoryStream<Path> all = Files.newDirectoryStream(home, PREFIX + "*")) {
                all.forEach(left::add);
            }
        }
        left.removeIf(p -> !isOne(p.getFileName().toString())
                || !Disk.isFolder(p)
                || !Files.isReadable(p)
                || !Files.isWritable(p));
        return left;
    }

    private static void heal(Path left, Path target, Swap swap, Steps steps) throws IOException {
        Path file = left.resolve(JOURNAL);
        Optional<Journal> journal = Journal.read(file);
        if (journal.isEmpty()) {
            if (isOrphan(left)) {
                removeBare(left);
            }
        } else if (journal.get().folder().equals(Disk.name(target))) {
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
                if (lock(channel)) {
                    new WorkFolder(left, target, journal.get(), channel, swap, steps).clear();
                }
            }
        }
    }

    /** A run that was killed before its journal was written; its number may be that of this run in another container. */
    private static boolean isOrphan(Path left) {
        Matcher m = NAME.matcher(left.getFileName().toString());
        long pid = m.matches() ? Long.parseLong(m.group(1)) : 0;
        return pid == ProcessHandle.current().pid()
                || ProcessHandle.of(pid).filter(ProcessHandle::isAlive).isEmpty();
    }

    /** Removes a work folder in which nothing was built. */
    private static void removeBare(Path self) throws IOException {
        if (Journal.read(self.resolve(JOURNAL)).isEmpty() && !Disk.isTaken(self.resolve("kit"))) {
            Files.deleteIfExists(self.resolve(JOURNAL));
            if (Disk.names(self).isEmpty()) {
                Files.delete(self);
            }
        }
    }

    /** Notes that files are about to be replaced one by one: from now on the way is forward only. */
    void beginInPlace() throws IOException {
        steps.before("note that files are replaced one by one");
        Disk.write(self.resolve(IN_PLACE), new byte[0]);
        Disk.force(self);
    }

    /**
     * Moves the new files into the output folder one by one. {@code kit.json} goes first and comes last, so a folder
     * without one is an unfinished one.
     */
    void replaceInPlace() throws IOException {
        if (Disk.isTaken(kit().resolve(KitFiles.KIT))) {
            steps.before("take kit.json away");
            Files.deleteIfExists(target.resolve(KitFiles.KIT));
        }
        List<String> order = new ArrayList<>(journal.made());
        order.remove(KitFiles.KIT);
        for (String name : journal.old()) {
            if (!journal.made().contains(name) && !Disk.isFolder(target.resolve(name))) {
                steps.before("delete " + name);
                Files.deleteIfExists(target.resolve(name));
            }
        }
        order.add(KitFiles.KIT);
        for (String name : order) {
            if (Disk.isTaken(kit().resolve(name))) {
                steps.before("replace " + name);
                Files.move(
                        kit().resolve(name),
                        target.resolve(name),
                        StandardCopyOption.ATOMIC_MOVE,
                        StandardCopyOption.REPLACE_EXISTING);
            }
        }
        Disk.force(target);
    }

    /** A link that stands for a foreign file in the new folder until the file itself is there. */
    Path placeholder(String name) {
        return Path.of("..", self.getFileName().toString(), "kit", name);
    }

    private boolean isPlaceholder(Path path) throws IOException {
        return Files.isSymbolicLink(path)
                && Files.readSymbolicLink(path)
                        .equals(placeholder(path.getFileName().toString()));
    }

    /** Brings everything to a good end, from whatever point a run was stopped at, and removes the work folder. */
    private void clear() throws IOException {
        if (Disk.isTaken(self.resolve(IN_PLACE)) && Disk.isFolder(target)) {
            replaceInPlace();
        }
        if (Disk.isFolder(kit())) {
            for (String name : Disk.names(kit())) {
                clear(name);
            }
            if (!Disk.names(kit()).isEmpty()) {
                return; // a name is taken on both sides: both stay
            }
            steps.before("remove the old folder");
            Files.delete(kit());
        }
        steps.before("remove the journal");
        Files.deleteIfExists(self.resolve(IN_PLACE));
        lock.close();
        Files.deleteIfExists(self.resolve(JOURNAL));
        steps.before("remove the work folder");
        Files.deleteIfExists(self);
    }

    private void clear(String name) throws IOException {
        Path here = kit().resolve(name);
        Path there = target.resolve(name);
        if (isPlaceholder(here) || (journal.isOurs(name) && !Disk.isFolder(here))) {
            steps.before("delete the old " + name);
            Files.delete(here);
            return;
        }
        if (isPlaceholder(there)) {
            steps.before("exchange the link and " + name + " at last");
            if (swap.swap(there, here)) {
                Files.delete(here);
                return;
            }
            Files.delete(there);
        }
        if (!Disk.isTaken(there) && Disk.isFolder(target)) {
            steps.before("bring " + name + " back");
            Files.move(here, there, StandardCopyOption.ATOMIC_MOVE);
        }
    }

    /** Clears up and ends the lock. */
    @Override
    public void close() throws IOException {
        try (lock) {
            clear();
        }
    }
}
