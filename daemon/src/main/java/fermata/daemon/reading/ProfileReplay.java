package fermata.daemon.reading;

import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.FrameReader;
import fermata.decoder.stream.FrameReading;
import fermata.decoder.stream.RawFrame;
import fermata.decoder.stream.StreamDecoder;
import fermata.decoder.stream.StreamEvent;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads a recording by a profile, as a capture would be, and says of each frame what became of it. Stateless. */
public final class ProfileReplay {
    private static final long NANOS_PER_MICRO = 1_000;

    private ProfileReplay() {}

    /**
     * A frame.
     *
     * @param frame as recorded
     * @param reading what it says by itself
     * @param events what it added to the story, in order
     */
    public record Frame(RawFrame frame, FrameReading reading, List<StreamEvent> events) {
        public Frame {
            events = List.copyOf(events);
        }
    }

    /** All frames in the order of their arrival. Cost: some microseconds a frame. */
    public static List<Frame> of(StreamProfile profile, PromptedRecording recording) {
        List<RawFrame> told = apart(recording.values());
        Map<Long, List<StreamEvent>> byArrival = new HashMap<>();
        for (StreamEvent event : new StreamDecoder(profile).accept(told)) {
            byArrival
                    .computeIfAbsent(event.arrivalMicros(), at -> new ArrayList<>())
                    .add(event);
        }
        FrameReader reader = new FrameReader(profile);
        List<Frame> frames = new ArrayList<>();
        for (int i = 0; i < told.size(); i++) {
            RawFrame frame = recording.values().get(i);
            frames.add(new Frame(
                    frame,
                    reader.read(frame.characteristic(), frame.bytes()),
                    byArrival.getOrDefault(told.get(i).arrivalMicros(), List.of())));
        }
        return frames;
    }

    /**
     * The radio hands frames over in handfuls, and a frame that waits for another says what it has to say later. By its
     * arrival each event finds its frame again, so no two may arrive in the same microsecond.
     */
    private static List<RawFrame> apart(List<RawFrame> frames) {
        List<RawFrame> apart = new ArrayList<>();
        long last = -1;
        for (RawFrame frame : frames) {
            last = Math.max(last + 1, frame.arrivalMicros());
            apart.add(new RawFrame(frame.connection(), frame.characteristic(), last * NANOS_PER_MICRO, frame.bytes()));
        }
        return apart;
    }
}
