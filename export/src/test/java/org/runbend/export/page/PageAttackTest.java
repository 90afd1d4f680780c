package org.runbend.export.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.export.CommandRun;

/** Attacks by plain sockets and the JDK's client on a page in a process of its own: refused or harmless, and the server goes on. */
class PageAttackTest {
    private static final String SECRET = "secret-word-of-a-file-outside";

    @TempDir
    static Path folder;

    private static ServedPage page;

    @BeforeAll
    static void start() throws Exception {
        String ledger = folder.resolve("shelf.db").toString();
        stock(ledger, "init");
        stock(ledger, "receive", "coil", "PX-10", "50m", "3");
        page = ServedPage.start(folder, "--cold", "--stock", ledger).enter();
        Files.writeString(folder.resolve("outside.yaml"), SECRET + ": 1\n");
        Files.createSymbolicLink(page.folder().resolve("link.yaml"), folder.resolve("outside.yaml"));
        Files.writeString(page.folder().resolve("notes.yaml"), SECRET + ": [\n");
    }

    @AfterAll
    static void end() throws Exception {
        assertEquals(200, page.get("api/session").statusCode(), "the server goes on after all that");
        page.close();
    }

    private static String stock(String ledger, String... words) {
        List<String> all = new ArrayList<>(List.of("stock"));
        all.addAll(List.of(words));
        all.addAll(List.of("--stock", ledger));
        CommandRun run = CommandRun.of(all.toArray(String[]::new));
        assertEquals(0, run.code(), run::err);
        return run.out();
    }

    private static String history() {
        return stock(folder.resolve("shelf.db").toString(), "history", "--csv");
    }

    /** What a socket got back to a request typed by hand. */
    private static String raw(String request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), page.port())) {
            socket.setSoTimeout(30_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static String get(String path, String... headers) throws IOException {
        String host = "Host: 127.0.0.1:" + page.port() + "\r\n";
        return raw("GET " + path + " HTTP/1.1\r\n" + (String.join("", headers).contains("Host:") ? "" : host)
                + "Connection: close\r\n" + String.join("\r\n", headers) + (headers.length > 0 ? "\r\n\r\n" : "\r\n"));
    }

    private static void isRefused(String answer, int... statuses) {
        String first = answer.lines().findFirst().orElse("");
        boolean refused = first.isEmpty();
        for (int status : statuses) {
            refused |= first.contains(" " + status + " ");
        }
        assertTrue(refused, () -> answer);
        assertFalse(answer.contains(page.token()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"attacker.example", "localhost", "127.0.0.1", "127.0.0.1:1", "[::1]"})
    void anotherHostIsRefused(String host) throws IOException {
        isRefused(get("/api/session", "Host: " + host, "Cookie: " + page.cookie()), 421, 400);
    }

    @Test
    void twoHostsAreRefused() throws IOException {
        isRefused(
                get(
                        "/api/session",
                        "Host: 127.0.0.1:" + page.port(),
                        "Host: attacker.example",
                        "Cookie: " + page.cookie()),
                421,
                400);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/session",
                "/api/house",
                "/api/job?name=camper.yaml",
                "/api/draft?id=d00000000",
                "/api/plans/x/events",
                "/api/stock",
                "/api/days/x/events"
            })
    void withoutTheCookieNothingIsTold(String path) throws IOException {
        isRefused(get(path), 403);
        isRefused(get(path, "Cookie: runbend-" + page.port() + "=guessed"), 403);
    }

    @Test
    void anotherSiteWithTheBrowsersCookieIsToldNothing() throws IOException {
        for (String site : List.of("cross-site", "same-site")) { // another port of this machine is the same site
            isRefused(get("/api/session", "Cookie: " + page.cookie(), "Sec-Fetch-Site: " + site), 403);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "http://attacker.example, right",
        "null, right",
        "http://127.0.0.1:1, right",
        "'', right",
        "own, wrong",
        "own, ''"
    })
    void whatChangesAnythingNeedsOriginAndToken(String origin, String token) throws Exception {
        HttpRequest.Builder request = page.asking("api/save")
                .POST(HttpRequest.BodyPublishers.ofString(ServedPage.json("name", "stolen.yaml", "text", "x: 1\n")));
        if (!origin.isEmpty()) {
            request.header("Origin", origin.equals("own") ? page.origin() : origin);
        }
        if (!token.isEmpty()) {
            request.header("Runbend-Token", token.equals("right") ? page.token() : token);
        }
        assertEquals(403, page.send(request).statusCode());
        assertFalse(Files.exists(page.folder().resolve("stolen.yaml")));
    }

    /** Orders and shelf stand behind the same gate. */
    @ParameterizedTest
    @CsvSource({
        "http://attacker.example, right",
        "null, right",
        "http://127.0.0.1:1, right",
        "'', right",
        "own, wrong",
        "own, ''"
    })
    void nobodyElseMovesStock(String origin, String token) throws Exception {
        String before = history();
        for (String path : List.of("api/stock", "api/days", "api/days/x/cancel")) {
            HttpRequest.Builder request = page.asking(path)
                    .POST(HttpRequest.BodyPublishers.ofString(ServedPage.json(
                            "act", "undo", "movement", "1", "folder", ".", "name", "x", "request", "attack-00000000")));
            if (!origin.isEmpty()) {
                request.header("Origin", origin.equals("own") ? page.origin() : origin);
            }
            if (!token.isEmpty()) {
                request.header("Runbend-Token", token.equals("right") ? page.token() : token);
            }
            assertEquals(403, page.send(request).statusCode());
            isRefused(
                    raw("POST /" + path + " HTTP/1.1\r\nHost: attacker.example\r\nCookie: " + page.cookie()
                            + "\r\nRunbend-Token: " + page.token()
                            + "\r\nContent-Length: 2\r\nConnection: close\r\n\r\n{}"),
                    421);
        }
        assertEquals(before, history());
    }

    @ParameterizedTest
    @CsvSource({
        "../outside, day",
        "/etc, day",
        "., day",
        "start, ../out",
        "start, /tmp/stolen",
        "none, day",
        "'--out=x', day",
        "'', ''",
    })
    void aDayLeavesTheFolderNowhere(String orders, String name) throws Exception {
        HttpResponse<String> answer =
                page.post("api/days", ServedPage.json("folder", orders, "name", name, "request", "attack-00000001"));
        assertTrue(answer.statusCode() == 400 || answer.statusCode() == 404, answer::body);
        try (Stream<Path> all = Files.list(folder)) {
            assertTrue(all.noneMatch(p -> p.getFileName().toString().equals("out")));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "erase, 1, '', a-request-of-its-own-1, 400",
        "undo, -1, '', a-request-of-its-own-2, 400",
        "undo, 1e3, '', a-request-of-its-own-3, 400",
        "undo, 99, '', a-request-of-its-own-4, 409",
        "undo, 1, '', short, 400",
        "undo, 1, '', \"x'); drop table movement; --\", 400",
        "confirm, '', ../../etc/passwd, a-request-of-its-own-5, 404",
        "pack, '', none, a-request-of-its-own-6, 409",
        "keep, '', '', a-request-of-its-own-7, 404",
    })
    void whatIsNoMovementIsRefusedInOneLine(String act, String movement, String order, String request, int status)
            throws Exception {
        String before = history();
        HttpResponse<String> answer = page.post(
                "api/stock", ServedPage.json("act", act, "movement", movement, "order", order, "request", request));
        assertEquals(status, answer.statusCode(), answer::body);
        assertFalse(answer.body().contains(folder.toString()), answer::body);
        assertEquals(before, history());
    }

    /** A request that comes twice is done once; its id does for nothing else. */
    @Test
    void aRequestIsDoneOnce() throws Exception {
        String undo = ServedPage.json("act", "undo", "movement", "1", "request", "once-and-not-again");
        assertTrue(page.post("api/stock", undo).body().contains("\"changed\":true"));
        HttpResponse<String> again = page.post("api/stock", undo);
        assertTrue(again.body().contains("\"changed\":false"), again::body);
        HttpResponse<String> other = page.post(
                "api/stock", ServedPage.json("act", "release", "order", "x", "request", "once-and-not-again"));
        assertEquals(409, other.statusCode(), other::body);
    }

    @Test
    void theWayInWorksOnceAndOnlyWithItsToken() throws Exception {
        for (String token : List.of(page.once(), "guessed", "")) {
            for (String origin : List.of(page.origin(), "null", "http://attacker.example")) {
                HttpResponse<String> answer = page.send(HttpRequest.newBuilder(URI.create(page.base() + "enter"))
                        .header("Origin", origin)
                        .POST(HttpRequest.BodyPublishers.ofString("token=" + token)));
                assertEquals(403, answer.statusCode());
                assertTrue(answer.headers().firstValue("Set-Cookie").isEmpty());
            }
        }
    }

    @Test
    void everyAnswerForbidsScriptsOfOthers() throws Exception {
        for (String path : List.of("", "page/app.js", "api/session", "nothing")) {
            HttpResponse<String> answer = page.get(path);
            String policy =
                    answer.headers().firstValue("Content-Security-Policy").orElse("");
            assertTrue(policy.startsWith("default-src 'none'"), policy);
            assertFalse(policy.contains("unsafe-inline"), policy);
            assertFalse(policy.contains("http"), policy);
            assertEquals(
                    "nosniff",
                    answer.headers().firstValue("X-Content-Type-Options").orElse(""));
        }
        String html = page.get("").body();
        assertFalse(html.matches("(?s).*<script[^>]*>[^<].*"), "no script in the page's own text");
        assertFalse(html.contains("style="), html);
        assertFalse(html.matches("(?s).*(?:src|href)=\"(?:https?:)?//.*"), "nothing from elsewhere");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/../../../etc/passwd",
                "/page/../../../../etc/passwd",
                "/page/%2e%2e/%2e%2e/etc/passwd",
                "/page/..%2f..%2fetc%2fpasswd",
                "/page/Assets.class",
                "/page/warm.yaml",
                "//etc/passwd",
                "/api/job?name=../outside.yaml",
                "/api/job?name=%2e%2e%2foutside.yaml",
                "/api/job?name=/etc/passwd",
                "/api/job?name=link.yaml",
                "/api/job?name=camper.yaml%00.yaml",
                "/api/job?name=.hidden.yaml",
                "/api/draft?id=../../start/camper",
                "/api/plans/../files/kit.json",
                "/api/plans/none/files/../../../outside.yaml"
            })
    void noPathLeadsOut(String path) throws IOException {
        String answer = get(path, "Cookie: " + page.cookie());
        isRefused(answer, 400, 403, 404);
        assertFalse(answer.contains(SECRET) || answer.contains("root:"), answer);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../stolen.yaml",
                "/tmp/stolen.yaml",
                "link.yaml",
                "a/../../stolen.yaml",
                "stolen.sh",
                "",
                ".bashrc",
                "none/stolen.yaml",
                "x\n.yaml"
            })
    void nothingIsSavedElsewhere(String name) throws Exception {
        HttpResponse<String> answer =
                page.post("api/save", ServedPage.json("name", name, "text", "x: 1\n", "known", SECRET + ": 1\n"));
        assertTrue(answer.statusCode() == 400 || answer.statusCode() == 404, answer::body);
        assertEquals(SECRET + ": 1\n", Files.readString(folder.resolve("outside.yaml")));
        assertFalse(Files.exists(folder.resolve("stolen.yaml")));
    }

    /** A job that somebody sends may name files of the start folder alone; of no other file a word is quoted. */
    @ParameterizedTest
    @CsvSource({
        "catalog: ../outside.yaml, outside the folder",
        "catalog: link.yaml, outside the folder",
        "catalog: /etc/passwd, outside the folder",
        "catalog: ../../../../etc/passwd, outside the folder",
        "catalog: none.yaml, no such file",
        "catalog: notes.yaml, runbend check",
        "extends: ../outside.yaml, outside the folder",
        "extends: link.yaml, outside the folder",
        "'{extends: camper.yaml, layout: {loop: {dxf: ../outside.yaml, layer: PIPE}}}', outside the folder",
        "'{extends: camper.yaml, catalog: ../outside.yaml}', outside the folder",
    })
    void aDroppedJobNamesFilesOfTheFolderAlone(String text, String word) throws Exception {
        String answer = page.post("api/read", ServedPage.json("name", "new.yaml", "text", text))
                .body();
        assertTrue(answer.contains(word), answer);
        assertFalse(answer.contains(SECRET) || answer.contains("root:"), answer);
        assertFalse(answer.contains(folder.toString()), answer);
    }

    @Test
    void aPlansProcessReadsNoOtherFileEither() throws Exception {
        String plan = page.plan(
                "new.yaml",
                Files.readString(page.folder().resolve("closet.yaml"))
                        .replace("catalog: workshop.yaml", "catalog: ../outside.yaml"));
        String events = String.join("\n", page.events(plan));
        assertTrue(events.contains("refused") && events.contains("outside the folder"), events);
        assertFalse(events.contains(SECRET), events);
    }

    @Test
    void aHundredMegabytesAreRefused() throws Exception {
        String head = "POST /api/read HTTP/1.1\r\nHost: 127.0.0.1:" + page.port() + "\r\nOrigin: " + page.origin()
                + "\r\nCookie: " + page.cookie() + "\r\nRunbend-Token: " + page.token() + "\r\n";
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), page.port())) {
            socket.setSoTimeout(10_000); // the answer comes before a byte of the body
            socket.getOutputStream()
                    .write((head + "Content-Length: 100000000\r\n\r\n").getBytes(StandardCharsets.ISO_8859_1));
            isRefused(new String(socket.getInputStream().readNBytes(20), StandardCharsets.UTF_8), 413);
        }
        // in chunks that do not say how many come
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), page.port())) {
            socket.setSoTimeout(30_000);
            OutputStream out = socket.getOutputStream();
            out.write((head + "Transfer-Encoding: chunked\r\n\r\n").getBytes(StandardCharsets.ISO_8859_1));
            byte[] chunk = ("100000\r\n" + "x".repeat(0x100000) + "\r\n").getBytes(StandardCharsets.ISO_8859_1);
            int sent = 0;
            try {
                for (; sent < 100; sent++) {
                    out.write(chunk);
                }
            } catch (IOException refused) {
                assertTrue(sent < 100); // the server has hung up
            }
            try (InputStream in = socket.getInputStream()) {
                isRefused(new String(in.readNBytes(20), StandardCharsets.UTF_8), 413);
            } catch (IOException gone) {
                assertTrue(sent < 100);
            }
        }
        assertEquals(200, page.get("api/session").statusCode());
    }

    @Test
    void aThousandHalfOpenConnectionsHinderNobody() throws Exception {
        List<Socket> open = new ArrayList<>();
        try {
            for (int i = 0; i < 1000; i++) {
                Socket socket = new Socket(InetAddress.getLoopbackAddress(), page.port());
                open.add(socket);
                if (i % 2 == 0) { // half of them say nothing at all
                    socket.getOutputStream()
                            .write("POST /api/read HTTP/1.1\r\nHost: 127".getBytes(StandardCharsets.US_ASCII));
                }
            }
            for (int i = 0; i < 5; i++) {
                long start = System.nanoTime();
                assertEquals(200, page.get("api/session").statusCode());
                assertTrue(Duration.ofNanos(System.nanoTime() - start).toSeconds() < 10);
            }
        } finally {
            for (Socket socket : open) {
                socket.close();
            }
        }
    }

    @Test
    void aBombOfAliasesIsAFault() throws Exception {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x]\n");
        for (int i = 1; i < 60; i++) {
            bomb.append(String.format(Locale.ROOT, "a%d: &a%d [*a%d, *a%d]%n", i, i, i - 1, i - 1));
        }
        String answer = page.post("api/read", ServedPage.json("name", "new.yaml", "text", bomb.toString()))
                .body();
        assertTrue(answer.contains("anchors and aliases"), answer);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{",
                "[1]",
                "{\"a\":1e999999999}",
                "{\"a\":1,\"a\":2}",
                "",
                "null",
                "{\"doc\":{\"a\":{}}}",
                "{\"name\":7,\"text\":{}}"
            })
    void oddMessagesAreAnswered(String body) throws Exception {
        int status = page.post("api/read", body).statusCode();
        assertTrue(status == 400 || status == 200, () -> body + ": " + status);
    }

    @Test
    void deepMessagesAndDeepJobsAreAnswered() throws Exception {
        String deep = "[".repeat(100_000);
        assertEquals(400, page.post("api/read", "{\"doc\":" + deep).statusCode());
        String answer = page.post("api/read", ServedPage.json("name", "new.yaml", "text", "a: " + deep))
                .body();
        assertTrue(answer.contains("nested deeper") || answer.contains("not YAML"), answer);
    }

    @Test
    void methodsThatDoNotExistAreRefused() throws Exception {
        for (String method : List.of("PUT", "DELETE", "TRACE", "OPTIONS")) {
            HttpRequest.Builder request =
                    page.asking("api/session").method(method, HttpRequest.BodyPublishers.noBody());
            assertEquals(405, page.send(request).statusCode());
        }
    }
}
