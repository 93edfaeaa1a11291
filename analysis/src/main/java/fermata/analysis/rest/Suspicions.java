package fermata.analysis.rest;

import fermata.analysis.beat.Stretch;
import fermata.analysis.beat.Timeline;
import fermata.analysis.record.TurnRecord;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;

/** Lists what may have held up the hand before a turn, from what lies around it. */
final class Suspicions {
    private static final double ROTATION_WORTH_NAMING = 0.02;
    private static final double REGRIP_WORTH_NAMING = 0.05;

    private final Timeline timeline;
    private final List<TurnRecord> turns;

    Suspicions(Timeline timeline, List<TurnRecord> turns) {
        this.timeline = timeline;
        this.turns = turns;
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
        } else if (timeline.isAfterSlip(turn)) {
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
        addRegrip(found, turn);
    }

    private void addRegrip(List<Suspicion> found, int turn) {
        if (timeline.isSlip(turn)) {
            // Taking a turn back brings the hand back to where it was.
            add(found, Circumstance.REGRIP_UNSEEN, 1);
        } else if (!timeline.tellsRegrips()) {
            boolean isStart = timeline.isStart(turn);
            add(found, isStart ? Circumstance.REGRIP_GUESSED_AT_START : Circumstance.REGRIP_GUESSED_INSIDE, 1);
        } else if (timeline.regripProbability(turn) < REGRIP_WORTH_NAMING) {
            add(found, Circumstance.REGRIP_UNSEEN, 1);
        } else {
            boolean isRotated = timeline.rotationProbability(turn) >= 0.5;
            add(
                    found,
                    isRotated ? Circumstance.REGRIP_AFTER_ROTATION : Circumstance.REGRIP_NEEDED,
                    timeline.regripProbability(turn));
        }
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
