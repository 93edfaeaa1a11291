package fermata.decoder.finding;

import java.math.BigInteger;

/** Polynomials over two elements, as numbers whose bit {@code i} is the coefficient of x^i. Stateless. */
final class BinaryPolynomial {
    private BinaryPolynomial() {}

    /** Greatest common divisor by Euclid; 0 with 0 is 0. O(degree squared). */
    static BigInteger gcd(BigInteger a, BigInteger b) {
        BigInteger larger = a;
        BigInteger smaller = b;
        while (smaller.signum() != 0) {
            BigInteger rest = remainder(larger, smaller);
            larger = smaller;
            smaller = rest;
        }
        return larger;
    }

    static BigInteger remainder(BigInteger dividend, BigInteger divisor) {
        BigInteger rest = dividend;
        int degree = divisor.bitLength();
        while (rest.bitLength() >= degree) {
            rest = rest.xor(divisor.shiftLeft(rest.bitLength() - degree));
        }
        return rest;
    }
}
