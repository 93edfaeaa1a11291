package fermata.decoder.madeup;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.Checksum;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.FrameLayout.Clock;
import fermata.decoder.stream.profile.FrameLayout.History;
import fermata.decoder.stream.profile.FrameLayout.HistoryTime;
import fermata.decoder.stream.profile.StateEncoding;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.random.RandomGenerator;

/** Forms the frames of a layout. What is not of a turn, the extras, walks on from frame to frame. */
final class FrameWriter {
    private final FrameLayout layout;
    private final List<Extra> extras;
    private final RandomGenerator random;
    private final long[] walking;
    private int formed;

    FrameWriter(FrameLayout layout, List<Extra> extras, RandomGenerator random) {
        this.layout = layout;
        this.extras = extras;
        this.random = random;
        this.walking = extras.stream()
                .mapToLong(e -> e.kind() == Extra.Kind.BATTERY ? 60 + random.nextInt(40) : random.nextInt(64))
                .toArray();
    }

    FrameLayout layout() {
        return layout;
    }

    byte[] form(DeviceMoment moment) {
        byte[] frame = new byte[layout.envelope().maxBytes()];
        layout.envelope().constants().forEach(c -> Bits.put(frame, c.field(), c.value()));
        if (layout instanceof FrameLayout.Turns turns) {
            putTurns(turns, frame, moment);
        } else if (layout instanceof FrameLayout.State state) {
            putNumber(state.sequence(), frame, moment.sequence());
            putClock(state.clock(), frame, moment.micros());
            putState(state.encoding(), frame, moment.state());
        } else if (layout instanceof FrameLayout.Battery battery) {
            Bits.put(frame, battery.percent(), 70 - formed / 4);
        }
        putExtras(frame);
        layout.envelope().checksums().forEach(check -> putCheck(check, frame));
        formed++;
        return frame;
    }

    private static void putCheck(Checksum check, byte[] frame) {
        Bits.put(frame, check.fieldIn(frame.length), check.compute(frame));
    }

    private void putExtras(byte[] frame) {
        for (int i = 0; i < extras.size(); i++) {
            BitField field = extras.get(i).field();
            walking[i] = switch (extras.get(i).kind()) {
                case RANDOM -> random.nextLong() & field.allOnes();
                case SLOW -> walking[i] + (random.nextInt(8) == 0 ? random.nextInt(3) - 1 : 0) & field.allOnes();
                case SATURATING -> Math.min(field.allOnes(), walking[i] + random.nextInt(3));
                case REPEATED -> formed % 5 == 0 ? random.nextLong() & field.allOnes() : walking[i];
                case BATTERY -> Math.max(0, walking[i] - (random.nextInt(60) == 0 ? 1 : 0));
            };
            Bits.put(frame, field, walking[i]);
        }
    }

    private static void putNumber(Optional<BitField> field, byte[] frame, long value) {
        field.ifPresent(f -> Bits.put(frame, f, value & f.allOnes()));
    }

    private static void putClock(Optional<Clock> clock, byte[] frame, double micros) {
        clock.ifPresent(
                c -> Bits.put(frame, c.field(), ticks(c, micros) & c.field().allOnes()));
    }

    private static long ticks(Clock clock, double micros) {
        return (long) Math.floor(micros / clock.tickMicros());
    }

    private static void putTurns(FrameLayout.Turns turns, byte[] frame, DeviceMoment moment) {
        putNumber(turns.sequence(), frame, moment.sequence());
        putClock(turns.clock(), frame, moment.recent().get(0).micros());
        putNumber(turns.fresh(), frame, moment.fresh());
        Bits.put(
                frame,
                turns.code(),
                codeOf(turns.turns(), moment.recent().get(0).turn()));
        turns.history().ifPresent(history -> putHistory(turns, history, frame, moment));
    }

    private static void putHistory(FrameLayout.Turns turns, History history, byte[] frame, DeviceMoment moment) {
        int filled = Math.min(history.entries(), moment.recent().size() - 1);
        putNumber(history.count(), frame, filled);
        for (int entry = 0; entry < history.entries(); entry++) {
            int shift = entry * history.strideBits();
            int back = history.newestFirst() ? entry + 1 : filled - entry;
            if (back < 1 || back > filled) {
                Bits.put(
                        frame,
                        history.code().shifted(shift),
                        history.emptyCode().orElse(0L));
                continue;
            }
            DeviceMoment.Past past = moment.recent().get(back);
            Bits.put(frame, history.code().shifted(shift), codeOf(turns.turns(), past.turn()));
            if (history.time() instanceof HistoryTime.Absolute absolute) {
                BitField field = absolute.field().shifted(shift);
                Bits.put(frame, field, ticks(turns.clock().orElseThrow(), past.micros()) & field.allOnes());
            } else if (history.time() instanceof HistoryTime.BeforeNewer before) {
                BitField field = before.field().shifted(shift);
                Clock clock = turns.clock().orElseThrow();
                long newer = ticks(clock, moment.recent().get(back - 1).micros());
                Bits.put(frame, field, Math.min(field.allOnes(), newer - ticks(clock, past.micros())));
            }
        }
    }

    private static long codeOf(Map<Long, Turn> table, Turn turn) {
        return table.entrySet().stream()
                .filter(e -> e.getValue().equals(turn))
                .findFirst()
                .orElseThrow()
                .getKey();
    }

    private static void putState(StateEncoding encoding, byte[] frame, CubeState state) {
        String letters = state.facelets();
        if (encoding instanceof StateEncoding.Stickers stickers) {
            putStickers(stickers, frame, letters);
        } else if (encoding instanceof StateEncoding.Cubies cubies) {
            putCubies(cubies.cornerNames(), cubies.cornerPlaces(), cubies.cornerTwists(), frame, state, letters);
            putCubies(cubies.edgeNames(), cubies.edgePlaces(), cubies.edgeFlips(), frame, state, letters);
        }
    }

    private static void putStickers(StateEncoding.Stickers stickers, byte[] frame, String letters) {
        int sent = 0;
        for (Face face : stickers.faces()) {
            for (int place = 0; place < 9; place++) {
                if (place == 4 && !stickers.withCentres()) {
                    continue;
                }
                Face shown = Face.of(letters.charAt(9 * face.ordinal() + place));
                long value = stickers.colours().entrySet().stream()
                        .filter(e -> e.getValue() == shown)
                        .findFirst()
                        .orElseThrow()
                        .getKey();
                Bits.put(frame, stickers.run().at(sent++), value);
            }
        }
    }

    private static void putCubies(
            List<String> names,
            StateEncoding.Run places,
            StateEncoding.Run turns,
            byte[] frame,
            CubeState state,
            String letters) {
        for (int i = 0; i < names.size(); i++) {
            String shown = PlaceStickers.shown(names.get(i), letters);
            for (int cubie = 0; cubie < names.size(); cubie++) {
                String name = names.get(cubie);
                for (int turned = 0; turned < name.length(); turned++) {
                    if (rotated(name, turned).equals(shown)) {
                        Bits.put(frame, places.at(i), cubie);
                        Bits.put(frame, turns.at(i), turned);
                    }
                }
            }
        }
    }

    /** The name as seen at a place by whose faces it is turned on. */
    private static String rotated(String name, int turned) {
        int at = name.length() - turned;
        return name.substring(at) + name.substring(0, at);
    }
}
