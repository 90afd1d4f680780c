package org.runbend.optimizer.natives;

import com.sun.jna.Platform;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Where what can be made again may be kept. */
public final class UserCache {
    private UserCache() {}

    /** The folder of this user's on this system, which need not exist; empty if that is not known. {@code $RUNBEND_CACHE} names another. */
    public static Optional<Path> folder() {
        String own = System.getenv("RUNBEND_CACHE");
        if (own != null && !own.isBlank()) {
            return Optional.of(Path.of(own).toAbsolutePath());
        }
        String caches = System.getenv("XDG_CACHE_HOME");
        if (caches != null && Path.of(caches).isAbsolute()) {
            return Optional.of(Path.of(caches).resolve("runbend"));
        }
        Path home = Path.of(System.getProperty("user.home", ""));
        if (!home.isAbsolute() || !Files.isDirectory(home)) {
            return Optional.empty();
        }
        Path above = Platform.isMac() ? home.resolve("Library").resolve("Caches") : home.resolve(".cache");
        return Optional.of(above.resolve("runbend"));
    }
}
