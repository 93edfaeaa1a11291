package fermata.analysis.cases;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.search.Slot;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Classes against {@code f2l_last_pair_classes.csv} (GAP 4.12.1): 36 of 4 states and 6 of 1. */
class PairCasesTest {
    private static final int[] CORNERS = {0, 1, 2, 3, 4, 5, 6, 7};
    private static final int[] EDGES = {0, 1, 2, 3, 8, 9, 10, 11};

    @Test
    void shouldKeepEachClassOfTheReferenceApartAndWhole() throws IOException {
        Map<String, Integer> weights = new HashMap<>();
        for (String[] row : classes()) {
            String name = name(cornerAt(row[3]), edgeAt(row[1]));

            assertThat(weights.put(name, Integer.parseInt(row[4]))).as(name).isNull();
        }
        Map<String, Integer> states = new HashMap<>();
        for (int[] corner : twisted(new int[] {0, 1, 2, 3, 4})) {
            for (int[] edge : flipped(new int[] {0, 1, 2, 3, 8})) {
                states.merge(name(corner, edge), 1, Integer::sum);
            }
        }

        assertThat(weights).hasSize(42).isEqualTo(states);
    }

    /** By Burnside: 384 states, of which no turn of U but the identity leaves any alone save the 96 without U. */
    @Test
    void shouldFind168ClassesWhenPiecesMayWaitInOtherPlaces() {
        Map<String, Set<String>> namesOfOrbit = new HashMap<>();
        Set<String> names = new HashSet<>();
        for (int[] corner : twisted(CORNERS)) {
            for (int[] edge : flipped(EDGES)) {
                String name = name(corner, edge);
                namesOfOrbit
                        .computeIfAbsent(orbit(placed(corner[0], corner[1], edge[0], edge[1])), key -> new HashSet<>())
                        .add(name);
                names.add(name);
            }
        }

        assertThat(namesOfOrbit).hasSize((384 + 3 * 96) / 4);
        assertThat(namesOfOrbit.values()).allMatch(found -> found.size() == 1);
        assertThat(names).hasSize(168);
    }

    @Test
    void shouldBringTheCornerOverItsPlaceWhenItIsInU() {
        // By hand: R U' R' brings DFR to URF with D at R, and FR to UB with F up; U2 then hides both.
        assertThat(PairCases.of(Sequence.parse("R U' R'").state(), Slot.FR)).isEqualTo("RFU-UB");
        assertThat(PairCases.of(Sequence.parse("R U' R' U2").state(), Slot.FR)).isEqualTo("RFU-UB");
    }

    @Test
    void shouldGiveEverySlotTheSameNameWhenTheSameThingHappenedToIt() {
        String atFront = PairCases.of(Sequence.parse("R U R'").state(), Slot.FR);

        assertThat(PairCases.of(Sequence.parse("F U F'").state(), Slot.FL)).isEqualTo(atFront);
        assertThat(PairCases.of(Sequence.parse("L U L'").state(), Slot.BL)).isEqualTo(atFront);
        assertThat(PairCases.of(Sequence.parse("B U B'").state(), Slot.BR)).isEqualTo(atFront);
        assertThat(PairCases.of(Sequence.parse("R U' R'").state(), Slot.FR)).isNotEqualTo(atFront);
    }

    private static String name(int[] corner, int[] edge) {
        return PairCases.of(placed(corner[0], corner[1], edge[0], edge[1]), Slot.FR);
    }

    /** What the stickers of the two pieces look like, the least over the turns of U: no names involved. */
    private static String orbit(CubeState state) {
        String least = "~";
        CubeState turned = state;
        for (int quarters = 0; quarters < 4; quarters++) {
            Corner corner = turned.placeOf(Corner.DFR);
            Edge edge = turned.placeOf(Edge.FR);
            String seen = corner + "" + turned.twistAt(corner) + edge + turned.flipAt(edge);
            least = seen.compareTo(least) < 0 ? seen : least;
            turned = turned.apply(Turn.of(Face.U, 1));
        }
        return least;
    }

    private static List<int[]> twisted(int[] places) {
        return variants(places, 3);
    }

    private static List<int[]> flipped(int[] places) {
        return variants(places, 2);
    }

    private static List<int[]> variants(int[] places, int ways) {
        List<int[]> all = new ArrayList<>();
        for (int place : places) {
            for (int way = 0; way < ways; way++) {
                all.add(new int[] {place, way});
            }
        }
        return all;
    }

    /** A corner place and its twist from the facelet where the D sticker is, its face first: {@code RUF}. */
    private static int[] cornerAt(String facelet) {
        for (Corner place : Corner.values()) {
            if (facelet.chars().allMatch(letter -> place.name().indexOf(letter) >= 0)) {
                return new int[] {place.ordinal(), place.faces().indexOf(Face.of(facelet.charAt(0)))};
            }
        }
        throw new AssertionError("no corner has the facelet " + facelet);
    }

    /** An edge place and its flip from the facelet where the F sticker is, its face first. */
    private static int[] edgeAt(String facelet) {
        for (Edge place : Edge.values()) {
            if (facelet.chars().allMatch(letter -> place.name().indexOf(letter) >= 0)) {
                return new int[] {place.ordinal(), place.faces().indexOf(Face.of(facelet.charAt(0)))};
            }
        }
        throw new AssertionError("no edge has the facelet " + facelet);
    }

    private static List<String[]> classes() throws IOException {
        try (InputStream table = Objects.requireNonNull(
                PairCasesTest.class.getResourceAsStream("/fermata/fixtures/reference/f2l_last_pair_classes.csv"))) {
            return new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        }
    }

    /** The cubies DFR and FR put in a place by exchange with what was there; other pieces do not matter here. */
    private static CubeState placed(int corner, int twist, int edge, int flip) {
        int[] corners = {0, 1, 2, 3, 4, 5, 6, 7};
        int[] edges = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11};
        int[] twists = new int[8];
        int[] flips = new int[12];
        corners[Corner.DFR.ordinal()] = corner;
        corners[corner] = Corner.DFR.ordinal();
        twists[corner] = twist;
        edges[Edge.FR.ordinal()] = edge;
        edges[edge] = Edge.FR.ordinal();
        flips[edge] = flip;
        return CubeState.ofCubies(corners, twists, edges, flips);
    }
}
