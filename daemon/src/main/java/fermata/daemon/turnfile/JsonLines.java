package fermata.daemon.turnfile;

import fermata.daemon.json.BadLineException;
import fermata.daemon.json.JsonLine;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * The lines of a file of JSON lines, read as they are asked for; blank ones are passed over. Holds one line. Not
 * thread-safe; the caller closes the file.
 *
 * <p>Whoever asks may get a {@link BadLineException}, or an {@link UncheckedIOException} if the file fails.
 */
final class JsonLines implements Iterator<JsonLine> {
    /** Far beyond any line that means something; what has no lines at all would take all memory. */
    private static final int LONGEST_BYTES = 10_000_000;

    private final String name;
    private final InputStream in;
    private Optional<JsonLine> ahead = Optional.empty();
    private int number;
    private boolean ended;

    /**
     * @param name as the user named the file, for errors
     */
    JsonLines(String name, InputStream in) {
        this.name = name;
        this.in = new BufferedInputStream(in);
    }

    @Override
    public boolean hasNext() {
        while (ahead.isEmpty() && !ended) {
            String text = line();
            if (!text.isBlank()) {
                ahead = Optional.of(JsonLine.parse(name, number, text));
            }
        }
        return ahead.isPresent();
    }

    /** The next line, which stays the next one. */
    JsonLine peek() {
        if (!hasNext()) {
            throw new NoSuchElementException(name + " ended after line " + number);
        }
        return ahead.orElseThrow();
    }

    @Override
    public JsonLine next() {
        JsonLine line = peek();
        ahead = Optional.empty();
        return line;
    }

    private String line() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        number++;
        try {
            int next = in.read();
            while (next != '\n' && next >= 0) {
                if (bytes.size() == LONGEST_BYTES) {
                    throw new BadLineException(
                            name, number, "", "longer than " + LONGEST_BYTES + " bytes", "a JSON object on one line");
                }
                bytes.write(next);
                next = in.read();
            }
            ended = next < 0;
            ByteBuffer line = ByteBuffer.wrap(bytes.toByteArray());
            return StandardCharsets.UTF_8.newDecoder().decode(line).toString();
        } catch (CharacterCodingException e) {
            throw new BadLineException(name, number, "", "not UTF-8", "a JSON object in UTF-8");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
