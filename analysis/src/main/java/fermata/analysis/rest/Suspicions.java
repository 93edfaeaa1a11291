package fermata.analysis.rest;

import fermata.analysis.record.TurnRecord;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;

/** Lists what may have held up the hand before a turn, from what lies around it. */
final class Suspicions {
    private static final double ROTATION_WORTH_NAMING = 0.02;

    private final Timeline timeline;
    private final List<TurnRecord> turns;
    private final List<TurnSpan> slips;

    Suspicions(Timeline timeline, List<TurnRecord> turns, List<TurnSpan> spans) {
        this.timeline = timeline;
        this.turns = turns;
        this.slips =
                spans.stream().filter(span -> span.kind() == TurnSpan.Kind.SLIP).toList();
    }

    /** What may have held up a turn, from 1. */
    List<Suspicion> before(int turn) {
        List<Suspicion> found = new ArrayList<>();
        Stretch stretch = timeline.stretch(turn);
        if (timeline.isStart(turn) && stretch.isSought()) {
            add(found, Circumstance.PAIR_BEGINS, 1);
        }
        if (timeline.isStart(turn) && stretch.isRecognised()) {
            add(found, Circumstance.CASE_BEGINS, 1);
        } else if (stretch.isRecognised() && isAfterFirstAuf(turn)) {
            add(found, Circumstance.AFTER_FIRST_AUF, 1);
        } else if (!timeline.isSlip(turn) && (stretch == Stretch.ORIENT || stretch == Stretch.PERMUTE)) {
            add(found, Circumstance.IN_SEQUENCE, 1);
        }
        addHand(found, turn, stretch);
        if (timeline.isSlip(turn)) {
            add(found, Circumstance.WITHIN_SLIP, 1);
        } else if (slips.stream().anyMatch(slip -> slip.turns().to() == turn)) {
            add(found, Circumstance.AFTER_SLIP, 1);
        }
        add(found, Circumstance.ANYWHERE, 1);
        return found;
    }

    private void addHand(List<Suspicion> found, int turn, Stretch stretch) {
        if (!timeline.hasHolds()) {
            if (timeline.isStart(turn)) {
                add(found, Circumstance.ROTATION_GUESSED_AT_START, 1);
            } else if (stretch.isSought()) {
                add(found, Circumstance.ROTATION_GUESSED_INSIDE, 1);
            }
        } else if (timeline.rotationProbability(turn) >= ROTATION_WORTH_NAMING) {
            add(found, Circumstance.ROTATION_READ, timeline.rotationProbability(turn));
        }
        add(found, regrip(turn), 1);
    }

    private Circumstance regrip(int turn) {
        if (timeline.isSlip(turn)) {
            // Taking a turn back brings the hand back to where it was.
            return Circumstance.REGRIP_UNSEEN;
        }
        return switch (timeline.regrip(turn)) {
            case NONE -> Circumstance.REGRIP_UNSEEN;
            case WRIST, REACH -> Circumstance.REGRIP_NEEDED;
            case AFTER_ROTATION -> Circumstance.REGRIP_AFTER_ROTATION;
            case UNTOLD ->
                timeline.isStart(turn) ? Circumstance.REGRIP_GUESSED_AT_START : Circumstance.REGRIP_GUESSED_INSIDE;
        };
    }

    private static void add(List<Suspicion> found, Circumstance circumstance, double reading) {
        found.add(new Suspicion(circumstance, reading));
    }

    /** Whether all turns since the stretch began are of one face, up to a half turn in all. */
    private boolean isAfterFirstAuf(int turn) {
        int from = turn - 1;
        while (from > 0 && !timeline.isStart(from) && turn - from <= 2) {
            from--;
        }
        if (!timeline.isStart(from) || turn - from > 2) {
            return false;
        }
        Turn first = turns.get(from).core();
        return turns.subList(from, turn).stream()
                        .allMatch(record -> record.core().face() == first.face())
                && turns.get(turn).core().face() != first.face()
                && timeline.isLastLayerFace(first.face());
    }
}
