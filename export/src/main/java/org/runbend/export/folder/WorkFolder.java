package org.runbend.export.folder;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.UserPrincipal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
    private static final String KIT = "kit";
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
        Path self = Files.createTempDirectory(home, prefix());
        FileChannel channel = null;
        try {
            channel = FileChannel.open(self.resolve(JOURNAL), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            lock(channel);
            steps.before("write the journal");
            Disk.write(channel, journal.bytes());
            Files.createDirectory(self.resolve(KIT));
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
        return self.resolve(KIT);
    }

    static boolean isOne(String name) {
        return NAME.matcher(name).matches();
    }

    /**
     * Finishes or takes back what killed runs began on an output folder, wherever they had their work folders.
     *
     * @return folders that look like one of ours, but that somebody else made or could have filled: left alone
     */
    static List<Path> heal(List<Path> homes, Path target, Swap swap, Steps steps) throws IOException {
        List<Path> strange = new ArrayList<>();
        for (Path home : homes) {
            List<Path> all = leftIn(home);
            Optional<UserPrincipal> user = all.isEmpty() ? Optional.empty() : user(home);
            for (Path left : user.isEmpty() ? List.<Path>of() : all) {
                if (isOwn(left, user.get())) {
                    heal(left, target, swap, steps);
                } else if (Journal.read(left.resolve(JOURNAL))
                        .map(j -> j.isOf(target))
                        .orElse(true)) {
                    strange.add(left);
                }
            }
        }
        return strange;
    }

    /** Whom this disk takes us for: the owner of a folder that we make there. */
    private static Optional<UserPrincipal> user(Path home) {
        try {
            Path trial = Files.createTempDirectory(home, prefix());
            try {
                return Optional.of(Files.getOwner(trial, LinkOption.NOFOLLOW_LINKS));
            } finally {
                Files.delete(trial);
            }
        } catch (IOException | UnsupportedOperationException e) {
            return Optional.empty();
        }
    }

    private static String prefix() {
        return PREFIX + ProcessHandle.current().pid() + "-";
    }

    /** Whether this user made the folder and what a run goes by in it, and nobody else can write there. */
    private static boolean isOwn(Path left, UserPrincipal user) throws IOException {
        for (Path path : List.of(left, left.resolve(JOURNAL), left.resolve(IN_PLACE))) {
            if (Disk.isTaken(path)
                    && !Files.getOwner(path, LinkOption.NOFOLLOW_LINKS).equals(user)) {
                return false;
            }
        }
        PosixFileAttributeView modes =
                Files.getFileAttributeView(left, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
        return modes == null
                || Collections.disjoint(
                        modes.readAttributes().permissions(),
                        Set.of(PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE));
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
        } else if (journal.get().isOf(target)) {
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS)) {
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
        Path journal = self.resolve(JOURNAL);
        if (Journal.read(journal).isEmpty() && !Disk.isTaken(self.resolve(KIT))) {
            if (Disk.isFile(journal)) {
                Files.delete(journal);
            }
            if (Disk.entries(self).isEmpty()) {
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
        if (Disk.isFile(kit().resolve(KitFiles.KIT))) {
            steps.before("take kit.json away");
            Files.deleteIfExists(target.resolve(KitFiles.KIT));
        }
        List<String> order = new ArrayList<>(journal.made());
        order.remove(KitFiles.KIT);
        for (String name : journal.old()) {
            if (!journal.made().contains(name)
                    && Names.hasFolder(target, name)
                    && !Disk.isFolder(target.resolve(name))) {
                steps.before("delete " + name);
                Files.deleteIfExists(target.resolve(name));
            }
        }
        for (String folder : Names.folders(journal.made())) {
            makeFolder(target, folder);
        }
        order.add(KitFiles.KIT);
        for (String name : order) {
            if (Names.hasFolder(kit(), name)
                    && Disk.isFile(kit().resolve(name))
                    && Names.hasFolder(target, name)
                    && !Disk.isFolder(target.resolve(name))) {
                steps.before("replace " + name);
                Files.move(
                        kit().resolve(name),
                        target.resolve(name),
                        StandardCopyOption.ATOMIC_MOVE,
                        StandardCopyOption.REPLACE_EXISTING);
            }
        }
        for (String folder : journal.folders()) {
            removeEmpty(target.resolve(folder));
        }
        Disk.force(target);
    }

    /** Makes a sub-folder where nothing has its name. */
    void makeFolder(Path in, String name) throws IOException {
        if (!Disk.isTaken(in.resolve(name))) {
            steps.before("make the folder " + name);
            Files.createDirectory(in.resolve(name));
        }
    }

    private void removeEmpty(Path folder) throws IOException {
        if (Disk.isFolder(folder) && Disk.entries(folder).isEmpty()) {
            steps.before("remove the empty folder " + folder.getFileName());
            Files.delete(folder);
        } else if (Disk.isFolder(folder)) {
            Disk.force(folder);
        }
    }

    /** A link that stands for a foreign file in the new folder until the file itself is there. */
    Path placeholder(Path name) {
        Path up = Path.of("..");
        for (int i = 1; i < name.getNameCount(); i++) {
            up = up.resolve("..");
        }
        return up.resolve(self.getFileName()).resolve(KIT).resolve(name);
    }

    private boolean isPlaceholder(Path folder, Path name) throws IOException {
        Path path = folder.resolve(name);
        return Files.isSymbolicLink(path) && Files.readSymbolicLink(path).equals(placeholder(name));
    }

    /** Brings everything to a good end, from whatever point a run was stopped at, and removes the work folder. */
    private void clear() throws IOException {
        if (Disk.isFile(self.resolve(IN_PLACE)) && Disk.isFolder(target)) {
            replaceInPlace();
        }
        if (Disk.isFolder(kit())) {
            for (Path name : Names.in(kit(), journal.folders())) {
                clear(name);
            }
            for (String folder : journal.folders()) {
                removeEmpty(kit().resolve(folder));
            }
            if (!Disk.entries(kit()).isEmpty()) {
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

    private void clear(Path name) throws IOException {
        Path here = kit().resolve(name);
        Path there = target.resolve(name);
        if (isPlaceholder(kit(), name) || (journal.isOurs(name) && !Disk.isFolder(here))) {
            steps.before("delete the old " + name);
            Files.delete(here);
            return;
        }
        if (name.getNameCount() > 1 && Disk.isFolder(target)) {
            makeFolder(target, name.getParent().toString());
        }
        if (!Disk.isFolder(there.getParent())) {
            return; // nothing is brought to where a link leads
        }
        if (isPlaceholder(target, name)) {
            steps.before("exchange the link and " + name + " at last");
            if (swap.swap(there, here)) {
                Files.delete(here);
                return;
            }
            Files.delete(there);
        }
        if (!Disk.isTaken(there)) {
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
