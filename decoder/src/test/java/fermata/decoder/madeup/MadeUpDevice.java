package fermata.decoder.madeup;

import fermata.decoder.cube.CubeState;
import fermata.decoder.stream.profile.FrameLayout;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.function.UnaryOperator;

/** Numbers, stamps and sends turns by a layout. One use: it goes on from the drill into the evening. */
final class MadeUpDevice {
    private static final int MOST_RECENT = 12;

    /** A frame and where it is sent. */
    record Channel(FrameWriter writer, UUID characteristic) {}

    private final Channel main;
    private final List<Channel> others;
    private final UnaryOperator<byte[]> cipher;
    private final long gapMicros;
    private final double skew;
    private final Deque<DeviceMoment.Past> recent = new ArrayDeque<>();
    private CubeState state = CubeState.SOLVED;
    private double clockOffset;
    private long sequence;
    private int fresh;
    private long sentAt = Long.MIN_VALUE / 2;
    private int lostTurns;

    MadeUpDevice(Channel main, List<Channel> others, long gapMicros, UnaryOperator<byte[]> cipher, Random random) {
        this.main = main;
        this.others = others;
        this.gapMicros = gapMicros;
        this.cipher = cipher;
        this.skew = 1 + (random.nextDouble() - 0.5) * 1e-4;
        boolean awake = random.nextBoolean();
        this.sequence = awake ? random.nextInt(1 << 20) : 0;
        this.clockOffset = awake ? random.nextDouble() * 3e11 : random.nextDouble() * 1e6;
        if (awake) {
            for (MadeTurn turn : new MadeUpHandful(random).turns(MOST_RECENT)) {
                recent.addLast(new DeviceMoment.Past(turn.turn(), clockOffset - turn.micros()));
            }
        }
    }

    /** How many turns no frame that got through was the first to announce. */
    int lostTurns() {
        return lostTurns;
    }

    /** Time passes that nobody sees, and the cube is solved by the end of it, without a turn. */
    void sleep(double micros) {
        clockOffset += micros;
        sentAt = Long.MIN_VALUE / 2;
        lostTurns = 0;
    }

    /** Plays turns to a radio. */
    void play(List<MadeTurn> turns, MadeUpRadio radio) {
        begin(radio);
        Optional<Long> due = Optional.empty();
        for (int i = 0; i < turns.size(); i++) {
            MadeTurn turn = turns.get(i);
            if (due.isPresent() && due.get() <= turn.micros()) {
                send(radio, due.get());
                due = Optional.empty();
            }
            feel(turn);
            if (fresh > limit() || turn.micros() - sentAt >= gapMicros) {
                send(radio, turn.micros());
                due = Optional.empty();
            } else if (due.isEmpty()) {
                due = Optional.of(sentAt + gapMicros);
            }
            if (i % 13 == 7) {
                sendOthers(radio, turn.micros() + 60_000);
            }
        }
        due.ifPresent(at -> send(radio, at));
    }

    private int limit() {
        return main.writer().layout() instanceof FrameLayout.Turns turns
                        && turns.fresh().isPresent()
                ? turns.history().map(FrameLayout.History::entries).orElse(0)
                : 0;
    }

    private void begin(MadeUpRadio radio) {
        if (main.writer().layout() instanceof FrameLayout.State) {
            radio.read(main.characteristic(), cipher.apply(main.writer().form(moment(0))), 500_000);
        }
        sendOthers(radio, 600_000);
    }

    private void feel(MadeTurn turn) {
        sequence++;
        fresh++;
        state = state.apply(turn.turn());
        recent.addFirst(new DeviceMoment.Past(turn.turn(), clockOffset + turn.micros() * skew));
        if (recent.size() > MOST_RECENT) {
            recent.removeLast();
        }
    }

    private void send(MadeUpRadio radio, long micros) {
        boolean heard =
                radio.send(main.characteristic(), cipher.apply(main.writer().form(moment(micros))), micros);
        lostTurns += heard ? 0 : fresh;
        fresh = 0;
        sentAt = micros;
    }

    private void sendOthers(MadeUpRadio radio, long micros) {
        for (Channel other : others) {
            if (!recent.isEmpty()) {
                radio.send(other.characteristic(), cipher.apply(other.writer().form(moment(micros))), micros);
            }
        }
    }

    private DeviceMoment moment(long micros) {
        return new DeviceMoment(sequence, clockOffset + micros * skew, fresh, new ArrayList<>(recent), state);
    }
}
