package org.runbend.optimizer.natives;

import com.google.ortools.Loader;
import com.sun.jna.Platform;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;

/**
 * Loads the solver's native libraries, some 60 MB. They are unpacked once into a cache of the user's; where there is none, or
 * nothing in it may be executed, into a folder for this process that is deleted at its end. The environment variable
 * {@code RUNBEND_CACHE} names another cache.
 */
public final class SolverLibrary {
    /** Words for a person who has no folder that takes the libraries. */
    static final String HELP =
            "set RUNBEND_CACHE to a folder of your own that can be written and executed from, with 100 MB" + " free";

    private static final AtomicBoolean LOADED = new AtomicBoolean();

    private SolverLibrary() {}

    /**
     * To be called before any solver object is made; does its work once.
     *
     * @throws NoSolver if no folder takes the libraries
     */
    public static synchronized void load() {
        if (LOADED.get()) {
            return;
        }
        if (Platform.isWindows()) {
            Loader.loadNativeLibraries(); // libraries there find each other by the order of loading, which the loader
            // knows
        } else {
            load(
                    Bundle.ofSystem(),
                    UserCache.folder().stream().toList(),
                    Path.of(System.getProperty("java.io.tmpdir", "/tmp")));
        }
        LOADED.set(true);
    }

    private static void load(Bundle bundle, List<Path> caches, Path temporary) {
        load(
                bundle,
                caches,
                temporary,
                folder -> System.load(
                        folder.resolve(System.mapLibraryName("jniortools")).toString()));
    }

    /** Tries each cache, then the temporary folder. */
    static void load(Bundle bundle, List<Path> caches, Path temporary, Consumer<Path> loader) {
        List<String> reasons = new ArrayList<>();
        for (Path cache : caches) {
            try {
                loader.accept(new CacheFolder(cache).unpacked(bundle));
                return;
            } catch (IOException | UnsatisfiedLinkError | UnsupportedOperationException e) {
                reasons.add(cache + ": " + reason(e));
            }
        }
        try {
            Path own = Files.createTempDirectory(temporary, "runbend-solver-");
            Runtime.getRuntime().addShutdownHook(new Thread(() -> CacheFolder.delete(own)));
            bundle.unpack(own);
            loader.accept(own.toRealPath());
        } catch (IOException | UnsatisfiedLinkError e) {
            reasons.add(temporary + ": " + reason(e));
            throw new NoSolver(
                    "the solver's libraries cannot be unpacked (" + String.join("; ", reasons) + "); " + HELP, e);
        }
    }

    private static String reason(Throwable e) {
        String text = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
        return e instanceof java.nio.file.FileSystemException f && f.getReason() == null
                ? e.getClass().getSimpleName()
                : text.lines().findFirst().orElse("");
    }
}
