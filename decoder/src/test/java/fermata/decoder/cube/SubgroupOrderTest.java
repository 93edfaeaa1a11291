package fermata.decoder.cube;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.ReferenceTable;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SubgroupOrderTest {
    /** Rows of the table that describe their generators in words. */
    private static final Map<String, String> DESCRIBED = Map.of(
            "squares <U2,D2,R2,L2,F2,B2>", "U2,D2,R2,L2,F2,B2",
            "<R,L,F,B,D> (no U)", "R,L,F,B,D",
            "domino <U,D,R2,L2,F2,B2>", "U,D,R2,L2,F2,B2",
            "EO group <U,D,R,L,F2,B2>", "U,D,R,L,F2,B2",
            "slice <M,E,S>", "M,E,S",
            "slice squares <M2,E2,S2>", "M2,E2,S2",
            "all + rotations", "U,D,R,L,F,B,x,y",
            "faces + slices", "U,D,R,L,F,B,M,E,S",
            "antislice <R L,U D,F B>", "R L,U D,F B");

    /**
     * Source: `subgroup_orders.csv`, GAP 4.12.1 `Size(Group(...))`; published and equal are among others <R,U> (OEIS
     * A080628), the squares group (OEIS A080627) and <M,U> (OEIS A080617).
     */
    static Stream<List<String>> groups() {
        return ReferenceTable.rows("subgroup_orders.csv");
    }

    @ParameterizedTest
    @MethodSource("groups")
    void shouldGenerateGroupsOfTheOrderThatGapComputes(List<String> row) {
        String described = row.get(0);
        String words = DESCRIBED.getOrDefault(described, described.replaceAll("[<>]", ""));

        List<int[]> generators = new ArrayList<>();
        for (String word : words.split(",")) {
            Sequence sequence = Sequence.parse(word);
            generators.add(StickerPermutation.sources(
                    sequence.state(), sequence.walk(Orientation.IDENTITY).end()));
        }

        assertThat(new PermutationGroup(generators).order()).isEqualTo(new BigInteger(row.get(1)));
    }
}
