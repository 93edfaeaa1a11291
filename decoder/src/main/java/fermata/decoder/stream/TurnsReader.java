package fermata.decoder.stream;

import fermata.decoder.cube.Turn;
import fermata.decoder.stream.FrameReading.Broken;
import fermata.decoder.stream.FrameReading.TurnsFrame;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.FrameLayout.History;
import fermata.decoder.stream.profile.FrameLayout.Turns;
import fermata.decoder.stream.profile.TurnCode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** Reads one frame of turns whose length, constants and checks are right. One use. */
final class TurnsReader {
    private final Turns layout;
    private final byte[] frame;
    private final List<FrameTurn> newestFirst = new ArrayList<>();

    TurnsReader(Turns layout, byte[] frame) {
        this.layout = layout;
        this.frame = frame;
    }

    FrameReading read() {
        OptionalLong sequence =
                layout.sequence().map(f -> OptionalLong.of(f.read(frame))).orElse(OptionalLong.empty());
        OptionalLong ticks =
                layout.clock().map(c -> OptionalLong.of(c.field().read(frame))).orElse(OptionalLong.empty());
        long fresh = layout.fresh().map(f -> f.read(frame)).orElse(1L);
        long newest = layout.code().read(frame);
        boolean nothingYet = fresh == 0
                && layout.history()
                        .flatMap(History::emptyCode)
                        .filter(e -> e == newest)
                        .isPresent();
        if (nothingYet) {
            return new TurnsFrame(sequence, ticks, 0, List.of());
        }
        Turn turn = layout.turns().get(newest);
        if (turn == null) {
            return unknown("code", layout.code().firstByte(), newest);
        }
        newestFirst.add(new FrameTurn(turn, sequence, ticks, false));
        Optional<FrameReading> fault = layout.history().flatMap(this::readHistory);
        if (fault.isPresent()) {
            return fault.get();
        }
        if (fresh > newestFirst.size()) {
            BitField field = layout.fresh().orElseThrow();
            return broken(
                    FrameFault.Kind.OUT_OF_RANGE,
                    "fresh",
                    field.firstByte(),
                    fresh,
                    "at most the " + newestFirst.size() + " turns of the frame");
        }
        List<FrameTurn> turns = new ArrayList<>(newestFirst);
        Collections.reverse(turns);
        return new TurnsFrame(sequence, ticks, (int) fresh, turns);
    }

    /** Adds the history's turns; gives the fault that stopped it. */
    private Optional<FrameReading> readHistory(History history) {
        int room = history.entries();
        while (room > 0 && endBits(history, room - 1) > frame.length * 8) {
            room--;
        }
        long filled = history.count().map(f -> f.read(frame)).orElse((long) room);
        if (filled > room) {
            return Optional.of(broken(
                    FrameFault.Kind.OUT_OF_RANGE,
                    "history.count",
                    history.count().orElseThrow().firstByte(),
                    filled,
                    "at most the " + room + " entries of the frame"));
        }
        for (int back = 1; back <= filled; back++) {
            int entry = history.newestFirst() ? back - 1 : (int) filled - back;
            TurnCode codeField = history.code().shifted(entry * history.strideBits());
            long code = codeField.read(frame);
            boolean ends = history.count().isEmpty()
                    && history.emptyCode().filter(e -> e == code).isPresent();
            if (ends) {
                return Optional.empty();
            }
            Turn turn = layout.turns().get(code);
            if (turn == null) {
                return Optional.of(unknown("history.code[" + entry + "]", codeField.firstByte(), code));
            }
            newestFirst.add(withTime(history, entry, turn));
        }
        return Optional.empty();
    }

    private FrameTurn withTime(History history, int entry, Turn turn) {
        FrameTurn newer = newestFirst.get(newestFirst.size() - 1);
        OptionalLong sequence = newer.sequence().isEmpty()
                ? OptionalLong.empty()
                : OptionalLong.of(newer.sequence().getAsLong() - 1
                        & layout.sequence().orElseThrow().allOnes());
        int shift = entry * history.strideBits();
        return history.time()
                .fold(
                        none -> new FrameTurn(turn, sequence, OptionalLong.empty(), false),
                        absolute -> at(turn, sequence, newer, absolute.field().shifted(shift)),
                        before -> before(turn, sequence, newer, before.field().shifted(shift), before.saturates()));
    }

    private FrameTurn at(Turn turn, OptionalLong sequence, FrameTurn newer, BitField field) {
        long newerTicks = newer.ticks().orElseThrow();
        long earlier = newerTicks - field.read(frame) & field.allOnes();
        return new FrameTurn(turn, sequence, OptionalLong.of(newerTicks - earlier & wrap()), false);
    }

    private FrameTurn before(Turn turn, OptionalLong sequence, FrameTurn newer, BitField field, boolean saturates) {
        long difference = field.read(frame);
        boolean isBound = newer.ticksAreBound() || saturates && difference == field.allOnes();
        long newerTicks = newer.ticks().orElseThrow();
        return new FrameTurn(turn, sequence, OptionalLong.of(newerTicks - difference & wrap()), isBound);
    }

    private long wrap() {
        return layout.clock().orElseThrow().field().allOnes();
    }

    private static int endBits(History history, int entry) {
        return Math.max(history.code().endBits(), history.time().endBits()) + entry * history.strideBits();
    }

    private FrameReading unknown(String name, int firstByte, long code) {
        return broken(FrameFault.Kind.UNKNOWN_TURN, name, firstByte, code, "a code of the profile's table of turns");
    }

    private FrameReading broken(FrameFault.Kind kind, String name, int firstByte, long value, String expected) {
        return new Broken(
                new FrameFault(kind, layout.envelope().name() + "." + name, firstByte, Long.toString(value), expected));
    }
}
