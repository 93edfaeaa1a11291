package fermata.decoder.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Against the depth tables computed by an independent breadth-first search (reference table depth_tables.csv). */
class PruningTableTest {
    @Test
    void shouldMatchTheDepthTableWhenOnlyCornersAreOriented() throws IOException {
        assertThat(alone(Tables.TWIST)).isEqualTo(countsOf("CO(2187) HTM"));
    }

    @Test
    void shouldMatchTheDepthTableWhenOnlyEdgesAreOriented() throws IOException {
        assertThat(alone(Tables.FLIP)).isEqualTo(countsOf("EO(2048) HTM"));
    }

    @Test
    void shouldMatchTheDepthTableWhenEdgesAndCornersAreOriented() throws IOException {
        assertThat(PruningTable.build(Tables.TWIST, Tables.FLIP).counts()).isEqualTo(countsOf("EO+CO(4478976) HTM"));
    }

    @Test
    void shouldReachEveryPairWhenBothParitiesAreFree() {
        assertThat(Arrays.stream(Tables.FLIP_AND_SLICE.counts()).sum()).isEqualTo(2048L * 495);
        assertThat(Arrays.stream(Tables.TWIST_AND_SLICE.counts()).sum()).isEqualTo(2187L * 495);
        assertThat(Arrays.stream(Tables.CORNERS_AND_MIDDLE.counts()).sum()).isEqualTo(40_320L * 24);
        assertThat(Arrays.stream(Tables.EDGES_AND_MIDDLE.counts()).sum()).isEqualTo(40_320L * 24);
    }

    private static long[] alone(MoveTable table) {
        MoveTable nothing = MoveTable.build(1, Tables.ALL, state -> 0);
        return PruningTable.build(table, nothing).counts();
    }

    private static long[] countsOf(String set) throws IOException {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                PruningTableTest.class.getResourceAsStream("/fermata/fixtures/reference/depth_tables.csv"),
                StandardCharsets.UTF_8))) {
            String row = lines.lines()
                    .filter(line -> line.startsWith(set + ","))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no set \"" + set + "\" in depth_tables.csv"));
            String counts = row.substring(row.lastIndexOf(',') + 1).trim();
            return Arrays.stream(counts.split(" ")).mapToLong(Long::parseLong).toArray();
        }
    }
}
