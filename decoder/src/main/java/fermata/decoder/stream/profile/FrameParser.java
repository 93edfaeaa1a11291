package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.profile.FrameLayout.Clock;
import fermata.decoder.stream.profile.FrameLayout.Envelope;
import fermata.decoder.stream.profile.FrameLayout.History;
import fermata.decoder.stream.profile.FrameLayout.HistoryTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads one frame layout of a profile. Stateless. */
final class FrameParser {
    private enum Kind {
        TURNS,
        STATE,
        ORIENTATION,
        BATTERY,
        OTHER
    }

    private static final Map<String, Kind> KINDS = Map.of(
            "turns",
            Kind.TURNS,
            "state",
            Kind.STATE,
            "orientation",
            Kind.ORIENTATION,
            "battery",
            Kind.BATTERY,
            "other",
            Kind.OTHER);

    private FrameParser() {}

    static FrameLayout frame(JsonSpot spot, String name) {
        Kind kind = spot.member("kind", "one of turns, state, orientation, battery, other")
                .choice(KINDS, Kind.BATTERY);
        Envelope envelope = FieldParser.envelope(spot, name);
        FrameLayout layout = switch (kind) {
            case TURNS -> turns(spot, envelope);
            case STATE -> state(spot, envelope);
            case ORIENTATION -> OrientationParser.orientation(spot, envelope);
            case BATTERY -> battery(spot, envelope);
            case OTHER -> new FrameLayout.Other(envelope);
        };
        spot.close();
        return layout;
    }

    private static FrameLayout battery(JsonSpot spot, Envelope envelope) {
        return new FrameLayout.Battery(
                envelope, FieldParser.unsigned(spot.member("percent", "the field of the charge"), envelope.minBytes()));
    }

    private static FrameLayout state(JsonSpot spot, Envelope envelope) {
        Optional<BitField> sequence = unsigned(spot, "sequence", envelope);
        Optional<Clock> clock = spot.optional("clock").map(s -> clock(s, envelope));
        Optional<JsonSpot> stickers = spot.optional("stickers");
        Optional<JsonSpot> cubies = spot.optional("cubies");
        if (stickers.isPresent() && cubies.isPresent()) {
            spot.expected("only one of stickers and cubies");
        }
        StateEncoding encoding = stickers.map(s -> StateParser.stickers(s, envelope))
                .orElseGet(() -> StateParser.cubies(spot.member("cubies", "stickers or cubies"), envelope));
        return new FrameLayout.State(envelope, sequence, clock, encoding);
    }

    private static FrameLayout turns(JsonSpot spot, Envelope envelope) {
        Optional<BitField> sequence = unsigned(spot, "sequence", envelope);
        Optional<Clock> clock = spot.optional("clock").map(s -> clock(s, envelope));
        Optional<BitField> fresh = unsigned(spot, "fresh", envelope);
        TurnCode code =
                FieldParser.code(spot.member("code", "the field of the newest turn's code"), envelope.minBytes());
        Map<Long, Turn> table = table(spot.member("turns", "an object from code to turn"), code);
        Optional<History> history = spot.optional("history").map(s -> history(s, envelope, code, clock.isPresent()));
        if (history.isPresent() && sequence.isEmpty() && fresh.isEmpty()) {
            spot.expected("a sequence or fresh beside the history: nothing else tells which of its turns are new");
        }
        if (fresh.isPresent() && history.isEmpty()) {
            spot.expected("a history beside fresh: a frame without one holds one turn");
        }
        if (sequence.isPresent() && history.isPresent()) {
            long numbers = 1L << sequence.get().widthBits();
            if (numbers <= 2L * (history.get().entries() + 1)) {
                spot.expected("a sequence of more than " + 2 * (history.get().entries() + 1)
                        + " numbers for a history of " + history.get().entries() + " turns; it has " + numbers);
            }
        }
        return new FrameLayout.Turns(envelope, sequence, clock, fresh, code, history, table);
    }

    static Clock clock(JsonSpot spot, Envelope envelope) {
        BitField field = FieldParser.openField(spot, envelope.minBytes());
        if (field.signed()) {
            spot.expected("a clock that is not signed");
        }
        double tickMicros = spot.member("tickMicros", "microseconds a tick").number(0, 1e6);
        spot.close();
        return new Clock(field, tickMicros);
    }

    private static Map<Long, Turn> table(JsonSpot spot, TurnCode code) {
        Map<Long, Turn> table = new LinkedHashMap<>();
        long max = code.signed() ? code.allOnes() >> 1 : code.allOnes();
        long min = code.signed() ? -max - 1 : 0;
        spot.entries("an object from code to turn, such as {\"0\": \"U\"}").forEach((key, value) -> {
            if (!key.matches("-?\\d{1,15}") || Long.parseLong(key) < min || Long.parseLong(key) > max) {
                value.expected("a code that is a whole number in " + min + ".." + max + " as the member's name");
                return;
            }
            String text = value.text("a face turn such as \"R\", \"R2\" or \"R'\"");
            if (text.matches("[URFDLB](2|')?")) {
                table.put(Long.parseLong(key), Turn.parse(text));
            } else if (!text.isEmpty()) {
                value.expected("a face turn such as \"R\", \"R2\" or \"R'\"");
            }
        });
        if (spot.isObject()) {
            for (Face face : Face.values()) {
                for (int quarters = 1; quarters <= 3; quarters += 2) {
                    if (!table.containsValue(Turn.of(face, quarters))) {
                        spot.expected("a code for " + Turn.of(face, quarters));
                    }
                }
            }
        }
        return table;
    }

    private static History history(JsonSpot spot, Envelope envelope, TurnCode newest, boolean hasClock) {
        int limit = envelope.maxBytes();
        int stride =
                (int) spot.member("stride", "bits from one entry to the next").integer(1, 4096);
        int entries =
                (int) spot.member("entries", "how many turns there is room for").integer(1, 255);
        boolean newestFirst = spot.member("order", "newest-first or newest-last")
                .choice(Map.of("newest-first", true, "newest-last", false), true);
        Optional<BitField> count = unsigned(spot, "count", envelope);
        TurnCode code = FieldParser.code(spot.member("code", "the field of entry 0's turn code"), limit);
        if (!widths(code).equals(widths(newest)) || code.signed() != newest.signed()) {
            spot.expected("codes of the same width and sign as the newest turn's: they share its table");
        }
        Optional<Long> empty = spot.optional("empty").map(s -> s.integer(-code.allOnes(), code.allOnes()));
        HistoryTime time = historyTime(spot, limit);
        if (!(time instanceof HistoryTime.None) && !hasClock) {
            spot.expected("a clock of the newest turn beside times of the others");
        }
        spot.close();
        int last = Math.max(code.endBits(), time.endBits()) + stride * (entries - 1);
        if (last > limit * 8) {
            spot.expected(entries + " entries that end within the " + limit + " bytes of the frame; they end at bit "
                    + last + " of " + limit * 8);
        }
        if (!newestFirst && count.isEmpty() && empty.isEmpty() && envelope.minBytes() != envelope.maxBytes()) {
            spot.expected(
                    "a count or an empty code: newest-last in a frame of changing length leaves open which entries"
                            + " there are");
        }
        return new History(stride, entries, newestFirst, count, empty, code, time);
    }

    private static List<Integer> widths(TurnCode code) {
        return code.parts().stream().map(BitField::widthBits).toList();
    }

    private static HistoryTime historyTime(JsonSpot spot, int limit) {
        Optional<JsonSpot> ticks = spot.optional("ticks");
        Optional<JsonSpot> before = spot.optional("before");
        if (ticks.isPresent() && before.isPresent()) {
            spot.expected("at most one of ticks and before");
        }
        if (before.isPresent()) {
            BitField field = FieldParser.openField(before.get(), limit);
            if (field.signed()) {
                before.get().expected("a difference that is not signed");
            }
            boolean saturates =
                    before.get().optional("saturates").map(JsonSpot::flag).orElse(false);
            before.get().close();
            return new HistoryTime.BeforeNewer(field, saturates);
        }
        return ticks.<HistoryTime>map(s -> new HistoryTime.Absolute(FieldParser.unsigned(s, limit)))
                .orElseGet(HistoryTime.None::new);
    }

    private static Optional<BitField> unsigned(JsonSpot spot, String name, Envelope envelope) {
        return spot.optional(name).map(s -> FieldParser.unsigned(s, envelope.minBytes()));
    }
}
