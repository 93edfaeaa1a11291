package fermata.daemon.turnfile;

import fermata.analysis.event.Event;
import fermata.daemon.json.BadLineException;
import fermata.daemon.json.JsonLine;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/**
 * A file that can be imported: turn streams one after the other, or reconstructions one a line. Read as it is asked
 * for: holds one stream, so that a file may be of many nights. Not thread-safe; the caller closes the file.
 *
 * <p>Whoever asks for the next may get a {@link BadLineException}, or an {@link java.io.UncheckedIOException} if the
 * file fails.
 */
public final class PracticeFile implements Iterator<TurnStream> {
    private final JsonLines lines;
    private final boolean isWritten;

    /**
     * Begins to read a file.
     *
     * @param name as the user named it, for errors
     * @throws BadLineException if its first line is neither a header nor a reconstruction
     */
    public PracticeFile(String name, InputStream in) {
        this.lines = new JsonLines(name, in);
        if (!lines.hasNext()) {
            throw new BadLineException(name, 1, "", "missing", "a turn stream's header or a reconstruction");
        }
        JsonLine first = lines.peek();
        this.isWritten = !StreamHeader.is(first);
        if (isWritten && !Reconstruction.is(first)) {
            throw first.bad(
                    "a turn stream's header (with \"format\") or a reconstruction (with \"scramble\" and \"lines\")");
        }
    }

    /**
     * Reads a file whole.
     *
     * @param name as the user named it, for errors
     * @param bytes all of it
     * @throws BadLineException for the first line that is wrong
     */
    public static List<TurnStream> read(String name, byte[] bytes) {
        List<TurnStream> streams = new ArrayList<>();
        new PracticeFile(name, new ByteArrayInputStream(bytes)).forEachRemaining(streams::add);
        return streams;
    }

    @Override
    public boolean hasNext() {
        return lines.hasNext();
    }

    @Override
    public TurnStream next() {
        JsonLine first = lines.next();
        return isWritten ? Reconstruction.read(first) : stream(StreamHeader.read(first));
    }

    private TurnStream stream(StreamHeader header) {
        EventLines reader = new EventLines(TurnStream.NO_CAPTURE, header.origin(), header.clock());
        List<Event> events = new ArrayList<>();
        long latest = 0;
        while (lines.hasNext() && !StreamHeader.is(lines.peek())) {
            JsonLine line = lines.next();
            Event event = reader.read(line);
            if (event.isTimed() && event.atMicros() < latest) {
                throw line.bad("at", "a time that is not before " + latest + ", the time of the line before it");
            }
            latest = Math.max(latest, event.isTimed() ? event.atMicros() : 0);
            events.add(event);
        }
        return new TurnStream(header, events);
    }
}
