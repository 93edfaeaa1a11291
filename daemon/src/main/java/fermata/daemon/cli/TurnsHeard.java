package fermata.daemon.cli;

import fermata.daemon.capture.CaptureListener;
import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.HeardFrame;
import fermata.decoder.stream.FrameReader;
import fermata.decoder.stream.FrameReading;
import fermata.decoder.stream.FrameReading.TurnsFrame;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Counts the frames that tell of new turns, so that it is known when the cube was put down: states, batteries and what
 * else the board asks a resting cube for every two minutes are no practice. Called by the capture's writer; the count
 * by any thread.
 */
final class TurnsHeard implements CaptureListener {
    private final FrameReader reader;
    private final AtomicLong count = new AtomicLong();
    private FrameReading last = new FrameReading.Ignored("none yet");

    TurnsHeard(StreamProfile profile) {
        this.reader = new FrameReader(profile);
    }

    @Override
    public void committed(List<CapturedItem> items) {
        for (CapturedItem item : items) {
            if (item instanceof HeardFrame frame
                    && reader.read(UUID.fromString(frame.characteristicUuid()), frame.bytes())
                            instanceof TurnsFrame turns
                    && !isRepeated(turns)) {
                last = turns;
                count.incrementAndGet();
            }
        }
    }

    /** Numbered turns that were told already are told again when a cube connects. */
    private boolean isRepeated(TurnsFrame turns) {
        return turns.turns().isEmpty()
                || turns.sequence().isPresent()
                        && last instanceof TurnsFrame before
                        && before.sequence().equals(turns.sequence());
    }

    /** How many so far. */
    long count() {
        return count.get();
    }
}
