package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import java.math.BigInteger;
import java.util.List;
import java.util.Optional;

/**
 * Multiples of a CRC's generator: what was covered, followed by the check, as one polynomial, differs from that of
 * another frame by a multiple of it.
 *
 * @param widthBits of the check
 * @param order of its bytes
 * @param reflected whether bytes enter, and the check leaves, least significant bit first
 * @param place first byte of the check
 * @param from first byte covered
 * @param to first byte not covered
 */
record Multiples(int widthBits, Order order, boolean reflected, int place, int from, int to) {
    /** The common divisor settles after a few frames; those after them only confirm. */
    private static final int MOST_FRAMES = 40;

    /** The generator without its leading one, if the frames have one of the check's width in common. */
    Optional<Integer> generator(List<byte[]> frames) {
        BigInteger first = polynomial(frames.get(0));
        BigInteger common = BigInteger.ZERO;
        for (byte[] frame : frames.subList(1, Math.min(frames.size(), MOST_FRAMES))) {
            common = BinaryPolynomial.gcd(common, polynomial(frame).xor(first));
            if (common.signum() != 0 && common.bitLength() <= widthBits) {
                return Optional.empty();
            }
        }
        // Without a constant term it would only shift bits about.
        boolean fits = common.bitLength() == widthBits + 1 && common.testBit(0);
        return fits ? Optional.of(common.clearBit(widthBits).intValue()) : Optional.empty();
    }

    private BigInteger polynomial(byte[] frame) {
        byte[] text = new byte[1 + to - from];
        for (int i = from; i < to; i++) {
            text[1 + i - from] = reflected ? reversed(frame[i]) : frame[i];
        }
        long check = new BitField(place * 8, widthBits, order, false).read(frame);
        long leaving = reflected ? Long.reverse(check) >>> (64 - widthBits) : check;
        return new BigInteger(text).shiftLeft(widthBits).xor(BigInteger.valueOf(leaving));
    }

    private static byte reversed(byte octet) {
        return (byte) (Integer.reverse(octet & 0xFF) >>> 24);
    }
}
