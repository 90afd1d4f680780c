package org.runbend.optimizer.natives;

import com.google.ortools.Loader;
import com.sun.jna.Platform;
import java.io.IOException;
import java.io.InputStream;
import java.net.JarURLConnection;
import java.net.URL;
import java.net.URLConnection;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;

/** Files of one folder of a jar. */
final class Bundle {
    private final JarFile jar;
    /** Entries by the name that their file gets. */
    private final Map<String, JarEntry> entries = new TreeMap<>();

    Bundle(JarFile jar, String folder) {
        this.jar = jar;
        jar.stream()
                .filter(e -> !e.isDirectory() && e.getName().startsWith(folder))
                .filter(e -> e.getName().indexOf('/', folder.length()) < 0)
                .forEach(e -> entries.put(e.getName().substring(folder.length()), e));
    }

    /** The solver's libraries for this system. */
    static Bundle ofSystem() {
        String folder = "ortools-" + Platform.RESOURCE_PREFIX + "/";
        URL url = Loader.class.getClassLoader().getResource(folder);
        try {
            URLConnection connection = url == null ? null : url.openConnection();
            if (connection instanceof JarURLConnection jar) {
                return new Bundle(jar.getJarFile(), folder);
            }
            throw new NoSolver("the solver has no libraries for " + Platform.RESOURCE_PREFIX, null);
        } catch (IOException e) {
            throw new NoSolver("the solver's libraries cannot be read: " + e.getMessage(), e);
        }
    }

    /** A word for the content: SHA-256 of names, sizes and check sums of all files. */
    String key() {
        try {
            MessageDigest hash = MessageDigest.getInstance("SHA-256");
            entries.forEach((name, e) ->
                    hash.update((name + " " + e.getSize() + " " + e.getCrc() + "\n").getBytes(StandardCharsets.UTF_8)));
            return HexFormat.of().formatHex(hash.digest(), 0, 12);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Writes all files into a folder and waits until the disk has them. */
    void unpack(Path folder) throws IOException {
        for (Map.Entry<String, JarEntry> e : entries.entrySet()) {
            Path file = folder.resolve(e.getKey());
            try (InputStream in = jar.getInputStream(e.getValue())) {
                Files.copy(in, file);
            }
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
        }
    }

    /** Whether a folder holds all files at their sizes. */
    boolean isWhole(Path folder) throws IOException {
        for (Map.Entry<String, JarEntry> e : entries.entrySet()) {
            Path file = folder.resolve(e.getKey());
            if (!Files.isRegularFile(file) || Files.size(file) != e.getValue().getSize()) {
                return false;
            }
        }
        return !entries.isEmpty();
    }
}
