package fermata.daemon.http;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What a client asks: everything of a request but its body. Immutable.
 *
 * @param method upper case, {@code GET}
 * @param path decoded, beginning with a slash
 * @param query as it was written, without the question mark; empty if there is none
 * @param isOld whether it is of HTTP/1.0, where connections end unless told otherwise
 * @param fields by name in lower case, every value in its order
 */
public record RequestHead(String method, String path, String query, boolean isOld, Map<String, List<String>> fields) {
    private static final Pattern METHOD = Pattern.compile("[A-Z]{1,20}");
    /** Origin form (RFC 9112, 3.2.1): what browsers send to a server. Nothing but visible ASCII belongs in it. */
    private static final Pattern TARGET = Pattern.compile("/[!-~&&[^#]]{0,4095}");

    private static final Pattern NAME = Pattern.compile("[!#$%&'*+.^_`|~0-9A-Za-z-]{1,100}");
    private static final int MOST_FIELDS = 100;
    private static final List<String> ONLY_ONCE = List.of("host", "content-length");

    public RequestHead {
        fields = Map.copyOf(fields);
    }

    /**
     * Reads a head.
     *
     * @param text its lines with CRLF between them, without the empty line at its end
     * @throws BadRequest if it is no request that is served here
     */
    static RequestHead parse(String text) throws BadRequest {
        String[] lines = text.split("\r\n", -1);
        String[] words = lines[0].split(" ", -1);
        if (words.length != 3
                || !METHOD.matcher(words[0]).matches()
                || !TARGET.matcher(words[1]).matches()) {
            throw new BadRequest(400, "the first line must be a method, a path and a version");
        }
        boolean isOld = words[2].equals("HTTP/1.0");
        if (!isOld && !words[2].equals("HTTP/1.1")) {
            throw new BadRequest(505, "only HTTP/1.1 and HTTP/1.0 are spoken here");
        }
        if (lines.length - 1 > MOST_FIELDS) {
            throw new BadRequest(431, "a request has at most " + MOST_FIELDS + " header fields");
        }
        int mark = words[1].indexOf('?');
        String path = mark < 0 ? words[1] : words[1].substring(0, mark);
        String query = mark < 0 ? "" : words[1].substring(mark + 1);
        return new RequestHead(words[0], decoded(path), query, isOld, fields(lines));
    }

    private static String decoded(String path) throws BadRequest {
        try {
            // In a path a plus sign is a plus sign.
            return URLDecoder.decode(path.replace("+", "%2B"), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException broken) {
            throw new BadRequest(400, "the path has a percent sign without two digits");
        }
    }

    private static Map<String, List<String>> fields(String[] lines) throws BadRequest {
        Map<String, List<String>> fields = new LinkedHashMap<>();
        for (int line = 1; line < lines.length; line++) {
            int colon = lines[line].indexOf(':');
            // A line that begins with white space would go on with the one before: an old way to hide a field.
            if (colon < 1 || !NAME.matcher(lines[line].substring(0, colon)).matches()) {
                throw new BadRequest(400, "header field " + line + " has no name");
            }
            String name = lines[line].substring(0, colon).toLowerCase(Locale.ROOT);
            List<String> values = fields.computeIfAbsent(name, same -> new ArrayList<>());
            values.add(lines[line].substring(colon + 1).strip());
            if (values.size() > 1 && ONLY_ONCE.contains(name)) {
                throw new BadRequest(400, "the header field " + name + " stands twice");
            }
        }
        fields.replaceAll((name, values) -> List.copyOf(values));
        return fields;
    }

    /** The first value of a field, by its name in any case. */
    public Optional<String> field(String name) {
        return all(name).stream().findFirst();
    }

    /** All values of a field. */
    public List<String> all(String name) {
        return fields.getOrDefault(name.toLowerCase(Locale.ROOT), List.of());
    }

    /** Whether a body is promised. */
    public boolean hasBody() {
        return !field("Content-Length").orElse("0").equals("0")
                || field("Transfer-Encoding").isPresent();
    }

    /** Whether the client would use the connection again. */
    boolean keepsConnection() {
        String wish = field("Connection").orElse(isOld ? "close" : "keep-alive").toLowerCase(Locale.ROOT);
        return !isOld && !wish.contains("close");
    }
}
