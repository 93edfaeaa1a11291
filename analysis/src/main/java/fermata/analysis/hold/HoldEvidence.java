package fermata.analysis.hold;

import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * What is known besides the turns, as log-likelihoods that join the lattice: any constant may be added to all
 * holds of a turn. Implementations are pure and thread-safe.
 */
public interface HoldEvidence {
    /** Nothing known besides the turns. */
    HoldEvidence NONE = new HoldEvidence() {};

    /** Natural log-likelihood of what was seen around a turn if the hold before it is this one. */
    default double ofHold(int turn, Orientation hold) {
        return 0;
    }

    /**
     * Natural log-likelihood ratio of what was seen between a turn (from 1) and the one before it, with a
     * rotation there against without. Wide turns and slices are not asked about: their rotation is part of a turn.
     */
    default double ofRotation(int beforeTurn, Orientation rotation) {
        return 0;
    }

    /**
     * How long a turn (from 1) was in coming after the one before it, against the solve's own median: one of
     * ten classes from 0, or empty if there are no times.
     */
    default OptionalInt pace(int beforeTurn) {
        return OptionalInt.empty();
    }

    /** Whether a turn (from 1) came so soon after the one before it that both may be one move; so if untold. */
    default boolean mayBeOneMove(int turn) {
        return true;
    }

    /**
     * The same evidence under each assumption that it leaves open and that holds throughout, such as which way a
     * sensor's north points. Equally likely beforehand; asked about in turn, and the turns decide between them.
     */
    default List<HoldEvidence> assumptions() {
        return List.of(this);
    }

    /** Independent pieces of evidence together; their open assumptions are combined each with each. */
    static HoldEvidence all(List<HoldEvidence> pieces) {
        List<HoldEvidence> pending = pieces.stream().filter(one -> one != NONE).toList();
        if (pending.isEmpty()) {
            return NONE;
        }
        HoldEvidence together = pending.get(0);
        for (HoldEvidence piece : pending.subList(1, pending.size())) {
            together = new Both(together, piece);
        }
        return together;
    }

    /** Two independent pieces of evidence. */
    record Both(HoldEvidence one, HoldEvidence other) implements HoldEvidence {
        @Override
        public double ofHold(int turn, Orientation hold) {
            return one.ofHold(turn, hold) + other.ofHold(turn, hold);
        }

        @Override
        public double ofRotation(int beforeTurn, Orientation rotation) {
            return one.ofRotation(beforeTurn, rotation) + other.ofRotation(beforeTurn, rotation);
        }

        @Override
        public OptionalInt pace(int beforeTurn) {
            OptionalInt first = one.pace(beforeTurn);
            return first.isPresent() ? first : other.pace(beforeTurn);
        }

        @Override
        public boolean mayBeOneMove(int turn) {
            return one.mayBeOneMove(turn) && other.mayBeOneMove(turn);
        }

        @Override
        public List<HoldEvidence> assumptions() {
            List<HoldEvidence> combined = new ArrayList<>();
            for (HoldEvidence first : one.assumptions()) {
                for (HoldEvidence second : other.assumptions()) {
                    combined.add(new Both(first, second));
                }
            }
            return combined;
        }
    }
}
