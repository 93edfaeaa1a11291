package fermata.decoder.finding;

import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.RawFrame;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import fermata.decoder.stream.profile.FrameLayout.Constant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;

/** Sorts the values of a recording into groups that may be of one kind of frame. Stateless. */
final class FrameGroups {
    /** Where a leading field that tells kinds apart may stand: the first byte, or either half of it. */
    private static final List<BitField> TAGS = List.of(
            new BitField(0, 8, Order.LITTLE, false),
            new BitField(4, 4, Order.LITTLE, false),
            new BitField(0, 4, Order.LITTLE, false));

    /** More kinds than this on one characteristic are no kinds but values. */
    private static final int MOST_KINDS = 6;

    private FrameGroups() {}

    /** All groups worth looking at, whole ones first: a group may be part of another. */
    static List<FrameGroup> of(PromptedRecording recording) {
        Map<UUID, Map<Integer, List<Heard>>> sorted = new LinkedHashMap<>();
        int prompt = -1;
        for (RawFrame value : recording.values()) {
            long micros = value.arrivalMicros();
            while (prompt + 1 < recording.prompts().size()
                    && recording.prompts().get(prompt + 1).atMicros() <= micros) {
                prompt++;
            }
            byte[] bytes = value.bytes();
            sorted.computeIfAbsent(value.characteristic(), c -> new TreeMap<>())
                    .computeIfAbsent(bytes.length, l -> new ArrayList<>())
                    .add(new Heard(bytes, micros, prompt));
        }
        List<FrameGroup> groups = new ArrayList<>();
        sorted.forEach((characteristic, lengths) -> lengths.forEach((length, frames) -> {
            groups.add(new FrameGroup(characteristic, length, Optional.empty(), frames));
            if (length > 0) {
                TAGS.forEach(tag -> groups.addAll(split(characteristic, length, tag, frames)));
            }
        }));
        return groups;
    }

    private static List<FrameGroup> split(UUID characteristic, int length, BitField tag, List<Heard> frames) {
        Map<Long, List<Heard>> kinds = new TreeMap<>();
        frames.forEach(frame -> kinds.computeIfAbsent(tag.read(frame.bytes()), v -> new ArrayList<>())
                .add(frame));
        if (kinds.size() < 2 || kinds.size() > MOST_KINDS) {
            return List.of();
        }
        List<FrameGroup> groups = new ArrayList<>();
        kinds.forEach((value, own) ->
                groups.add(new FrameGroup(characteristic, length, Optional.of(new Constant(tag, value)), own)));
        return groups;
    }
}
