package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.finding.Lesson.Example;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What speaks for frames being enciphered: they come with the turns, equal turns give unequal bytes, and over whole
 * blocks every bit is set as often as not and changes as often as not from frame to frame. Plain frames always have
 * bits that stand still, or nearly so: the upper ones of a counter or a clock, or those that no code uses.
 */
final class CipherEvidence {
    /** Eight bytes: the smallest block of a cipher in use. */
    private static final int LEAST_BITS = 64;

    private static final int LEAST_FRAMES = 60;

    /** Frames of another kind, such as a battery's, may be among them and repeat. */
    private static final double MOST_EQUAL = 0.2;

    /** In standard deviations of an even coin: beyond it one bit of a hundred blocks lies by chance. */
    private static final double MOST_DEVIATIONS = 4.5;

    private CipherEvidence() {}

    /** The evidence in words, if the frames of a group show it. */
    static Optional<List<String>> of(FrameGroup group, Lesson lesson) {
        List<Heard> frames = group.distinct();
        List<Example> examples = lesson.singles(frames);
        if (frames.size() < LEAST_FRAMES || examples.size() < LEAST_FRAMES / 3) {
            return Optional.empty();
        }
        int equal = equal(examples);
        BitSet even = evenBits(frames, group.length());
        int longest = 0;
        int length = 0;
        for (int bit = 0; bit < group.length() * 8; bit++) {
            length = even.get(bit) ? length + 1 : 0;
            longest = Math.max(longest, length);
        }
        if (longest < LEAST_BITS || equal > MOST_EQUAL * examples.size()) {
            return Optional.empty();
        }
        List<String> evidence = new ArrayList<>();
        evidence.add(examples.size() + " turns that were asked for each brought a frame of " + group.length()
                + " bytes on " + group.characteristic());
        evidence.add((examples.size() - equal) + " of these frames are unlike all before them of the same turn, and no"
                + " number or clock in them explains why");
        evidence.add(longest + " bits in a row are set in half of the frames and change in half of the steps, each as a"
                + " coin would fall: no structure in any");
        return Optional.of(evidence);
    }

    private static BitSet evenBits(List<Heard> frames, int frameBytes) {
        BitSet even = new BitSet();
        double slack = MOST_DEVIATIONS * Math.sqrt(frames.size()) / 2;
        for (int bit = 0; bit < frameBytes * 8; bit++) {
            BitField field = new BitField(bit, 1, Order.LITTLE, false);
            int ones = 0;
            int changes = 0;
            for (int i = 0; i < frames.size(); i++) {
                long value = field.read(frames.get(i).bytes());
                ones += (int) value;
                changes += i > 0 && field.read(frames.get(i - 1).bytes()) != value ? 1 : 0;
            }
            boolean isEven = Math.abs(ones - frames.size() / 2.0) <= slack
                    && Math.abs(changes - (frames.size() - 1) / 2.0) <= slack;
            even.set(bit, isEven);
        }
        return even;
    }

    /** How many examples are equal to an earlier one of the same turn. */
    private static int equal(List<Example> examples) {
        Map<Turn, List<byte[]>> seen = new HashMap<>();
        int equal = 0;
        for (Example example : examples) {
            List<byte[]> known = seen.computeIfAbsent(example.asked(), t -> new ArrayList<>());
            boolean isKnown = known.stream()
                    .anyMatch(bytes -> Arrays.equals(bytes, example.frame().bytes()));
            equal += isKnown ? 1 : 0;
            known.add(example.frame().bytes());
        }
        return equal;
    }
}
