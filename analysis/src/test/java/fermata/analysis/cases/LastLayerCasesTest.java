package fermata.analysis.cases;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Against {@code oll_cases.csv} and {@code pll_cases.csv}: orbits and double cosets computed with GAP 4.12.1. */
class LastLayerCasesTest {
    @Test
    void shouldNameEachOrientationCaseWhenItsSequenceIsUndone() throws IOException {
        for (String[] row : rows("oll_cases.csv")) {
            assertThat(LastLayerCases.orientation(undone(row[1]))).as(row[1]).isEqualTo(row[0]);
        }
    }

    @Test
    void shouldNameEachPermutationCaseWhenItsSequenceIsUndone() throws IOException {
        for (String[] row : rows("pll_cases.csv")) {
            assertThat(LastLayerCases.permutation(undone(row[1]))).as(row[1]).isEqualTo(row[0]);
        }
    }

    @Test
    void shouldWeighOrientationCasesLikeTheReferenceWhenAll216PatternsAreRead() throws IOException {
        Map<String, Integer> weights = new HashMap<>();
        for (int pattern = 0; pattern < 216; pattern++) {
            weights.merge(LastLayerCases.orientation(withOrientation(pattern)), 1, Integer::sum);
        }

        assertThat(weights).hasSize(58).containsEntry(LastLayerCases.SKIP, 1);
        for (String[] row : rows("oll_cases.csv")) {
            assertThat(weights.get(row[0]) + "/216").as("case " + row[0]).isEqualTo(row[4]);
        }
    }

    @Test
    void shouldWeighPermutationCasesLikeTheReferenceWhenAll288PermutationsAreRead() throws IOException {
        Map<String, Integer> weights = new TreeMap<>();
        for (int[] corners : permutations()) {
            for (int[] edges : permutations()) {
                if (isOdd(corners) == isOdd(edges)) {
                    CubeState state = withOrder(corners, edges);
                    assertThat(state.legality().toString()).isEqualTo("LEGAL");
                    weights.merge(LastLayerCases.permutation(state), 1, Integer::sum);
                }
            }
        }

        assertThat(weights).hasSize(22).containsEntry(LastLayerCases.SKIP, 4);
        for (String[] row : rows("pll_cases.csv")) {
            assertThat(weights.get(row[0]) / 4 + "/72").as("case " + row[0]).isEqualTo(row[2]);
            assertThat(weights.get(row[0]) % 4).isZero();
        }
    }

    private static CubeState undone(String sequence) {
        return Sequence.parse(sequence).inverse().state();
    }

    private static CubeState withOrientation(int pattern) {
        int[] twists = new int[8];
        int[] flips = new int[12];
        int rest = pattern;
        for (int place = 0; place < 3; place++) {
            twists[place] = rest % 3;
            rest /= 3;
        }
        twists[3] = (9 - twists[0] - twists[1] - twists[2]) % 3;
        for (int place = 0; place < 3; place++) {
            flips[place] = rest % 2;
            rest /= 2;
        }
        flips[3] = (flips[0] + flips[1] + flips[2]) % 2;
        return CubeState.ofCubies(counting(8), twists, counting(12), flips);
    }

    private static CubeState withOrder(int[] topCorners, int[] topEdges) {
        int[] corners = counting(8);
        int[] edges = counting(12);
        System.arraycopy(topCorners, 0, corners, 0, 4);
        System.arraycopy(topEdges, 0, edges, 0, 4);
        return CubeState.ofCubies(corners, new int[8], edges, new int[12]);
    }

    private static int[] counting(int size) {
        int[] places = new int[size];
        for (int place = 0; place < size; place++) {
            places[place] = place;
        }
        return places;
    }

    private static List<int[]> permutations() {
        List<int[]> all = new ArrayList<>();
        for (int code = 0; code < 256; code++) {
            int[] order = {code & 3, code >> 2 & 3, code >> 4 & 3, code >> 6};
            if (((1 << order[0]) | (1 << order[1]) | (1 << order[2]) | (1 << order[3])) == 15) {
                all.add(order);
            }
        }
        return all;
    }

    private static boolean isOdd(int[] order) {
        boolean odd = false;
        for (int high = 1; high < 4; high++) {
            for (int low = 0; low < high; low++) {
                odd ^= order[low] > order[high];
            }
        }
        return odd;
    }

    private static List<String[]> rows(String file) throws IOException {
        try (InputStream table = Objects.requireNonNull(
                LastLayerCasesTest.class.getResourceAsStream("/fermata/fixtures/reference/" + file))) {
            return new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        }
    }
}
