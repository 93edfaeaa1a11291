package fermata.decoder.madeup;

import fermata.decoder.stream.RawFrame;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;

/** Hands frames over at connection events: late, never early; some not at all, some twice. One use. */
final class MadeUpRadio {
    private final Random random;
    private final boolean doubles;
    private final double loss;
    private final long intervalMicros;
    private final List<RawFrame> heard = new ArrayList<>();
    private long last;

    /**
     * For one connection.
     *
     * @param loss share of frames that are lost
     * @param doubles whether one frame of a hundred comes twice
     */
    MadeUpRadio(double loss, boolean doubles, Random random) {
        this.loss = loss;
        this.doubles = doubles;
        this.random = random;
        this.intervalMicros = 7500L << random.nextInt(3);
    }

    List<RawFrame> heard() {
        return List.copyOf(heard);
    }

    /** Gives whether the frame got through. */
    boolean send(UUID characteristic, byte[] bytes, long micros) {
        if (random.nextDouble() < loss) {
            return false;
        }
        long ready = micros + 2000 + random.nextInt(3000);
        long arrival = (ready / intervalMicros + 1) * intervalMicros + random.nextInt(400);
        add(characteristic, bytes, Math.max(arrival, last));
        if (doubles && random.nextInt(100) == 0) {
            add(characteristic, bytes, last + random.nextInt(20_000));
        }
        return true;
    }

    /** A value that is asked for, and so comes. */
    void read(UUID characteristic, byte[] bytes, long micros) {
        add(characteristic, bytes, Math.max(micros, last));
    }

    private void add(UUID characteristic, byte[] bytes, long micros) {
        last = micros;
        heard.add(new RawFrame(0, characteristic, micros * 1000, bytes));
    }
}
