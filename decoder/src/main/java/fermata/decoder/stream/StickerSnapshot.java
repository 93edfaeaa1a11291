package fermata.decoder.stream;

/**
 * A cube state as a device reported it, not yet judged: it may be impossible.
 *
 * @param facelets 54 letters, faces in the order U R F D L B, row by row seen from outside: U with
 *     B at its top, D with F at its top, the others with U at their top
 */
public record StickerSnapshot(String facelets) {
    public StickerSnapshot {
        if (!facelets.matches("[URFDLB]{54}")) {
            throw new IllegalArgumentException(
                    "facelets \"" + facelets + "\" (" + facelets.length() + " letters) are not 54 letters of URFDLB");
        }
    }
}
