package org.runbend.export.page;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** One request and its answer. */
final class Call {
    /** For pages of our own: nothing but what this server sends, no script and no style in the page's text. */
    static final String OWN = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:;"
            + " connect-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";
    /** For files of a kit: pictures and papers do nothing by themselves; the page may show them. */
    static final String INERT =
            "default-src 'none'; style-src 'unsafe-inline'; object-src 'self'; frame-ancestors 'self'";

    private final HttpExchange exchange;

    Call(HttpExchange exchange) {
        this.exchange = exchange;
    }

    String method() {
        return exchange.getRequestMethod();
    }

    /** The path as it was sent, nothing decoded. */
    String path() {
        return exchange.getRequestURI().getRawPath();
    }

    /** All values of a header. */
    List<String> headers(String name) {
        return exchange.getRequestHeaders().getOrDefault(name, List.of());
    }

    /** A value of the query, decoded; empty if there is none. */
    String query(String name) {
        return values(exchange.getRequestURI().getRawQuery()).getOrDefault(name, "");
    }

    /** The fields of a form. */
    Map<String, String> form() throws IOException {
        return values(new String(body(), StandardCharsets.UTF_8));
    }

    private static Map<String, String> values(String encoded) {
        Map<String, String> values = new HashMap<>();
        for (String pair : encoded == null ? new String[0] : encoded.split("&", -1)) {
            int at = pair.indexOf('=');
            if (at > 0) {
                try {
                    values.put(
                            pair.substring(0, at), URLDecoder.decode(pair.substring(at + 1), StandardCharsets.UTF_8));
                } catch (IllegalArgumentException e) {
                    throw new Refused(400, "this address is not written as addresses are");
                }
            }
        }
        return values;
    }

    /** The body, refused before it is read where it says that it is too large, and as soon as it is. */
    byte[] body() throws IOException {
        return body(Limits.MOST_BODY);
    }

    /** As {@link #body()} with another limit, bytes. */
    byte[] body(int most) throws IOException {
        List<String> length = headers("Content-Length");
        if (!length.isEmpty() && (length.get(0).length() > 10 || Long.parseLong(length.get(0)) > most)) {
            throw tooLarge(most);
        }
        byte[] bytes = exchange.getRequestBody().readNBytes(most + 1);
        if (bytes.length > most) {
            throw tooLarge(most);
        }
        return bytes;
    }

    private static Refused tooLarge(int most) {
        return new Refused(413, "that is too large: at most " + most / 1_000_000 + " MB");
    }

    Map<String, Object> json() throws IOException {
        return Json.read(body());
    }

    void cookie(String cookie) {
        exchange.getResponseHeaders().set("Set-Cookie", cookie);
    }

    void answer(Map<String, Object> tree) throws IOException {
        send(200, "application/json", Json.write(tree).getBytes(StandardCharsets.UTF_8), OWN);
    }

    void refuse(Refused refused) throws IOException {
        byte[] words = Json.write(Map.of("words", refused.getMessage())).getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().set("Connection", "close"); // what is left of the body is not read
        send(refused.status(), "application/json", words, OWN);
    }

    void send(int status, String type, byte[] bytes, String policy) throws IOException {
        head(type, policy);
        boolean silent = method().equals("HEAD") || status == 204;
        exchange.sendResponseHeaders(status, silent || bytes.length == 0 ? -1 : bytes.length);
        if (!silent && bytes.length > 0) {
            try (OutputStream out = exchange.getResponseBody()) {
                out.write(bytes);
            }
        }
    }

    /** Offers a file to be kept under a name of ours. */
    void keepAs(String name) {
        exchange.getResponseHeaders().set("Content-Disposition", "attachment; filename=\"" + name + "\"");
    }

    /** Begins an answer of unknown length. */
    OutputStream stream(String type) throws IOException {
        head(type, OWN);
        exchange.sendResponseHeaders(200, 0);
        return exchange.getResponseBody();
    }

    private void head(String type, String policy) {
        Headers headers = exchange.getResponseHeaders();
        boolean text = type.startsWith("text/") || type.equals("application/json");
        headers.set("Content-Type", text ? type + "; charset=utf-8" : type);
        headers.set("Content-Security-Policy", policy);
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
        headers.set("Cache-Control", "no-store");
    }

    void close() {
        exchange.close();
    }
}
