package fermata.decoder.madeup;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.FrameLayout.Clock;
import fermata.decoder.stream.profile.FrameLayout.Constant;
import fermata.decoder.stream.profile.FrameLayout.Envelope;
import fermata.decoder.stream.profile.FrameLayout.History;
import fermata.decoder.stream.profile.FrameLayout.HistoryTime;
import fermata.decoder.stream.profile.TurnCode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;

/** Draws a frame of turns: which fields it has, how wide, in which order, and what the codes mean. One use. */
final class TurnsMaker {
    private static final int[] SEQUENCE_BITS = {4, 5, 6, 7, 8, 8, 8, 10, 12, 16, 16, 24, 32};
    private static final int[] CLOCK_BITS = {8, 10, 12, 14, 16, 16, 20, 24, 24, 32, 32, 40, 48};
    private static final double[] TICK_MICROS = {1e6 / 1024, 1000, 1000, 2000, 4000, 5000, 8000, 10_000};

    private final Family family;
    private final boolean halves;
    private final Random random;
    private final BitRoom room;
    private final List<Extra> extras = new ArrayList<>();
    private List<Constant> constants = List.of();
    private Optional<BitField> sequence = Optional.empty();
    private Optional<Clock> clock = Optional.empty();
    private Optional<BitField> fresh = Optional.empty();
    private Optional<History> history = Optional.empty();
    private TurnCode code = TurnCode.of(new BitField(0, 1, BitField.Order.LITTLE, false));
    private Map<Long, Turn> table = Map.of();
    private List<Integer> widths = List.of();

    TurnsMaker(Family family, boolean halves, BitRoom room, Random random) {
        this.family = family;
        this.halves = halves;
        this.room = room;
        this.random = random;
    }

    List<Extra> extras() {
        return extras;
    }

    FrameLayout.Turns draw(String name, Optional<Integer> tag) {
        tag.ifPresent(value -> constants = List.of(new Constant(room.takeHere(8), value)));
        drawTable();
        int depth = family == Family.SEVERAL_TURNS ? 3 + random.nextInt(5) : Math.max(0, random.nextInt(14) - 6);
        boolean numbered = family != Family.SEVERAL_TURNS ? random.nextInt(4) > 0 : random.nextBoolean();
        int sequenceBits = SEQUENCE_BITS[random.nextInt(SEQUENCE_BITS.length)];
        boolean timed = random.nextInt(10) < 7;
        List<Runnable> parts = new ArrayList<>();
        parts.add(() -> code = newCode());
        if (numbered) {
            parts.add(() -> sequence = Optional.of(room.take(sequenceBits)));
        }
        if (timed) {
            parts.add(() ->
                    clock = Optional.of(new Clock(room.take(CLOCK_BITS[random.nextInt(CLOCK_BITS.length)]), tick())));
        }
        if (family == Family.SEVERAL_TURNS) {
            parts.add(() -> fresh = Optional.of(room.take(3 + random.nextInt(2))));
        }
        IntStream.range(0, random.nextInt(4)).forEach(i -> parts.add(this::addExtra));
        Collections.shuffle(parts, random);
        parts.forEach(Runnable::run);
        boolean mayRepeat = numbered && 1L << sequenceBits > 2L * (depth + 1) || family == Family.SEVERAL_TURNS;
        if (depth > 0 && mayRepeat) {
            drawHistory(depth);
        }
        var checks = CheckMaker.behind(room, tag.isPresent(), random);
        Envelope envelope = new Envelope(name, room.bytes(), room.bytes(), constants, checks);
        return new FrameLayout.Turns(envelope, sequence, clock, fresh, code, history, table);
    }

    private double tick() {
        return random.nextInt(3) == 0 ? 977 + random.nextInt(9023) : TICK_MICROS[random.nextInt(TICK_MICROS.length)];
    }

    private void addExtra() {
        Extra.Kind[] kinds = Extra.Kind.values();
        extras.add(new Extra(room.take(8), kinds[random.nextInt(kinds.length)]));
    }

    private void drawTable() {
        List<Turn> turns = List.of(Turn.all()).stream()
                .filter(t -> halves || t.quarters() != 2)
                .toList();
        if (family == Family.TWO_FIELDS || family == Family.DEGREES) {
            drawParts(turns);
            return;
        }
        int width = (halves ? 5 : 4) + random.nextInt(4);
        List<Long> codes =
                new ArrayList<>(LongStream.range(0, 1L << width).boxed().toList());
        if (random.nextBoolean()) {
            Collections.shuffle(codes, random);
        }
        Map<Long, Turn> drawn = new LinkedHashMap<>();
        turns.forEach(turn -> drawn.put(codes.get(drawn.size()), turn));
        table = drawn;
        widths = List.of(width);
    }

    private void drawParts(List<Turn> turns) {
        int faceBits = 3 + random.nextInt(6);
        List<Long> faces =
                new ArrayList<>(LongStream.range(0, 1L << faceBits).boxed().toList());
        Collections.shuffle(faces, random);
        int amountBits = family == Family.DEGREES ? 8 : (halves ? 2 : 1) + random.nextInt(3);
        long unit = random.nextBoolean() ? 90 : 1 + random.nextInt(60);
        List<Long> amounts =
                new ArrayList<>(LongStream.range(0, 1L << amountBits).boxed().toList());
        Collections.shuffle(amounts, random);
        boolean faceFirst = random.nextBoolean();
        Map<Long, Turn> drawn = new LinkedHashMap<>();
        for (Turn turn : turns) {
            long amount = family == Family.DEGREES
                    ? (turn.quarters() == 3 ? -unit : turn.quarters() * unit) & 0xFF
                    : amounts.get(turn.quarters() == 2 ? 2 : turn.quarters() / 2);
            long face = faces.get(turn.face().ordinal() % Face.values().length);
            drawn.put(faceFirst ? face << amountBits | amount : amount << faceBits | face, turn);
        }
        table = drawn;
        widths = faceFirst ? List.of(faceBits, amountBits) : List.of(amountBits, faceBits);
    }

    private TurnCode newCode() {
        if (widths.size() == 1) {
            return TurnCode.of(room.take(widths.get(0)));
        }
        BitField first = room.take(widths.get(0));
        if (random.nextBoolean()) {
            addExtra();
        }
        return TurnCode.of(first, room.take(widths.get(1)));
    }

    private void drawHistory(int depth) {
        int start = room.bits();
        List<BitField> parts = new ArrayList<>();
        widths.forEach(width -> parts.add(room.takeHere(width)));
        HistoryTime time = drawTime();
        int pad = random.nextInt(3) == 0 ? Math.floorMod(start - room.bits(), 8) : 0;
        room.skip(pad);
        int stride = room.bits() - start;
        room.skip(stride * (depth - 1));
        boolean newestFirst = random.nextBoolean();
        int width = widths.stream().mapToInt(w -> w).sum();
        Optional<Long> free = LongStream.range(0, 1L << width)
                .boxed()
                .filter(c -> !table.containsKey(c))
                .findFirst();
        boolean counts = free.isEmpty() || random.nextBoolean() || !newestFirst;
        Optional<BitField> count = counts ? Optional.of(room.take(4)) : Optional.empty();
        history = Optional.of(new History(
                stride, depth, newestFirst, count, counts ? Optional.empty() : free, new TurnCode(parts), time));
    }

    private HistoryTime drawTime() {
        int drawn = clock.isPresent() ? random.nextInt(3) : 0;
        if (drawn == 0) {
            return new HistoryTime.None();
        }
        if (drawn == 1) {
            int clockBits = clock.orElseThrow().field().widthBits();
            return new HistoryTime.Absolute(room.takeHere(Math.min(clockBits, 16)));
        }
        return new HistoryTime.BeforeNewer(room.takeHere(8 + random.nextInt(9)), true);
    }
}
