package fermata.decoder.finding;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** Names the bits that move and belong to no field. */
record Unexplained(int frameBytes, List<Heard> frames) {
    /** Ranges of such bits, as "byte 3, bits 0 to 4" with bit 0 the least significant. */
    List<String> ranges(BitSet explained) {
        List<String> ranges = new ArrayList<>();
        for (int octet = 0; octet < frameBytes; octet++) {
            int moving = 0;
            for (Heard frame : frames) {
                moving |= frame.bytes()[octet] ^ frames.get(0).bytes()[octet];
            }
            for (int bit = 0; bit < 8; bit++) {
                moving &= explained.get(octet * 8 + bit) ? ~(1 << bit) : ~0;
            }
            if ((moving & 0xFF) != 0) {
                int lowest = Integer.numberOfTrailingZeros(moving & 0xFF);
                int highest = 31 - Integer.numberOfLeadingZeros(moving & 0xFF);
                ranges.add("byte " + octet
                        + (lowest == highest ? ", bit " + lowest : ", bits " + lowest + " to " + highest));
            }
        }
        return ranges;
    }
}
