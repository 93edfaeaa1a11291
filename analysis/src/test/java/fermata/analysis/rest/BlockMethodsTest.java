package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.beat.Stretch;
import fermata.analysis.event.Hand;
import fermata.analysis.hand.HandReading;
import fermata.analysis.hand.StatedHand;
import fermata.analysis.hand.TurnOdds;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.PublicSolves;
import fermata.analysis.lookahead.FermataJudgement;
import fermata.analysis.lookahead.JudgedRest;
import fermata.analysis.lookahead.LookAhead;
import fermata.analysis.lookahead.LookAheadFinding;
import fermata.analysis.lookahead.Outlook;
import fermata.analysis.method.MethodReader;
import fermata.analysis.record.Method;
import fermata.analysis.record.StageName;
import fermata.analysis.record.StageRecord;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.character.CuberStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Methods by blocks through rests and look-ahead. The holds are the written ones, the times made up: a turn every
 * 0.25 s, and 1.5 s before each block and pair.
 */
class BlockMethodsTest {
    private static final long BEAT_MICROS = 250_000;
    private static final long REST_MICROS = 1_500_000;

    /** Two blocks, corners, slices; it solves whatever its own inverse made. */
    private static final String TWO_BLOCKS = "L' F D B2 L' D2 r U r' U2 R U' r U r' U R U2 R2 U R U' r"
            + " U R U R' U R U2 R' U' M' U M U2 M' U M U M2 U M2 U2 M' U2 M";

    /** Two blocks, and the four public solves that went by blocks after their edges were oriented. */
    private static List<PracticedSolve> byBlocks() {
        List<PracticedSolve> solves = new ArrayList<>(List.of(twoBlocks()));
        PublicSolves.all().stream()
                .map(solve -> practiced(solve.example()))
                .filter(solve -> solve.record().stages().stream().anyMatch(stage -> stage.name() == StageName.BLOCK1))
                .forEach(solves::add);
        return solves;
    }

    @Test
    void shouldLookForEveryBlockThatHasAStageBeforeIt() {
        List<PracticedSolve> solves = byBlocks();

        assertThat(solves).hasSize(5);
        assertThat(findings(solves.get(0))).extracting(LookAheadFinding::stage).containsExactly(StageName.BLOCK2);
        assertThat(solves.subList(1, 5)).allSatisfy(solve -> {
            assertThat(solve.record().method()).isEqualTo(Method.ZZ);
            assertThat(findings(solve))
                    .extracting(LookAheadFinding::stage)
                    .containsExactly(StageName.BLOCK1, StageName.BLOCK2);
        });
    }

    @Test
    void shouldFindTheRestBeforeABlockAndCallItMostlyLookAhead() {
        for (PracticedSolve solve : byBlocks()) {
            for (LookAheadFinding finding : findings(solve)) {
                assertThat(finding.restMicros()).isBetween(1_000_000.0, (double) REST_MICROS);
                assertThat(finding.rest().largest().cause()).isEqualTo(Cause.LOOK_AHEAD);
                assertThat(finding.isLookedFor()).isTrue();
            }
        }
    }

    @Test
    void shouldNameHiddenPiecesOfTheBlockThatWereNotInFullView() {
        int hiddenPieces = 0;
        int found = 0;
        for (PracticedSolve solve : byBlocks()) {
            SeenInFull seen = new SeenInFull(solve.record(), solve.hand());
            for (LookAheadFinding finding : findings(solve)) {
                List<Corner> corners = corners(finding);
                List<Edge> edges = edges(finding);
                assertThat(corners).hasSize(2);
                assertThat(edges).hasSize(3);
                Span before = before(solve, finding);
                if (finding.outlook() instanceof Outlook.Hidden nothing) {
                    hiddenPieces += nothing.hidden().corners().size()
                            + nothing.hidden().edges().size();
                    assertThat(corners).containsAll(nothing.hidden().corners());
                    assertThat(edges).containsAll(nothing.hidden().edges());
                    // Turns are 0.25 s apart: what was in view before the last two turns was so 0.3 s early.
                    for (int turn = before.from(); turn < before.to() - 2; turn++) {
                        int at = turn;
                        assertThat(nothing.hidden().corners()).noneMatch(corner -> seen.corner(corner, at));
                        assertThat(nothing.hidden().edges()).noneMatch(edge -> seen.edge(edge, at));
                    }
                } else if (finding.outlook() instanceof Outlook.Identifiable) {
                    found++;
                }
            }
        }
        assertThat(hiddenPieces).isPositive();
        assertThat(found).isPositive();
    }

    @Test
    void shouldJudgeARestBeforeABlockOnlyWhenAllOfItCouldBeFound() {
        for (PracticedSolve solve : byBlocks()) {
            List<LookAheadFinding> findings = findings(solve);
            List<JudgedRest> rests =
                    JudgedRest.of(solve.record(), RestReader.read(solve, Rhythm.coldStart()), findings);
            for (LookAheadFinding finding : findings) {
                boolean isFound = finding.outlook() instanceof Outlook.Identifiable;
                assertThat(rests)
                        .filteredOn(rest -> rest.rest().afterTurn() == finding.beforeTurn() - 1)
                        .extracting(JudgedRest::judgement)
                        .containsExactly(isFound ? FermataJudgement.FERMATA : FermataJudgement.BLOCK);
            }
        }
    }

    private static List<Corner> corners(LookAheadFinding block) {
        return Stream.of(Corner.values())
                .filter(corner -> block.faces().stream().allMatch(corner::touches))
                .toList();
    }

    /** The one below and the two that stand between it and the layer above. */
    private static List<Edge> edges(LookAheadFinding block) {
        Face side = block.faces().get(0);
        Face below = block.faces().get(1);
        return Stream.of(Edge.values())
                .filter(edge -> edge.touches(side) && !edge.touches(below.opposite()))
                .toList();
    }

    private static Span before(PracticedSolve solve, LookAheadFinding finding) {
        return solve.record().stages().stream()
                .map(StageRecord::span)
                .filter(span -> !span.isEmpty() && span.to() == finding.beforeTurn())
                .findFirst()
                .orElseThrow();
    }

    /** The layers and holds that were written down; wide turns are turns of the layer that stayed with the core. */
    private static PracticedSolve practiced(HoldExample example) {
        List<HandFacts.AtTurn> facts = new ArrayList<>();
        for (int turn = 0; turn < example.track().size(); turn++) {
            Turn core = example.track().turns().get(turn);
            Move move = new Move.Layer(Turn.of(example.track().layer(turn), core.quarters()));
            facts.add(new HandFacts.AtTurn(move, example.track().holds().get(turn), 1, TurnOdds.certain(move, 0)));
        }
        return timed(example.start(), example.track().turns(), new HandFacts(example.hand(), true, facts));
    }

    private static PracticedSolve twoBlocks() {
        Sequence words = Sequence.parse(TWO_BLOCKS);
        List<Turn> turns = words.walk(Orientation.IDENTITY).turns();
        HandReading said = ((StatedHand.Agrees) StatedHand.of(words, turns)).reading();
        return timed(CubeState.SOLVED.apply(turns).inverse(), turns, HandFacts.of(said, Hand.LEFT));
    }

    private static PracticedSolve timed(CubeState start, List<Turn> turns, HandFacts facts) {
        Set<Integer> begins = MethodReader.read(start, turns).stages().stream()
                .filter(stage -> Stretch.of(stage.name()).isSought())
                .map(stage -> stage.span().from())
                .collect(Collectors.toSet());
        List<Long> at = new ArrayList<>(List.of(0L));
        for (int turn = 1; turn < turns.size(); turn++) {
            at.add(at.get(turn - 1) + (begins.contains(turn) ? REST_MICROS : BEAT_MICROS));
        }
        Performed performed = new Performed(CuberStyle.cook(), 0, start, turns, at, facts, List.of());
        return new PracticedSolve(performed.record(), facts, 0);
    }

    private static List<LookAheadFinding> findings(PracticedSolve solve) {
        return LookAhead.read(solve, RestReader.read(solve, Rhythm.coldStart()), LookAhead.MARGIN_MICROS);
    }
}
