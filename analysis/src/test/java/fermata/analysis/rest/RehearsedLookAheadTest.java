package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.lookahead.LookAhead;
import fermata.analysis.lookahead.LookAheadFinding;
import fermata.analysis.lookahead.Outlook;
import fermata.analysis.lookahead.Wanted;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.Span;
import fermata.analysis.record.StageRecord;
import fermata.analysis.rehearsal.CuberStyle;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RehearsedLookAheadTest {
    private static final List<PracticedSolve> SOLVES =
            RestScore.practiced(Performed.evening(CuberStyle.cook(), 7, 30), true);
    private static final Rhythm RHYTHM = RestReader.learn(SOLVES, Rhythm.coldStart());

    @Test
    void shouldFindAPairWheneverBothItsPiecesWereInFullViewEarlyEnough() {
        int plain = 0;
        for (PracticedSolve solve : SOLVES) {
            for (LookAheadFinding finding : read(solve)) {
                Wanted pair = pair(solve.record(), finding);
                if (isPlain(solve, finding, pair)) {
                    plain++;
                    assertThat(finding.outlook())
                            .as(solve.record().id() + " " + finding.stage())
                            .isInstanceOf(Outlook.Identifiable.class);
                }
            }
        }
        assertThat(plain).isGreaterThan(30);
    }

    @Test
    void shouldNameAsHiddenOnlyPiecesThatWereNotInFullViewEarlyEnough() {
        int hidden = 0;
        for (PracticedSolve solve : SOLVES) {
            for (LookAheadFinding finding : read(solve)) {
                if (finding.outlook() instanceof Outlook.Hidden nothing) {
                    hidden++;
                    SeenInFull seen = new SeenInFull(solve.record(), solve.hand());
                    assertThat(nothing.hidden().corners().size()
                                    + nothing.hidden().edges().size())
                            .isPositive();
                    for (int turn : earlyEnough(solve, finding)) {
                        assertThat(nothing.hidden().corners()).noneMatch(corner -> seen.corner(corner, turn));
                        assertThat(nothing.hidden().edges()).noneMatch(edge -> seen.edge(edge, turn));
                    }
                }
            }
        }
        assertThat(hidden).isGreaterThan(5);
    }

    @Test
    void shouldCallItAFermataOnlyWhenTheHandRestedBeforeWhatCouldBeFound() {
        int fermatas = 0;
        for (PracticedSolve solve : SOLVES) {
            for (LookAheadFinding finding : read(solve)) {
                if (finding.isFermata()) {
                    fermatas++;
                    assertThat(finding.outlook())
                            .isInstanceOfSatisfying(
                                    Outlook.Identifiable.class,
                                    found -> assertThat(found.leadMicros())
                                            .isGreaterThanOrEqualTo(LookAhead.MARGIN_MICROS));
                    assertThat(finding.restMicros()).isGreaterThan(LookAheadFinding.REST_MICROS);
                }
                assertThat(finding.isFermata() && finding.isTiltHint()).isFalse();
            }
        }
        assertThat(fermatas).isPositive();
    }

    @Test
    void shouldFindLessTheEarlierItHasToBe() {
        int found = Integer.MAX_VALUE;
        for (long margin : new long[] {0, 300_000, 1_000_000, 3_000_000}) {
            int now = 0;
            for (PracticedSolve solve : SOLVES) {
                now += (int) LookAhead.read(solve, RestReader.read(solve, RHYTHM), margin).stream()
                        .filter(finding -> finding.outlook() instanceof Outlook.Identifiable)
                        .count();
            }
            assertThat(now).isLessThan(found);
            found = now;
        }
    }

    @Test
    void shouldClaimLessWhenHoldsAreOnlyGuessed() {
        for (PracticedSolve solve : SOLVES.subList(0, 10)) {
            HandFacts guessed = HandFacts.guess(solve.record(), solve.hand().hand());
            PracticedSolve blind = new PracticedSolve(solve.record(), guessed, solve.solveOfNight());
            assertThat(read(blind))
                    .allSatisfy(finding -> assertThat(finding.holdProbability()).isBetween(0.25, 0.9999));
        }
    }

    private static List<LookAheadFinding> read(PracticedSolve solve) {
        return LookAhead.read(solve, RestReader.read(solve, RHYTHM), LookAhead.MARGIN_MICROS);
    }

    private static Wanted pair(SolveRecord record, LookAheadFinding finding) {
        List<Face> sides = finding.faces();
        List<Corner> corners = new ArrayList<>();
        for (Corner corner : Corner.values()) {
            if (corner.touches(record.crossFaces().get(0)) && sides.stream().allMatch(corner::touches)) {
                corners.add(corner);
            }
        }
        List<Edge> edges = new ArrayList<>();
        for (Edge edge : Edge.values()) {
            if (sides.stream().allMatch(edge::touches)) {
                edges.add(edge);
            }
        }
        assertThat(corners).hasSize(1);
        assertThat(edges).hasSize(1);
        return new Wanted(corners, edges);
    }

    private static boolean isPlain(PracticedSolve solve, LookAheadFinding finding, Wanted pair) {
        SeenInFull seen = new SeenInFull(solve.record(), solve.hand());
        boolean isCornerSeen = false;
        boolean isEdgeSeen = false;
        for (int turn : earlyEnough(solve, finding)) {
            isCornerSeen |= seen.corner(pair.corners().get(0), turn);
            isEdgeSeen |= seen.edge(pair.edges().get(0), turn);
        }
        return isCornerSeen && isEdgeSeen;
    }

    /** The turns of the stage before whose beginning lies at least the margin before its last turn. */
    private static List<Integer> earlyEnough(PracticedSolve solve, LookAheadFinding finding) {
        SolveRecord record = solve.record();
        Span before = record.stages().stream()
                .map(StageRecord::span)
                .filter(span -> !span.isEmpty() && span.to() == finding.beforeTurn())
                .findFirst()
                .orElseThrow();
        long needed = record.turns().get(before.to() - 1).atMicros();
        List<Integer> turns = new ArrayList<>();
        for (int turn = before.from(); turn < before.to(); turn++) {
            long shown = turn == 0 ? 0 : record.turns().get(turn - 1).atMicros();
            if (needed - shown >= LookAhead.MARGIN_MICROS) {
                turns.add(turn);
            }
        }
        return turns;
    }
}
