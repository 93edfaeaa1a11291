package fermata.daemon.bluetooth;

import fermata.decoder.stream.FrameReader;
import fermata.decoder.stream.FrameReading;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.Optional;
import java.util.UUID;

/**
 * Says from a value that was read how far a cube has been turned: two equal answers mean that it was not turned between
 * them, two different ones that it was. Safe for use by any thread.
 */
@FunctionalInterface
public interface TurnWitness {
    /** What tells one place in the turning from another; empty where the value says nothing of turns. */
    Optional<Object> place(UUID characteristic, byte[] value);

    /** Knows nothing. */
    static TurnWitness none() {
        return (characteristic, value) -> Optional.empty();
    }

    /** Reads the states of cubes of one kind, without the clock in them, which goes on by itself. */
    static TurnWitness of(StreamProfile profile) {
        FrameReader reader = new FrameReader(profile);
        return (characteristic, value) -> reader.read(characteristic, value) instanceof FrameReading.StateFrame frame
                ? Optional.of(frame.sequence() + " " + frame.state())
                : Optional.empty();
    }
}
