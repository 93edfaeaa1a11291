package fermata.rehearsal.character;

import fermata.decoder.notation.Sequence;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Sequences for the last-layer cases that a holding left hand can turn. Case numbers and letters are the usual ones.
 *
 * <p>The customary ones: as commonly published, in the ways that one-handed solvers prefer (no held or far side, a
 * slice as r' R). Some characters know others of their own for some cases, which no list has. Those were found by our
 * own search: all words of up to eight or nine moves over R, U and one or two of F, D, r, f, u (twelve over R and U
 * alone), two by two joined where they leave the first two layers alike; of those for a case, the one with the lowest
 * price: 1 for a quarter of R or U, 1.2 for r, 1.5 for F or D, more for half turns and for wrist turns of the same
 * sense in a row.
 */
public final class LastLayerSequences {
    private static final String ORIENTATIONS = """
            1  R U2 R2 F R F' U2 R' F R F'
            2  F R U R' U' F' f R U R' U' f'
            3  f R U R' U' f' U' F R U R' U' F'
            4  f R U R' U' f' U F R U R' U' F'
            5  r' U2 R U R' U r
            6  r U2 R' U' R U' r'
            7  r U R' U R U2 r'
            8  r' U' R U' R' U2 r
            9  R U R' U' R' F R2 U R' U' F'
            10 R U R' U R' F R F' R U2 R'
            11 r U R' U R' F R F' R U2 r'
            12 F R U R' U' F' U F R U R' U' F'
            13 F U R U' R2 F' R U R U' R'
            14 R' F R U R' F' R F U' F'
            15 r' U' r R' U' R U r' U r
            16 r U r' R U R' U' r U' r'
            17 R U R' U R' F R F' U2 R' F R F'
            18 r U R' U R U2 r2 U' R U' R' U2 r
            19 r' R U R U R' U' r R2 F R F'
            20 r U R' U' r2 R2 U R U' R' U' r R'
            21 R U2 R' U' R U R' U' R U' R'
            22 R U2 R2 U' R2 U' R2 U2 R
            23 R2 D' R U2 R' D R U2 R
            24 r U R' U' r' F R F'
            25 F' r U R' U' r' F R
            26 R U2 R' U' R U' R'
            27 R U R' U R U2 R'
            28 r U R' U' r' R U R U' R'
            29 R U R' U' R U' R' F' U' F R U R'
            30 F R' F R2 U' R' U' R U R' F2
            31 R' U' F U R U' R' F' R
            32 F U R' U' F' U F R F'
            33 R U R' U' R' F R F'
            34 R U R2 U' R' F R U R U' F'
            35 R U2 R2 F R F' R U2 R'
            36 r' U' F' U2 F r U' r' U' r
            37 F R' F' R U R U' R'
            38 R U R' U R U' R' U' R' F R F'
            39 R U R' F' U' F U R U2 R'
            40 R' F R U R' U' F' U R
            41 R U R' U R U2 R' F R U R' U' F'
            42 R' U' R U' R' U2 R F R U R' U' F'
            43 R' U' F' U F R
            44 F U R U' R' F'
            45 F R U R' U' F'
            46 R' U' R' F R F' U R
            47 R' U' R' F R F' R' F R F' U R
            48 F R U R' U' R U R' U' F'
            49 r U' r2 U r2 U r2 U' r
            50 r' U r2 U' r2 U' r2 U r'
            51 F U R U' R' U R U' R' F'
            52 R' F' U' F U' R U R' U R
            53 r' U' R U' R' U R U' R' U2 r
            54 r U R' U R U' R' U R U2 r'
            55 R U2 R2 U' R U' R' U2 F R F'
            56 r U r' U R U' R' U R U' R' r U' r'
            57 R U R' U' r R' U R U' r'
            """;

    private static final String PERMUTATIONS = """
            Aa x R' U R' D2 R U' R' D2 R2 x'
            Ab x R2 D2 R U R' D2 R U' R x'
            E  x' R U' R' D R U R' D' R U R' D R U' R' D' x
            F  R' U' F' R U R' U' R' F R2 U' R' U' R U R' U R
            Ga R2 U R' U R' U' R U' R2 U' D R' U R D'
            Gb R' U' R U D' R2 U R' U R U' R U' R2 D
            Gc R2 U' R U' R U R' U R2 U D' R U' R' D
            Gd R U R' U' D R2 U' R U' R' U R' U R2 D'
            H  R2 U2 R U2 R2 U2 R2 U2 R U2 R2
            Ja x R2 F R F' R U2 r' U r U2 x'
            Jb R U R' F' R U R' U' R' F R2 U' R'
            Na R U R' U R U R' F' R U R' U' R' F R2 U' R' U2 R U' R'
            Nb R' U R U' R' F' U' F R U R' F R' F' R U' R
            Ra R U' R' U' R U R D R' U' R D' R' U2 R'
            Rb R2 F R U R U' R' F' R U2 R' U2 R
            T  R U R' U' R' F R2 U' R' U' R U R' F'
            Ua R U' R U R U R U' R' U' R2
            Ub R2 U R U R' U' R' U' R' U R'
            V  R' U R' U' y R' F' R2 U' R' U R' F R F y'
            Y  F R U' R' U' R U R' F' R U R' U' R' F R F'
            Z  R' U' R U' R U R U' R' U R U R2 U' R'
            """;

    private static final String OWN_ORIENTATIONS = """
            1  r U2 R2 U' R U' r' U2 F R F'
            2  R U2 r' U r U2 r' U' r U2 R'
            3  R' U' F' U F R F R U R' U' F'
            4  F U R U' R' F' R' F' U' F U R
            9  F' U' F r U' r' U r U r'
            10 F U F' R' F R U' R' F' R
            12 r' U' F' U F U' R U' R' U2 r
            13 F U R U2 R' U' R U R' F'
            15 F' r' U' F U r F U R U2 R'
            16 r' U' r F r' F' U F r F'
            17 r U' r' F U2 F U' R U' R' F'
            18 F R U R' U F' U2 F' r U r'
            19 r' U2 F' R F U F' R' U F r
            20 r' F' U' R F U' R' U R F' R' F U r
            21 R' U2 R U R' U' R U R' U R
            23 R' U2 R F U' R' U' R U F'
            25 F R' F' r U R U' r'
            28 R U R' F' r' U' F' U r F
            29 F' U' r' F U' r F r' U r
            30 F U R U2 R' U' R U2 R' U' F'
            38 R' U' F' U F U2 R U R' U R
            39 F R' F' U' F U R U' F'
            41 F U' F' U2 F U R U' R' U' F'
            42 R' U R U2 R' U' F' U F U R
            47 R' F' U' F U F' U' F U R
            49 R F' U2 F U2 F R2 F' R
            50 R' F R2 F' U2 F' U2 F R'
            54 r U2 R' U' R U R' U' R U' r'
            56 F R U R' U' R F' r U R' U' r'
            57 F R U' R' F' r' U' F U r
            """;

    private static final String OWN_PERMUTATIONS = """
            Aa F U2 R' D' R U' R' D R U' F'
            Ab F U R' D' R U R' D R U2 F'
            E  R' U' R' D F D' R U D R U' R' F' D' R
            F  F' U R' F' R U' R U R2 F R U F U2 F
            Ga r U2 R U' r' F U R' U' F' r U' r'
            Gb r U r' F U R U' F' r U R' U2 r'
            Gc F R U R' F R2 F' R' U' R' F' U2 R' U R
            Gd F U R' F' R U' F' U2 F' U' F U r U2 r'
            H  R' U2 R U R U R2 U R2 U2 R2 U2 R
            Ja F' U' R F R' U' R F' R' U2 F
            Jb R U' F U' R' U' R U F' U2 R'
            Na F' R U R' U' R' F R2 F U' R' U' R U F' R'
            Nb r' F R U2 F' U' R F U' F' U2 R' U r U R'
            Ra F U2 R' U' R U F' U' R' U R F U2 F'
            Rb R' U2 R U' F' r U R' U' r' F U' R
            Ub R' U' R U' R U R2 U R U' R U' R'
            V  F' R' F' R U' R U R2 F R U F U' F
            Y  R' F' U F U F' U' R' U' R F R' U R2
            """;

    private LastLayerSequences() {}

    /**
     * A case and its sequence.
     *
     * @param name the customary number or letter
     * @param sequence in the hand frame, last layer up
     */
    public record Known(String name, Sequence sequence) {}

    /** The 57 orientation cases: the character's own way for these cases, else the customary one. */
    public static List<Known> orientations(Set<String> ownCases) {
        return chosen(read(ORIENTATIONS), read(OWN_ORIENTATIONS), ownCases);
    }

    /** The 21 permutation cases, likewise. */
    public static List<Known> permutations(Set<String> ownCases) {
        return chosen(read(PERMUTATIONS), read(OWN_PERMUTATIONS), ownCases);
    }

    /** Checks that there is an own way for each of these. */
    static void requireCases(Set<String> ownCases) {
        Set<String> known = Stream.concat(read(OWN_ORIENTATIONS).stream(), read(OWN_PERMUTATIONS).stream())
                .map(Known::name)
                .collect(Collectors.toSet());
        for (String name : ownCases) {
            if (!known.contains(name)) {
                throw new IllegalArgumentException("ownCases " + name + " has only the customary sequence");
            }
        }
    }

    private static List<Known> chosen(List<Known> customary, List<Known> own, Set<String> ownCases) {
        Map<String, Known> byName = own.stream()
                .filter(known -> ownCases.contains(known.name()))
                .collect(Collectors.toMap(Known::name, known -> known));
        return customary.stream()
                .map(known -> byName.getOrDefault(known.name(), known))
                .toList();
    }

    private static List<Known> read(String table) {
        List<Known> known = new ArrayList<>();
        for (String line : table.lines().toList()) {
            int space = line.indexOf(' ');
            known.add(new Known(line.substring(0, space), Sequence.parse(line.substring(space))));
        }
        return List.copyOf(known);
    }
}
