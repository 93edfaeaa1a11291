package fermata.rehearsal.truth;

import java.util.List;

/**
 * What a solve's intervals are made of: each is its motor part plus the rests after the turn before.
 *
 * @param motorMicros the motor part of every interval, one fewer than the solve has turns
 * @param rests every pause by cause, in order
 * @param regrips every regrip, in order
 */
public record RhythmTruth(List<Long> motorMicros, List<RestTruth> rests, List<RegripTruth> regrips) {
    public RhythmTruth {
        motorMicros = List.copyOf(motorMicros);
        rests = List.copyOf(rests);
        regrips = List.copyOf(regrips);
    }
}
