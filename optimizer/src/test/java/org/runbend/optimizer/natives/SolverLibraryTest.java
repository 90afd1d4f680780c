package org.runbend.optimizer.natives;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The libraries are unpacked once, for this user alone, and whole. */
class SolverLibraryTest {
    @TempDir
    Path folder;

    private Path cache;
    private Path temporary;

    @BeforeEach
    void lay() throws IOException {
        assumeTrue(folder.getFileSystem().supportedFileAttributeViews().contains("posix"), "this system has no modes");
        cache = folder.resolve("user").resolve("runbend");
        temporary = Files.createDirectory(folder.resolve("temporary"));
    }

    private Bundle bundle(String content) throws IOException {
        Path jar = folder.resolve(content + ".jar");
        try (OutputStream file = Files.newOutputStream(jar);
                JarOutputStream out = new JarOutputStream(file)) {
            for (String name : List.of("libs/a.so", "libs/b.so", "other/c.so", "libs/deep/d.so")) {
                out.putNextEntry(new JarEntry(name));
                out.write((content + name).getBytes(java.nio.charset.StandardCharsets.UTF_8));
                out.closeEntry();
            }
        }
        return new Bundle(new JarFile(jar.toFile()), "libs/");
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    private Path loaded(Bundle bundle) {
        List<Path> places = new ArrayList<>();
        SolverLibrary.load(bundle, List.of(cache), temporary, places::add);
        assertEquals(1, places.size());
        return places.get(0);
    }

    @Test
    void unpackedOnceAndAgainOnlyForOtherContent() throws IOException {
        Path first = loaded(bundle("one"));
        assertEquals(List.of("a.so", "b.so"), names(first));
        assertTrue(first.startsWith(cache.toRealPath()));
        Object made = Files.getLastModifiedTime(first.resolve("a.so"));
        assertEquals(first, loaded(bundle("one")));
        assertEquals(made, Files.getLastModifiedTime(first.resolve("a.so")), "not unpacked again");
        assertNotEquals(first, loaded(bundle("two")));
        assertEquals("[OWNER_READ, OWNER_WRITE, OWNER_EXECUTE]", modes(cache));
        assertEquals("[OWNER_READ, OWNER_WRITE, OWNER_EXECUTE]", modes(first));
        assertEquals(List.of(), names(temporary));
    }

    private static String modes(Path path) throws IOException {
        return new java.util.TreeSet<>(Files.getPosixFilePermissions(path)).toString();
    }

    /** What a killed run or a full disk left is no library: cut short, or half a folder of a process that lives no more. */
    @Test
    void halvesAreCleared() throws IOException {
        Path first = loaded(bundle("one"));
        Files.writeString(first.resolve("b.so"), "o");
        Path half = Files.createDirectory(cache.resolve("new-999999999-5"));
        Files.writeString(half.resolve("a.so"), "o");
        Path living = Files.createDirectory(
                cache.resolve("new-" + ProcessHandle.current().pid() + "-5"));
        assertEquals(first, loaded(bundle("one")));
        assertEquals("onelibs/b.so", Files.readString(first.resolve("b.so")));
        assertFalse(Files.exists(half));
        assertTrue(Files.exists(living));
    }

    /** Libraries that somebody else could have put there are not loaded: a folder for this process does. */
    @Test
    void foldersOfOthers() throws IOException {
        Path first = loaded(bundle("one"));
        Files.setAttribute(first, "unix:mode", 0777);
        assertTrue(loaded(bundle("one")).startsWith(temporary.toRealPath()));
        Files.setAttribute(first, "unix:mode", 0700);
        Files.setAttribute(cache, "unix:mode", 0770);
        assertTrue(loaded(bundle("one")).startsWith(temporary.toRealPath()));
        Files.setAttribute(cache, "unix:mode", 0700);
        assertEquals(first, loaded(bundle("one")));
        Files.move(first, folder.resolve("theirs"));
        Files.createSymbolicLink(first, folder.resolve("theirs"));
        assertTrue(loaded(bundle("one")).toRealPath().startsWith(cache.toRealPath()), "a link is replaced");
        assertTrue(Files.exists(folder.resolve("theirs").resolve("a.so")), "and not followed");
    }

    /** A cache from which nothing may be executed: the temporary folder; where that is none, one line says what helps. */
    @Test
    void folderThatExecutesNothing() throws IOException {
        List<Path> tried = new ArrayList<>();
        SolverLibrary.load(bundle("one"), List.of(cache), temporary, place -> {
            tried.add(place);
            if (place.startsWith(folder.resolve("user"))) {
                throw new UnsatisfiedLinkError("failed to map segment from shared object");
            }
        });
        assertEquals(2, tried.size());
        Bundle bundle = bundle("one");
        NoSolver e = assertThrows(
                NoSolver.class,
                () -> SolverLibrary.load(bundle, List.of(cache), folder.resolve("gone"), place -> {
                    throw new UnsatisfiedLinkError("failed to map segment from shared object");
                }));
        assertTrue(
                e.getMessage().startsWith("the solver's libraries cannot be unpacked (" + cache + ": failed to map"),
                e::getMessage);
        assertTrue(e.getMessage().endsWith(SolverLibrary.HELP), e::getMessage);
        assertEquals(1, e.getMessage().lines().count());
    }
}
