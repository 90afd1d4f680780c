package org.runbend.export.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;

/** The file that a browser is opened on: it posts the one-time token, so that the token stands in no list of processes. */
final class WayIn {
    private WayIn() {}

    /** Writes the file, for this user alone. */
    static Path write(String address, String token) throws IOException {
        boolean posix = Path.of("")
                .toAbsolutePath()
                .getFileSystem()
                .supportedFileAttributeViews()
                .contains("posix");
        Path file = posix
                ? Files.createTempFile(
                        "runbend-page-",
                        ".html",
                        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")))
                : Files.createTempFile("runbend-page-", ".html");
        String page = "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>Runbend</title>"
                + "<form method=\"post\" action=\"" + address + "enter\">"
                + "<input type=\"hidden\" name=\"token\" value=\"" + token + "\">"
                + "<button>Open the page</button></form>"
                + "<script>document.forms[0].submit()</script></html>\n";
        Files.write(file, page.getBytes(StandardCharsets.UTF_8));
        return file;
    }
}
