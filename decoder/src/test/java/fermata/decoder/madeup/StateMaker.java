package fermata.decoder.madeup;

import fermata.decoder.cube.Face;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.FrameLayout.Clock;
import fermata.decoder.stream.profile.FrameLayout.Constant;
import fermata.decoder.stream.profile.FrameLayout.Envelope;
import fermata.decoder.stream.profile.StateEncoding;
import fermata.decoder.stream.profile.StateEncoding.Run;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** Draws a frame of the whole cube. One use. */
final class StateMaker {
    private final BitRoom room;
    private final Random random;

    StateMaker(BitRoom room, Random random) {
        this.room = room;
        this.random = random;
    }

    FrameLayout.State draw(
            String name, Optional<Integer> tag, boolean stickers, int sequenceBits, int clockBits, double tickMicros) {
        List<Constant> constants = new ArrayList<>();
        tag.ifPresent(value -> constants.add(new Constant(room.takeHere(8), value)));
        boolean before = random.nextBoolean();
        Optional<BitField> sequence = Optional.empty();
        Optional<Clock> clock = Optional.empty();
        Optional<StateEncoding> encoding = before ? Optional.of(encoding(stickers)) : Optional.empty();
        if (sequenceBits > 0) {
            sequence = Optional.of(room.take(sequenceBits));
        }
        if (clockBits > 0) {
            clock = Optional.of(new Clock(room.take(clockBits), tickMicros));
        }
        StateEncoding drawn = encoding.orElseGet(() -> encoding(stickers));
        var checks = CheckMaker.behind(room, tag.isPresent(), random);
        Envelope envelope = new Envelope(name, room.bytes(), room.bytes(), constants, checks);
        return new FrameLayout.State(envelope, sequence, clock, drawn);
    }

    private StateEncoding encoding(boolean stickers) {
        return stickers ? stickers() : cubies();
    }

    private StateEncoding stickers() {
        List<Face> faces = new ArrayList<>(List.of(Face.values()));
        Collections.shuffle(faces, random);
        int width = random.nextInt(3) == 0 ? 4 + 4 * random.nextInt(2) : 3;
        List<Long> values = new ArrayList<>();
        for (long value = 0; value < 1L << Math.min(width, 5); value++) {
            values.add(value);
        }
        Collections.shuffle(values, random);
        Map<Long, Face> colours = new LinkedHashMap<>();
        for (Face face : Face.values()) {
            colours.put(values.get(face.ordinal()), face);
        }
        boolean centres = random.nextBoolean();
        return new StateEncoding.Stickers(run(width, centres ? 54 : 48), faces, centres, colours);
    }

    private StateEncoding cubies() {
        List<String> corners = names(PlaceStickers.CORNERS);
        List<String> edges = names(PlaceStickers.EDGES);
        boolean wide = random.nextInt(4) == 0;
        return new StateEncoding.Cubies(
                corners,
                edges,
                run(wide ? 8 : 3, 8),
                run(wide ? 8 : 2, 8),
                run(wide ? 8 : 4, 12),
                run(wide ? 8 : 1, 12));
    }

    private List<String> names(List<String> standard) {
        List<String> names = new ArrayList<>();
        for (String name : standard) {
            int turned = random.nextInt(name.length());
            names.add(name.substring(turned) + name.substring(0, turned));
        }
        Collections.shuffle(names, random);
        return names;
    }

    private Run run(int width, int count) {
        int stride = width + (random.nextInt(6) == 0 && width < 8 ? 1 : 0);
        BitField first = room.take(width);
        BitField own = new BitField(first.offsetBits(), width, first.order(), false);
        room.skip(stride * (count - 1) + stride - width);
        return new Run(own, stride);
    }
}
