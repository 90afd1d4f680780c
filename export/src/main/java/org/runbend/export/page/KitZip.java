package org.runbend.export.page;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** The files of a kit in one; the same kit gives the same bytes. */
final class KitZip {
    /** The first time that a zip can say; there is no clock in what leaves. */
    private static final LocalDateTime NEVER = LocalDateTime.of(1980, 1, 1, 0, 0);

    private KitZip() {}

    /** Writes files of a folder by their names, which are those that a kit has. */
    static void write(Path folder, List<String> names, OutputStream out) throws IOException {
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (String name : names) {
                ZipEntry entry = new ZipEntry(name);
                entry.setTimeLocal(NEVER);
                zip.putNextEntry(entry);
                Files.copy(folder.resolve(name), zip);
                zip.closeEntry();
            }
        }
    }
}
