package fermata.analysis.cases;

import fermata.decoder.cube.CubeState;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The 57 orientation classes and 21 permutation classes of a last layer, by pattern ({@link LastLayer}) and by the
 * numbers and letters that solvers use for them. A case is named after the sequence that solves it.
 *
 * <p>The classes are mathematics (orbits of 216 patterns under U; double cosets of 288 permutations). Numbers and
 * letters are common usage and carry no meaning here.
 */
public final class LastLayerCases {
    /** Nothing to do. */
    public static final String SKIP = "skip";

    private static final Map<String, String> ORIENTATIONS = read("""
            00000000=skip
            11211121=1 11112121=2 01212121=3 01111111=4 00212120=5 00111110=6 00202121=7 01111010=8
            01101011=9 01202021=10 01212020=11 00101111=12 00212021=13 01101110=14 01202120=15 00111011=16
            01110121=17 01012111=18 01011121=19 01010101=20 10201020=21 10102020=22 00002010=23 00001020=24
            00100020=25 00101010=26 00202020=27 00000101=28 01011020=29 00102101=30 00011120=31 00001121=32
            00011021=33 00112001=34 00110120=35 00100121=36 00210110=37 00200111=38 00110021=39 01100120=40
            00201101=41 01012010=42 00012110=43 00002111=44 00012011=45 00211001=46 11112020=47 10112120=48
            10102121=49 10202111=50 10212011=51 10112021=52 10211120=53 10201121=54 10211021=55 11201120=56
            00010001=57
            """);

    private static final Map<String, String> PERMUTATIONS = read("""
            00112233=skip
            00213213=Aa 00311223=Ab 01322310=E 00133221=F 00233112=Ga 00321321=Gb 01231032=Gc 02133120=Gd
            02132031=H 00123123=Ja 00113322=Jb 00332211=Na 02312013=Nb 01103223=Ra 00211332=Rb 00231231=T
            00132132=Ua 00122331=Ub 00322113=V 00312312=Y 01102332=Z
            """);

    private LastLayerCases() {}

    /** {@code "1"} to {@code "57"}, or {@link #SKIP}; the first two layers must be solved. */
    public static String orientation(CubeState state) {
        return named(ORIENTATIONS, LastLayer.orientation(state));
    }

    /** {@code "Aa"} to {@code "Z"}, or {@link #SKIP}; the last layer must be oriented. */
    public static String permutation(CubeState state) {
        return named(PERMUTATIONS, LastLayer.permutation(state));
    }

    static Map<String, String> orientations() {
        return ORIENTATIONS;
    }

    static Map<String, String> permutations() {
        return PERMUTATIONS;
    }

    private static String named(Map<String, String> names, String pattern) {
        String name = names.get(pattern);
        if (name == null) {
            throw new IllegalArgumentException("no last layer over solved layers shows the pattern " + pattern);
        }
        return name;
    }

    private static Map<String, String> read(String table) {
        Map<String, String> names = new LinkedHashMap<>();
        for (String entry : table.strip().split("\\s+")) {
            names.put(entry.substring(0, 8), entry.substring(9));
        }
        return Collections.unmodifiableMap(names);
    }
}
