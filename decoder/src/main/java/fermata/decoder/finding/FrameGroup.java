package fermata.decoder.finding;

import fermata.decoder.stream.profile.FrameLayout.Constant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Frames that may be of one kind: of one characteristic and length and, where several kinds share those, with one
 * value of the field that tells them apart.
 *
 * @param characteristic they came on
 * @param length of each in bytes
 * @param tag what tells the kind
 * @param frames in order of arrival
 */
record FrameGroup(UUID characteristic, int length, Optional<Constant> tag, List<Heard> frames) {
    /** The frames without copies: a value that is the one before it again was sent twice, or says nothing new. */
    List<Heard> distinct() {
        List<Heard> distinct = new ArrayList<>();
        for (Heard frame : frames) {
            boolean isCopy = !distinct.isEmpty()
                    && Arrays.equals(distinct.get(distinct.size() - 1).bytes(), frame.bytes());
            if (!isCopy) {
                distinct.add(frame);
            }
        }
        return distinct;
    }
}
