package fermata.analysis.goal;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The words' inverse is where they begin, so that all stands at their end. Cross at D. */
class PairGrowthTest {
    private static final List<Corner> AROUND_D = PairGrowth.cornersOf(Face.D);

    /** A cross with a pair; then L brings three at once, two of which it turned, and F2 before it one of these. */
    @Test
    void shouldTakeThePairThatWasMovedLastForTheOneAtWorkWhenSeveralCameAtOnce() {
        PairGrowth growth = overCross("F' R D2 L B D F2 U L2 F2 L' F2 L");

        assertThat(growth.base()).isEqualTo(9);
        assertThat(growth.times()).containsExactly(9, 13, 13, 13);
        assertThat(growth.atWork(1)).isEmpty();
        assertThat(growth.atWork(2)).contains(Corner.DLF);
        assertThat(growth.slots()).containsExactlyInAnyOrderElementsOf(AROUND_D);
    }

    /** The pair stands halfway through the half turn, which runs on into what comes next. */
    @Test
    void shouldLookHalfwayThroughAHalfTurn() {
        PairGrowth growth = overCross("R U R2 R");

        assertThat(growth.times()).containsExactly(0, 0, 0, 3);
        assertThat(growth.atWork(4)).contains(Corner.DFR);
    }

    /** The left block on a line at F and B, where all but one pair and an edge of the right one stand; R ends them. */
    @Test
    void shouldCountFromTheLineWhatCameWithTheCross() {
        String words = "L' U L U L' U' L R2 U R2 U2 R2 U R' U R";

        assertThat(overCross(words).base()).isEqualTo(12);
        assertThat(overCross(words).times()).containsExactly(12, 12, 12, 16);
        PairGrowth overLine = PairGrowth.overLine(home(words), Face.D, Face.F.axis());
        assertThat(overLine.base()).isZero();
        assertThat(overLine.times()).containsExactly(0, 7, 12, 16);
        assertThat(overLine.slots()).containsExactly(Corner.DBL, Corner.DLF, Corner.DFR, Corner.DRB);
        assertThat(overLine.atWork(2)).contains(Corner.DLF);
    }

    @Test
    void shouldNameNoPairAtWorkWhenNoneEverCame() {
        List<Turn> turns = turns("R U F' L");
        PiecesHome mixed = new PiecesHome(CubeState.SOLVED.apply(turns("R U F' L D B2 R2 U F")), turns);

        PairGrowth never = PairGrowth.overCross(mixed, Face.D, AROUND_D);

        assertThat(never.base()).isEqualTo(never.never()).isEqualTo(5);
        assertThat(never.times()).containsOnly(5);
        for (int pair = 1; pair <= 4; pair++) {
            assertThat(never.atWork(pair)).isEmpty();
        }
    }

    private static PairGrowth overCross(String words) {
        return PairGrowth.overCross(home(words), Face.D, AROUND_D);
    }

    private static PiecesHome home(String words) {
        return new PiecesHome(CubeState.SOLVED.apply(turns(words)).inverse(), turns(words));
    }

    private static List<Turn> turns(String words) {
        return Sequence.parse(words).walk(Orientation.IDENTITY).turns();
    }
}
