package org.runbend.export.folder;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The folder that a kit is written to. Only files that the folder's {@code kit.json} lists are replaced; other files are
 * never touched, and a folder that holds files but no kit of ours is refused.
 *
 * <p>A process may be killed at any moment: whoever looks finds the old kit or the new one, whole. See {@link Replacement}
 * for how, and for the few places where a later run has to finish the work. A link to a folder is followed.
 */
public final class OutputFolder {
    private final Path folder;
    private final Swap swap;
    private final Steps steps;

    /** A folder that need not exist. */
    public OutputFolder(Path folder) {
        this(folder, Swap.ofSystem(), Steps.NONE);
    }

    /** A folder that a test can stop, and whose system may know no exchange. */
    public OutputFolder(Path folder, Swap swap, Steps steps) {
        this.folder = folder;
        this.swap = swap;
        this.steps = steps;
    }

    /** Where it lies. */
    public Path path() {
        return folder;
    }

    /**
     * Refuses a file, a folder that holds files but no kit of ours, and a place that cannot be written. First it finishes
     * what a killed run left, so the job is to be read before.
     *
     * @return remarks, a line each: what looks like a work folder of ours and was left alone
     */
    public List<String> checkOurs() {
        try {
            return check(target()).stream()
                    .map(p -> p + ": left alone: it is named like a work folder of ours, but this user did not make it,"
                            + " or others can write in it")
                    .toList();
        } catch (IOException e) {
            throw refused(e);
        }
    }

    /** Writes the files, all of them or none. */
    public void write(Map<String, byte[]> files) {
        try {
            Path target = target();
            check(target);
            Set<String> old = KitListing.of(target);
            checkNothingInTheWay(target, old, files.keySet());
            Files.createDirectories(above(target));
            new Replacement(target, swap, steps).replace(old, files);
        } catch (IOException e) {
            throw refused(e);
        }
    }

    /** The folder itself, without links and detours. */
    private Path target() throws IOException {
        if (!Files.exists(folder)) {
            if (Files.isSymbolicLink(folder)) {
                throw new OutputRefused(folder + ": the output folder is a link that leads nowhere; name a folder");
            }
            return folder.toAbsolutePath().normalize();
        }
        if (!Files.isDirectory(folder)) {
            throw new OutputRefused(folder + ": the output folder is a file; name a folder");
        }
        return folder.toRealPath();
    }

    private static Path above(Path target) {
        return target.getParent() != null ? target.getParent() : target;
    }

    private List<Path> check(Path target) throws IOException {
        Path above = above(target);
        if (!Files.exists(target)) {
            if (Files.exists(above) && !Files.isWritable(above)) {
                throw new OutputRefused(folder + ": the folder " + above + " cannot be written");
            }
        } else if (!Files.isWritable(target)) {
            throw new OutputRefused(folder + ": the output folder cannot be written");
        }
        List<Path> strange = WorkFolder.heal(List.of(above, target), target, swap, steps);
        if (Files.exists(target)
                && !names(target).isEmpty()
                && KitListing.of(target).isEmpty()) {
            throw new OutputRefused(
                    folder + ": the output folder holds files but no kit.json of ours; name a new or an empty folder");
        }
        return strange;
    }

    private Set<String> names(Path target) {
        try {
            Set<String> names = new TreeSet<>(Disk.names(target));
            names.removeIf(WorkFolder::isOne);
            return names;
        } catch (IOException e) {
            throw new OutputRefused(folder + ": the output folder cannot be read");
        }
    }

    /** A file that has the name of one of ours, but that our last kit does not list, is somebody else's. */
    private void checkNothingInTheWay(Path target, Set<String> old, Set<String> made) {
        for (String name : Names.folders(made)) {
            if (Disk.isTaken(target.resolve(name)) && !Disk.isFolder(target.resolve(name))) {
                throw notOurs(name);
            }
        }
        for (String name : made) {
            Path there = target.resolve(name);
            if (Disk.isFolder(there)) {
                throw new OutputRefused(folder.resolve(name)
                        + ": a folder is where a file of ours belongs; rename it or name another output folder");
            }
            if (!old.contains(name) && Disk.isTaken(there)) {
                throw notOurs(name);
            }
        }
    }

    private OutputRefused notOurs(String name) {
        return new OutputRefused(folder.resolve(name)
                + ": this file is not ours and would be overwritten; rename it or name another output folder");
    }

    private OutputRefused refused(IOException e) {
        return new OutputRefused(folder + ": the output folder cannot be written (" + reason(e) + ")");
    }

    private static String reason(IOException e) {
        if (e instanceof AccessDeniedException denied) {
            return "no permission at " + denied.getFile();
        }
        if (e instanceof FileAlreadyExistsException || e instanceof NotDirectoryException) {
            return ((FileSystemException) e).getFile() + " is no folder";
        }
        if (e instanceof NoSuchFileException gone) {
            return gone.getFile() + " cannot be made or was taken away";
        }
        if (e instanceof FileSystemException f && f.getReason() != null) {
            return f.getReason();
        }
        return e.getMessage() == null ? "the disk does not take it" : e.getMessage();
    }
}
