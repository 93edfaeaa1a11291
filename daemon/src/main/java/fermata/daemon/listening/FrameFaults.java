package fermata.daemon.listening;

import fermata.daemon.capture.CaptureListener;
import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.HeardFrame;
import fermata.decoder.stream.FrameFault;
import fermata.decoder.stream.FrameReader;
import fermata.decoder.stream.FrameReading;
import fermata.decoder.stream.profile.StreamProfile;
import java.io.PrintWriter;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Says which frames cannot be read, while somebody can still do something about it. The bytes are kept all the same,
 * and their turns are repaired or become a gap when the capture is decoded.
 *
 * <p>Called by the capture's writer; {@link #summary()} by any thread.
 */
public final class FrameFaults implements CaptureListener {
    /** A wrong profile makes every frame a fault; the first few of a kind tell all there is to know. */
    private static final int TOLD_A_KIND = 3;

    private final FrameReader reader;
    private final PrintWriter err;
    private final Map<FrameFault.Kind, Integer> counts = new EnumMap<>(FrameFault.Kind.class);

    public FrameFaults(StreamProfile profile, PrintWriter err) {
        this.reader = new FrameReader(profile);
        this.err = err;
    }

    @Override
    public synchronized void committed(List<CapturedItem> items) {
        for (CapturedItem item : items) {
            if (item instanceof HeardFrame frame
                    && reader.read(UUID.fromString(frame.characteristicUuid()), frame.bytes())
                            instanceof FrameReading.Broken broken) {
                tell(broken.fault());
            }
        }
    }

    private void tell(FrameFault fault) {
        int count = counts.merge(fault.kind(), 1, Integer::sum);
        if (count <= TOLD_A_KIND) {
            err.println("a frame cannot be read (its bytes are kept): " + fault.message()
                    + (count == TOLD_A_KIND ? "; further ones of this kind are only counted" : ""));
        }
    }

    /** How many of each kind, in words; empty if there were none. */
    public synchronized String summary() {
        return counts.entrySet().stream()
                .map(count -> count.getValue() + " "
                        + count.getKey().name().toLowerCase(Locale.ROOT).replace('_', ' '))
                .collect(Collectors.joining(", "));
    }
}
