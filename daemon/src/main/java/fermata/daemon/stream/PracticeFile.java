package fermata.daemon.stream;

import fermata.analysis.event.Event;
import fermata.daemon.json.BadLineException;
import fermata.daemon.json.JsonLine;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A file that can be imported: turn streams one after the other, or reconstructions one a line.
 *
 * <p>Stateless. The whole file is read before anything is kept; linear in it.
 */
public final class PracticeFile {
    private PracticeFile() {}

    /**
     * Reads a file.
     *
     * @param name as the user named it, for errors
     * @param bytes all of it
     * @throws BadLineException for the first line that is wrong
     */
    public static List<TurnStream> read(String name, byte[] bytes) {
        List<JsonLine> lines = lines(name, bytes);
        if (lines.isEmpty()) {
            throw new BadLineException(name, 1, "", "missing", "a turn stream's header or a reconstruction");
        }
        if (StreamHeader.is(lines.get(0))) {
            return streams(lines);
        }
        if (Reconstruction.is(lines.get(0))) {
            return lines.stream().map(Reconstruction::read).toList();
        }
        throw lines.get(0)
                .bad("a turn stream's header (with \"format\") or a reconstruction (with \"scramble\" and \"lines\")");
    }

    static List<JsonLine> lines(String name, byte[] bytes) {
        List<JsonLine> lines = new ArrayList<>();
        int number = 1;
        int start = 0;
        for (int end = 0; end <= bytes.length; end++) {
            if (end == bytes.length || bytes[end] == '\n') {
                String text = utf8(name, number, ByteBuffer.wrap(bytes, start, end - start));
                if (!text.isBlank()) {
                    lines.add(JsonLine.parse(name, number, text));
                }
                number++;
                start = end + 1;
            }
        }
        return lines;
    }

    private static String utf8(String name, int number, ByteBuffer line) {
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(line).toString();
        } catch (CharacterCodingException e) {
            throw new BadLineException(name, number, "", "not UTF-8", "a JSON object in UTF-8");
        }
    }

    private static List<TurnStream> streams(List<JsonLine> lines) {
        List<TurnStream> streams = new ArrayList<>();
        int at = 0;
        while (at < lines.size()) {
            int end = at + 1;
            while (end < lines.size() && !StreamHeader.is(lines.get(end))) {
                end++;
            }
            streams.add(stream(lines.subList(at, end)));
            at = end;
        }
        return streams;
    }

    private static TurnStream stream(List<JsonLine> lines) {
        StreamHeader header = StreamHeader.read(lines.get(0));
        EventLines reader = new EventLines(TurnStream.NO_CAPTURE, header.origin(), header.clock());
        List<Event> events = new ArrayList<>();
        long latest = 0;
        for (JsonLine line : lines.subList(1, lines.size())) {
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
