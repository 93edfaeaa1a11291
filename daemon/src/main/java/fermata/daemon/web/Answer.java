package fermata.daemon.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;

/**
 * What a browser gets: a status, a kind of content, the bytes, the same gzipped, and a tag that changes with them.
 *
 * <p>Immutable as long as nobody writes to the arrays, which nobody in this package does.
 *
 * @param status the HTTP status
 * @param contentType the media type with its character set
 * @param body the bytes
 * @param gzipped the bytes compressed, or the same array as {@code body} where compressing gains nothing
 * @param tag the entity tag with its quotes
 */
record Answer(int status, String contentType, byte[] body, byte[] gzipped, String tag) {
    static final String HTML = "text/html; charset=utf-8";
    static final String JSON = "application/json; charset=utf-8";

    /** Under this a packet is sent anyway, and gzip's own frame eats the gain. */
    private static final int WORTH_COMPRESSING_BYTES = 600;

    static Answer of(int status, String contentType, byte[] body) {
        return new Answer(status, contentType, body, compress(body), tagOf(body));
    }

    static Answer json(String document) {
        return of(200, JSON, document.getBytes(StandardCharsets.UTF_8));
    }

    /** An error for a program or a page: {@code {"error": "what, where, what to do"}}. */
    static Answer error(int status, String message) {
        String document = "{\"error\":\"" + escape(message) + "\"}";
        return of(status, JSON, document.getBytes(StandardCharsets.UTF_8));
    }

    boolean isCompressed() {
        return gzipped != body;
    }

    private static String escape(String text) {
        StringBuilder escaped = new StringBuilder();
        for (char letter : text.toCharArray()) {
            if (letter == '"' || letter == '\\') {
                escaped.append('\\').append(letter);
            } else if (letter < ' ') {
                escaped.append(String.format(Locale.ROOT, "\\u%04x", (int) letter));
            } else {
                escaped.append(letter);
            }
        }
        return escaped.toString();
    }

    private static byte[] compress(byte[] body) {
        if (body.length < WORTH_COMPRESSING_BYTES) {
            return body;
        }
        ByteArrayOutputStream compressed = new ByteArrayOutputStream(body.length / 3);
        try (GZIPOutputStream gzip = new GZIPOutputStream(compressed)) {
            gzip.write(body);
        } catch (IOException impossible) {
            throw new UncheckedIOException("gzip into memory failed", impossible);
        }
        return compressed.toByteArray();
    }

    private static String tagOf(byte[] body) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(body);
            return '"' + HexFormat.of().formatHex(digest, 0, 12) + '"';
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
