package org.runbend.export.page;

import java.util.List;

/**
 * Who may come in. A token that works once gives a cookie; with the cookie a page gets a second token for its requests. Every
 * request names this very host; one that changes anything comes from this very origin and carries the second token.
 */
final class Gate {
    static final String HEADER = "Runbend-Token";

    private final String host;
    private final String cookie;
    private final String session = Secrets.fresh();
    private final String header = Secrets.fresh();
    private final String once = Secrets.fresh();
    private boolean used;

    Gate(int port) {
        this.host = "127.0.0.1:" + port;
        this.cookie = "runbend-" + port;
    }

    /** The address of the page. */
    String address() {
        return "http://" + host + "/";
    }

    /** The token that lets one browser in. */
    String once() {
        return once;
    }

    /** What the page's own requests carry. */
    String header() {
        return header;
    }

    /** Refuses a request for another host: a name that an attacker made to lead here. */
    void checkHost(Call call) {
        if (!call.headers("Host").equals(List.of(host))) {
            throw new Refused(421, "this is not the host that you asked for");
        }
    }

    /** The cookie for whoever has the token, once; from a file that the command wrote, or from the page itself. */
    String enter(Call call, String token) {
        List<String> origin = call.headers("Origin");
        boolean own = origin.equals(List.of("http://" + host));
        if (!own && !origin.equals(List.of("null"))) {
            throw new Refused(403, "this did not come from the page");
        }
        synchronized (this) {
            if (used || !Secrets.same(once, token)) {
                throw new Refused(
                        403,
                        used && Secrets.same(once, token)
                                ? "this way in was used before; start runbend page again"
                                : "this is not the way in; open the address that runbend page told");
            }
            used = true;
        }
        return cookie + "=" + session + "; Path=/; HttpOnly; SameSite=Strict";
    }

    boolean isIn(Call call) {
        String wanted = cookie + "=" + session;
        return call.headers("Cookie").stream()
                .flatMap(line -> List.of(line.split(";", -1)).stream())
                .anyMatch(part -> Secrets.same(wanted, part.strip()));
    }

    /** Refuses whoever has no cookie, and other sites that have a browser with one. */
    void checkRead(Call call) {
        List<String> site = call.headers("Sec-Fetch-Site");
        if (!isIn(call) || !(site.isEmpty() || site.equals(List.of("same-origin")) || site.equals(List.of("none")))) {
            throw new Refused(403, "only the page that runbend page opened may ask this");
        }
    }

    /** Refuses what changes anything unless the page itself sends it. */
    void checkChange(Call call) {
        checkRead(call);
        List<String> token = call.headers(HEADER);
        if (!call.headers("Origin").equals(List.of("http://" + host))
                || token.size() != 1
                || !Secrets.same(header, token.get(0))) {
            throw new Refused(403, "only the page that runbend page opened may change anything");
        }
    }
}
