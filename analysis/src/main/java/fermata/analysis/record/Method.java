package fermata.analysis.record;

/** The method by which a cube was solved, as far as its states show it. */
public enum Method {
    /** Cross, four pairs, last layer. */
    CFOP("CFOP"),
    /** Edges oriented first, then blocks without F or B quarter turns. */
    ZZ("ZZ"),
    /** Two 1x2x3 blocks, four corners, six edges. */
    ROUX("Roux"),
    /** Solved by a way that is none of these. */
    OTHER("other"),
    /** Not solved, or turns are missing: no method can be told. */
    UNTOLD("untold");

    private final String written;

    Method(String written) {
        this.written = written;
    }

    /** The word in files and on screens. */
    public String written() {
        return written;
    }
}
