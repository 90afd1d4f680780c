package org.runbend.export.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Puts a new kit in the place of an old one. It is built whole in a {@link WorkFolder} beside the output folder first,
 * and forced to the disk. Then there are three ways:
 *
 * <ol>
 *   <li>No folder is there: the new one gets its name, in one step.
 *   <li>A folder is there: the two are exchanged in one step ({@link Swap}). Foreign files come along: links stand for
 *       them in the new folder, and after the exchange each link is exchanged for its file. At no moment is a file out of
 *       sight.
 *   <li>The system knows no exchange, or the folder must stay the same one (a process works in it, it is another disk,
 *       another user's, or nothing can be made beside it): files are replaced one by one. Here alone a kill can leave a
 *       folder that is neither old nor new. It has no {@code kit.json} then, and the next run on it finishes the work.
 * </ol>
 */
final class Replacement {
    private final Path target;
    private final Swap swap;
    private final Steps steps;

    Replacement(Path target, Swap swap, Steps steps) {
        this.target = target;
        this.swap = swap;
        this.steps = steps;
    }

    /**
     * Replaces the files.
     *
     * @param old names of our files that are there
     * @param files the new ones
     * @throws IOException if the disk does not take them; nothing was changed then, or a later run finishes it
     */
    void replace(Set<String> old, Map<String, byte[]> files) throws IOException {
        Journal journal = new Journal(Disk.rawName(target), files.keySet(), old);
        Path home = home();
        try (WorkFolder work = WorkFolder.create(home, target, journal, swap, steps)) {
            Set<String> folders = Names.folders(files.keySet());
            for (String folder : folders) {
                work.makeFolder(work.kit(), folder);
            }
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                steps.before("write " + file.getKey());
                Disk.write(work.kit().resolve(file.getKey()), file.getValue());
            }
            folders.forEach(f -> Disk.force(work.kit().resolve(f)));
            Disk.force(work.kit());
            if (!Disk.isTaken(target)) {
                steps.before("give the new folder its name");
                Files.move(work.kit(), target, StandardCopyOption.ATOMIC_MOVE);
            } else if (home.equals(target) || !isExchanged(work, journal)) {
                work.beginInPlace();
                work.replaceInPlace();
            }
            Disk.force(home);
        }
    }

    /** Beside the output folder; inside it where that is another disk or nothing can be made beside it. */
    private Path home() throws IOException {
        Path above = target.getParent();
        if (!Disk.isTaken(target)) {
            return above;
        }
        boolean beside = above != null
                && Files.isWritable(above)
                && Files.getFileStore(above).equals(Files.getFileStore(target));
        return beside ? above : target;
    }

    private boolean isExchanged(WorkFolder work, Journal journal) throws IOException {
        if (isWorkedIn() || !isAlike(target, work.kit())) {
            return false;
        }
        Set<Path> foreign = Names.in(target, journal.folders());
        foreign.removeIf(n -> journal.old().contains(Names.listed(n)) && !Disk.isFolder(target.resolve(n)));
        try {
            for (Path name : foreign) {
                if (name.getNameCount() > 1) {
                    work.makeFolder(work.kit(), name.getParent().toString());
                }
                steps.before("link " + name);
                Files.createSymbolicLink(work.kit().resolve(name), work.placeholder(name));
            }
            for (String folder : journal.folders()) {
                Path old = target.resolve(folder);
                Path fresh = work.kit().resolve(folder);
                if (Disk.isFolder(old) && Disk.isFolder(fresh) && !isAlike(old, fresh)) {
                    return false;
                }
            }
        } catch (UnsupportedOperationException e) {
            return false;
        }
        Disk.force(work.kit());
        steps.before("exchange the folders");
        if (!swap.swap(target, work.kit())) {
            return false;
        }
        return bringAlong(work, foreign);
    }

    /** Exchanges links for files; if one cannot be moved (another user's, perhaps), everything is taken back. */
    private boolean bringAlong(WorkFolder work, Set<Path> foreign) throws IOException {
        List<Path> moved = new ArrayList<>();
        for (Path name : foreign) {
            steps.before("exchange the link and " + name);
            if (!swap.swap(target.resolve(name), work.kit().resolve(name))) {
                takeBack(work, moved);
                return false;
            }
            moved.add(name);
        }
        return true;
    }

    private void takeBack(WorkFolder work, List<Path> moved) throws IOException {
        for (Path name : moved) {
            if (!swap.swap(target.resolve(name), work.kit().resolve(name))) {
                throw new IOException(name + " cannot be moved");
            }
        }
        if (!swap.swap(target, work.kit())) {
            throw new IOException("it cannot be moved");
        }
    }

    /** Whoever works in a folder would stand in the old one after an exchange, and see it emptied. */
    private boolean isWorkedIn() throws IOException {
        return Path.of("").toRealPath().startsWith(target);
    }

    /** Gives the new folder owner and permissions of the old one; false if that cannot be done. */
    private boolean isAlike(Path old, Path fresh) {
        if (!old.getFileSystem().supportedFileAttributeViews().contains("unix")) {
            return true;
        }
        try {
            for (String attribute : List.of("unix:uid", "unix:gid", "unix:mode")) {
                Object wanted = Files.getAttribute(old, attribute);
                if (!wanted.equals(Files.getAttribute(fresh, attribute))) {
                    steps.before("set " + attribute);
                    Files.setAttribute(fresh, attribute, wanted);
                }
            }
            return true;
        } catch (IOException e) {
            return false;
        }
    }
}
