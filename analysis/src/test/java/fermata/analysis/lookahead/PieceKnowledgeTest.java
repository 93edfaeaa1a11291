package fermata.analysis.lookahead;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PieceKnowledgeTest {
    /** Independent of the code: counts all placements that show the same visible letters, by subsets of places. */
    @Test
    void shouldAgreeWithCountingAllPlacementsOnAThousandRandomStates() {
        Random random = new Random(1000);
        int identified = 0;
        for (int round = 0; round < 1000; round++) {
            CubeState state = randomState(random);
            Orientation hold = Orientation.ofIndex(random.nextInt(24));
            Hand hand = Hand.values()[random.nextInt(3)];
            View view = View.values()[random.nextInt(View.values().length)];

            PieceKnowledge knowledge = PieceKnowledge.nothing().seeing(state, hold, hand, view);

            PlacementCount count = new PlacementCount(state, hold, hand, view);
            for (Corner corner : Corner.values()) {
                assertThat(knowledge.of(corner).placesLeft())
                        .as("round %d %s", round, corner)
                        .isEqualTo(count.placesOf(corner));
                assertThat(knowledge.of(corner).isIdentified()).isEqualTo(count.isFixed(corner));
                identified += count.isFixed(corner) ? 1 : 0;
            }
            for (Edge edge : Edge.values()) {
                assertThat(knowledge.of(edge).placesLeft())
                        .as("round %d %s", round, edge)
                        .isEqualTo(count.placesOf(edge));
                assertThat(knowledge.of(edge).isIdentified()).isEqualTo(count.isFixed(edge));
                identified += count.isFixed(edge) ? 1 : 0;
            }
        }
        assertThat(identified).isBetween(5_000, 19_000);
    }

    @Test
    void shouldNeverLoseTheTruthAndNeverForgetWhileTurning() {
        Random random = new Random(7);
        for (int round = 0; round < 50; round++) {
            CubeState state = randomState(random);
            PieceKnowledge knowledge = PieceKnowledge.nothing();
            int known = 0;
            for (int step = 0; step < 12; step++) {
                knowledge = knowledge.seeing(state, Orientation.IDENTITY, Hand.LEFT, View.PLAIN);
                int now = 0;
                for (Corner corner : Corner.values()) {
                    now += knowledge.of(corner).isIdentified() ? 1 : 0;
                }
                assertThat(now).isGreaterThanOrEqualTo(known);
                known = now;
                Turn turn = Turn.ofIndex(random.nextInt(18));
                state = state.apply(turn);
                knowledge = knowledge.after(turn);
            }
        }
    }

    @Test
    void shouldTellSeenFromEliminated() {
        PieceKnowledge knowledge =
                PieceKnowledge.nothing().seeing(CubeState.SOLVED, Orientation.IDENTITY, Hand.LEFT, View.PLAIN);

        assertThat(knowledge.of(Corner.URF)).isEqualTo(new Knowing(Knowing.Kind.SEEN, 1));
        // Of UL and UB only the U stickers show: each may be in either place, until a tilt brings B's strip round.
        assertThat(knowledge.of(Edge.UL)).isEqualTo(new Knowing(Knowing.Kind.OPEN, 2));
        PieceKnowledge tilted = knowledge.seeing(CubeState.SOLVED, Orientation.IDENTITY, Hand.LEFT, View.BACK_TILT);
        assertThat(tilted.of(Edge.BR)).isEqualTo(new Knowing(Knowing.Kind.SEEN, 1));
        PieceKnowledge sideways = knowledge.seeing(CubeState.SOLVED, Orientation.IDENTITY, Hand.LEFT, View.SIDE_TILT);
        assertThat(sideways.of(Edge.UL)).isEqualTo(new Knowing(Knowing.Kind.SEEN, 1));
        assertThat(sideways.of(Edge.UB)).isEqualTo(new Knowing(Knowing.Kind.ELIMINATED, 1));
        assertThat(knowledge.of(Edge.DB).kind()).isEqualTo(Knowing.Kind.OPEN);
        assertThat(knowledge.of(Edge.DB).placesLeft()).isGreaterThan(1);
    }

    @Test
    void shouldShowTheMirrorImageToTheOtherHand() {
        for (Hand hand : List.of(Hand.LEFT, Hand.RIGHT)) {
            assertThat(IntStream.range(0, 54).filter(place -> View.PLAIN.shows(hand, place)))
                    .hasSize(25);
        }
        // The left thumb covers F's left column below the top row; the right thumb its right column.
        assertThat(View.PLAIN.shows(Hand.LEFT, 21)).isFalse();
        assertThat(View.PLAIN.shows(Hand.LEFT, 23)).isTrue();
        assertThat(View.PLAIN.shows(Hand.RIGHT, 21)).isTrue();
        assertThat(View.PLAIN.shows(Hand.RIGHT, 23)).isFalse();
        // The free side is R for the left hand and L for the right.
        assertThat(View.PLAIN.shows(Hand.LEFT, 13)).isTrue();
        assertThat(View.PLAIN.shows(Hand.RIGHT, 13)).isFalse();
        assertThat(View.PLAIN.shows(Hand.RIGHT, 40)).isTrue();
    }

    private static CubeState randomState(Random random) {
        List<Turn> turns = new ArrayList<>();
        for (int turn = 0; turn < 40; turn++) {
            turns.add(Turn.ofIndex(random.nextInt(18)));
        }
        return CubeState.SOLVED.apply(turns);
    }
}
