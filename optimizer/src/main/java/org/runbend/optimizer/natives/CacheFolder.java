package org.runbend.optimizer.natives;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A folder of this user's that nobody else may write to. What is unpacked gets its place in one step, under a name that tells
 * its content; what killed runs left half unpacked is deleted.
 */
final class CacheFolder {
    private static final Pattern HALF = Pattern.compile("new-(\\d{1,18})-\\d+");

    private final Path folder;

    CacheFolder(Path folder) {
        this.folder = folder;
    }

    /**
     * The folder of a bundle's files, unpacked now if they are not there.
     *
     * @throws IOException if the cache cannot be used, or is not this user's alone
     */
    Path unpacked(Bundle bundle) throws IOException {
        Files.createDirectories(folder.toAbsolutePath().getParent());
        if (!Files.isDirectory(folder)) {
            Files.createDirectory(
                    folder, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        }
        Path real = folder.toRealPath();
        checkOwn(real, real);
        Path place = real.resolve("solver-" + bundle.key());
        if (isWhole(bundle, place)) {
            return place;
        }
        clear(real);
        Path fresh =
                Files.createTempDirectory(real, "new-" + ProcessHandle.current().pid() + "-");
        try {
            bundle.unpack(fresh);
            if (Files.isSymbolicLink(place)) {
                Files.delete(place);
            } else if (Files.exists(place) && !isWhole(bundle, place)) {
                delete(place);
            }
            Files.move(fresh, place, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            delete(fresh);
            if (isWhole(bundle, place)) {
                return place; // another run was faster
            }
            throw e;
        }
        return place;
    }

    private static boolean isWhole(Bundle bundle, Path place) throws IOException {
        if (!Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        checkOwn(place, place.getParent());
        return bundle.isWhole(place);
    }

    /** Libraries are programs: a folder that somebody else owns or could write is not used. */
    private static void checkOwn(Path path, Path trial) throws IOException {
        Path made = Files.createTempFile(trial, "own-", null);
        try {
            UserPrincipal user = Files.getOwner(made);
            Set<PosixFilePermission> modes = Files.getPosixFilePermissions(path);
            boolean shared = !Collections.disjoint(
                    modes, Set.of(PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE));
            if (shared || !Files.getOwner(path).equals(user)) {
                throw new IOException("this user does not own it alone");
            }
        } finally {
            Files.delete(made);
        }
    }

    /** Deletes what runs that live no more left half unpacked. */
    private static void clear(Path real) throws IOException {
        List<Path> left = new ArrayList<>();
        try (DirectoryStream<Path> all = Files.newDirectoryStream(real)) {
            all.forEach(left::add);
        }
        for (Path path : left) {
            Matcher m = HALF.matcher(path.getFileName().toString());
            if (m.matches()
                    && ProcessHandle.of(Long.parseLong(m.group(1)))
                            .filter(ProcessHandle::isAlive)
                            .isEmpty()) {
                delete(path);
            }
        }
    }

    /** Deletes a folder of plain files, as far as that is possible; links are not followed. */
    static void delete(Path place) {
        try (Stream<Path> files = Files.list(place)) {
            for (Path file : files.toList()) {
                Files.deleteIfExists(file);
            }
            Files.deleteIfExists(place);
        } catch (IOException e) {
            // a later run tries again
        }
    }
}
