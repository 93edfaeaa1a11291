package fermata.rehearsal.truth;

import java.util.List;
import java.util.Objects;

/**
 * An evening of practice from a solved cube: what the sensors felt, and the truth beside it.
 *
 * @param cuber the character's name
 * @param hand the hand that solved
 * @param turns every turn, in the core frame
 * @param attempts the truth of every attempt, in order
 * @param others the turning between attempts that belongs to none
 */
public record Evening(
        String cuber, CuberHand hand, List<TimedTurn> turns, List<AttemptTruth> attempts, List<OtherTruth> others) {
    public Evening {
        Objects.requireNonNull(cuber, "cuber");
        Objects.requireNonNull(hand, "hand");
        turns = List.copyOf(turns);
        attempts = List.copyOf(attempts);
        others = List.copyOf(others);
    }
}
