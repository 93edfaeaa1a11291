package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.lookahead.LookAhead;
import fermata.analysis.lookahead.LookAheadFinding;
import fermata.analysis.lookahead.Outlook;
import fermata.analysis.lookahead.View;
import fermata.analysis.lookahead.Wanted;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Span;
import fermata.rehearsal.character.CuberStyle;
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
    void shouldHintAtATiltOnlyWhereNothingWasInFullViewAndATiltShowsItInTime() {
        int hints = 0;
        for (PracticedSolve solve : SOLVES) {
            for (LookAheadFinding finding : read(solve)) {
                if (finding.outlook() instanceof Outlook.WithTilt tilted) {
                    hints += finding.isTiltHint() ? 1 : 0;
                    assertThat(isPlain(solve, finding, pair(solve.record(), finding)))
                            .isFalse();
                    assertThat(tilted.leadMicros()).isGreaterThanOrEqualTo(LookAhead.MARGIN_MICROS);
                    assertThat(tilted.tilt()).isIn(View.SIDE_TILT, View.BACK_TILT);
                }
            }
        }
        assertThat(hints).isPositive();
    }

    @Test
    void shouldNameAnotherPairThatWasInFullViewTheMarginSooner() {
        int sooner = 0;
        for (PracticedSolve solve : SOLVES) {
            SeenInFull seen = new SeenInFull(solve.record(), solve.hand());
            for (LookAheadFinding finding : read(solve)) {
                double known = finding.outlook() instanceof Outlook.Identifiable found ? found.leadMicros() : 0;
                for (Wanted other : later(solve.record(), finding)) {
                    double lead = leadInFullView(solve, finding, other, seen);
                    if (lead >= known + LookAhead.MARGIN_MICROS) {
                        sooner++;
                        assertThat(finding.sooner()).hasSize(2).isNotEqualTo(finding.faces());
                        assertThat((double) finding.soonerLeadMicros()).isGreaterThanOrEqualTo(lead);
                    }
                }
            }
        }
        assertThat(sooner).isGreaterThan(10);
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

    /** The same pairs of the same solves: of each less is sure, and of all together less is called a fermata. */
    @Test
    void shouldClaimLessWhenHoldsAreOnlyGuessed() {
        int findings = 0;
        double claimedKnown = 0;
        double claimedGuessed = 0;
        for (PracticedSolve solve : SOLVES) {
            List<LookAheadFinding> known = read(solve);
            List<LookAheadFinding> guessed = read(blind(solve));
            assertThat(guessed).hasSameSizeAs(known);
            for (int at = 0; at < known.size(); at++) {
                assertThat(guessed.get(at).beforeTurn()).isEqualTo(known.get(at).beforeTurn());
                assertThat(guessed.get(at).holdProbability())
                        .as(solve.record().id() + " " + known.get(at).stage())
                        .isLessThan(known.get(at).holdProbability());
                claimedKnown += known.get(at).isFermata() ? known.get(at).probability() : 0;
                claimedGuessed += guessed.get(at).isFermata() ? guessed.get(at).probability() : 0;
                findings++;
            }
        }
        assertThat(findings).isGreaterThan(100);
        assertThat(claimedKnown).isPositive();
        assertThat(claimedGuessed).isLessThan(claimedKnown);
    }

    private static PracticedSolve blind(PracticedSolve solve) {
        HandFacts guessed = HandFacts.guess(solve.record(), solve.hand().hand());
        return new PracticedSolve(solve.record(), guessed, solve.solveOfNight());
    }

    private static List<LookAheadFinding> read(PracticedSolve solve) {
        return LookAhead.read(solve, RestReader.read(solve, RHYTHM), LookAhead.MARGIN_MICROS);
    }

    /** The pairs that were still to be made after the one of a finding. */
    private static List<Wanted> later(SolveRecord record, LookAheadFinding finding) {
        return record.stages().stream()
                .filter(stage -> stage.name().written().startsWith("pair")
                        && !stage.span().isEmpty()
                        && stage.span().from() > finding.beforeTurn())
                .map(stage -> pair(record, stage.faces()))
                .toList();
    }

    /** How long before the stage before ended both pieces had been in full view; -1 if never in time to matter. */
    private static double leadInFullView(PracticedSolve solve, LookAheadFinding finding, Wanted pair, SeenInFull seen) {
        Span before = before(solve.record(), finding);
        long needed = solve.record().turns().get(before.to() - 1).atMicros();
        boolean isCornerSeen = false;
        boolean isEdgeSeen = false;
        for (int turn = before.from(); turn < before.to(); turn++) {
            isCornerSeen |= seen.corner(pair.corners().get(0), turn);
            isEdgeSeen |= seen.edge(pair.edges().get(0), turn);
            if (isCornerSeen && isEdgeSeen) {
                return needed
                        - (turn == 0 ? 0 : solve.record().turns().get(turn - 1).atMicros());
            }
        }
        return -1;
    }

    private static Wanted pair(SolveRecord record, LookAheadFinding finding) {
        return pair(record, finding.faces());
    }

    private static Wanted pair(SolveRecord record, List<Face> sides) {
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
        Span before = before(record, finding);
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

    private static Span before(SolveRecord record, LookAheadFinding finding) {
        return record.stages().stream()
                .map(StageRecord::span)
                .filter(span -> !span.isEmpty() && span.to() == finding.beforeTurn())
                .findFirst()
                .orElseThrow();
    }
}
