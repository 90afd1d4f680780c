package org.runbend.export.page;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.StringWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The page in a process of its own, as a person starts it, and one client of it that speaks HTTP by another's library. */
public final class ServedPage implements AutoCloseable {
    private static final Pattern ADDRESS = Pattern.compile("Open (http://127\\.0\\.0\\.1:(\\d+)/)#token=(\\S+)");

    private final Process process;
    private final BufferedReader out;
    private final Path folder;
    private final String base;
    private final int port;
    private final String once;
    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private String cookie = "";
    private String token = "";

    private ServedPage(Process process, BufferedReader out, Path folder, Matcher address) {
        this.process = process;
        this.out = out;
        this.folder = folder;
        base = address.group(1);
        port = Integer.parseInt(address.group(2));
        once = address.group(3);
    }

    /** Starts the page on {@code start} below a folder, with the examples in it, and drafts beside. */
    public static ServedPage start(Path folder, String... options) throws IOException {
        Path start = Files.createDirectories(folder.resolve("start"));
        Path examples = Path.of("..", "examples");
        try (Stream<Path> all = Files.list(examples)) {
            for (Path file : all.filter(p -> p.toString().endsWith(".yaml")).toList()) {
                Path copy = start.resolve(file.getFileName());
                if (!Files.exists(copy)) {
                    Files.copy(file, copy);
                }
            }
        }
        return startOn(folder, start, options);
    }

    /** Starts the page on a folder as it is. */
    static ServedPage startOn(Path folder, Path start, String... options) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx300m",
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                "org.runbend.export.cli.Runbend",
                "page",
                start.toString(),
                "--no-browser",
                "--drafts",
                folder.resolve("drafts").toString()));
        command.addAll(List.of(options));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        String line = out.readLine();
        Matcher address = ADDRESS.matcher(String.valueOf(line));
        if (!address.matches()) {
            process.destroyForcibly();
            throw new IllegalStateException("the page did not start: " + line);
        }
        return new ServedPage(process, out, folder.resolve("start"), address);
    }

    public Path folder() {
        return folder;
    }

    public String base() {
        return base;
    }

    int port() {
        return port;
    }

    String once() {
        return once;
    }

    String cookie() {
        return cookie;
    }

    String token() {
        return token;
    }

    Process process() {
        return process;
    }

    /** The address for a browser. */
    public String address() {
        return base + "#token=" + once;
    }

    HttpClient client() {
        return client;
    }

    /** What the process printed after its address, until it ended. */
    List<String> rest() {
        return out.lines().toList();
    }

    /** Uses the one-time token. */
    ServedPage enter() throws IOException, InterruptedException {
        HttpResponse<String> answer = send(HttpRequest.newBuilder(URI.create(base + "enter"))
                .header("Origin", origin())
                .POST(HttpRequest.BodyPublishers.ofString("token=" + once)));
        String set = answer.headers().firstValue("Set-Cookie").orElseThrow();
        cookie = set.substring(0, set.indexOf(';'));
        Matcher found = Pattern.compile("\"token\":\"([^\"]+)\"")
                .matcher(get("api/session").body());
        if (!found.find()) {
            throw new IllegalStateException("no token");
        }
        token = found.group(1);
        return this;
    }

    String origin() {
        return base.substring(0, base.length() - 1);
    }

    HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(
                request.timeout(Duration.ofSeconds(60)).build(),
                HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
    }

    HttpRequest.Builder asking(String path) {
        return HttpRequest.newBuilder(URI.create(base + path)).header("Cookie", cookie);
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(asking(path));
    }

    byte[] bytes(String path) throws IOException, InterruptedException {
        return client.send(asking(path).build(), HttpResponse.BodyHandlers.ofByteArray())
                .body();
    }

    HttpResponse<String> post(String path, String json) throws IOException, InterruptedException {
        return send(asking(path)
                .header("Origin", origin())
                .header("Runbend-Token", token)
                .POST(HttpRequest.BodyPublishers.ofString(json)));
    }

    /** A JSON object of texts: keys and values in turns. */
    static String json(String... keysAndValues) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            for (int i = 0; i < keysAndValues.length; i += 2) {
                json.writeStringField(keysAndValues[i], keysAndValues[i + 1]);
            }
            json.writeEndObject();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return text.toString();
    }

    /** Begins a plan; its id. */
    String plan(String name, String text, String... more) throws IOException, InterruptedException {
        String[] all = Stream.concat(Stream.of("name", name, "text", text), Stream.of(more))
                .toArray(String[]::new);
        String body = post("api/plans", json(all)).body();
        Matcher id = Pattern.compile("\\{\"plan\":\"([^\"]+)\"}").matcher(body);
        if (!id.matches()) {
            throw new IllegalStateException(body);
        }
        return id.group(1);
    }

    /** All events of a plan, waited for: kind, a blank, data. */
    List<String> events(String plan) throws IOException, InterruptedException {
        List<String> events = new ArrayList<>();
        try (Stream<String> lines = client.send(
                        asking("api/plans/" + plan + "/events").build(), HttpResponse.BodyHandlers.ofLines())
                .body()) {
            String[] kind = {""};
            lines.forEach(line -> {
                if (line.startsWith("event: ")) {
                    kind[0] = line.substring("event: ".length());
                } else if (line.startsWith("data: ")) {
                    events.add(kind[0] + " " + line.substring("data: ".length()));
                }
            });
        }
        return events;
    }

    /** Plans and waits for the files; the plan's id. */
    String planned(String name, String text) throws IOException, InterruptedException {
        String id = plan(name, text);
        List<String> events = events(id);
        if (events.stream().noneMatch(e -> e.startsWith("files "))) {
            throw new IllegalStateException(events.toString());
        }
        return id;
    }

    @Override
    public void close() {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroy();
        process.onExit().join();
    }
}
