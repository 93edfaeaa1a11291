package fermata.decoder.madeup;

import java.security.GeneralSecurityException;
import java.util.Arrays;
import java.util.Random;
import java.util.function.UnaryOperator;
import javax.crypto.Cipher;
import javax.crypto.spec.IvParameterSpec;
import javax.crypto.spec.SecretKeySpec;

/** Enciphers whole frames with AES under a key that is forgotten; what tells kinds apart may stay plain in front. */
final class FrameCipher {
    private static final int BLOCK = 16;

    private FrameCipher() {}

    static UnaryOperator<byte[]> drawn(boolean hasTag, Random random) {
        byte[] key = new byte[BLOCK];
        random.nextBytes(key);
        byte[] iv = new byte[BLOCK];
        random.nextBytes(iv);
        boolean chained = random.nextBoolean();
        int plain = hasTag && random.nextBoolean() ? 1 : 0;
        return frame -> enciphered(frame, plain, key, iv, chained);
    }

    private static byte[] enciphered(byte[] frame, int plain, byte[] key, byte[] iv, boolean chained) {
        int covered = (frame.length - plain + BLOCK - 1) / BLOCK * BLOCK;
        try {
            SecretKeySpec secret = new SecretKeySpec(key, "AES");
            Cipher cipher = Cipher.getInstance(chained ? "AES/CBC/NoPadding" : "AES/ECB/NoPadding");
            if (chained) {
                cipher.init(Cipher.ENCRYPT_MODE, secret, new IvParameterSpec(iv));
            } else {
                cipher.init(Cipher.ENCRYPT_MODE, secret);
            }
            byte[] text = cipher.doFinal(Arrays.copyOfRange(frame, plain, plain + covered));
            byte[] out = Arrays.copyOf(frame, plain + covered);
            System.arraycopy(text, 0, out, plain, covered);
            return out;
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every JDK has AES", e);
        }
    }
}
