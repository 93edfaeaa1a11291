package fermata.decoder.stream.profile;

import fermata.decoder.stream.profile.FrameLayout.Clock;
import java.util.Collection;
import java.util.Optional;

/** Frames of one device share one sequence and one clock: their widths and ticks must agree. */
final class ProfileAgreement {
    private ProfileAgreement() {}

    static void check(JsonSpot framesSpot, Collection<FrameLayout> layouts) {
        Optional<FrameLayout> withSequence =
                layouts.stream().filter(l -> sequence(l).isPresent()).findFirst();
        Optional<FrameLayout> withClock =
                layouts.stream().filter(l -> clock(l).isPresent()).findFirst();
        Optional<FrameLayout.Turns> firstTurns = layouts.stream()
                .filter(FrameLayout.Turns.class::isInstance)
                .map(FrameLayout.Turns.class::cast)
                .findFirst();
        for (FrameLayout layout : layouts) {
            JsonSpot spot = framesSpot.member(layout.envelope().name(), "a frame");
            if (layout instanceof FrameLayout.Turns turns && firstTurns.isPresent()) {
                FrameLayout.Turns first = firstTurns.get();
                if (turns.sequence().isPresent() != first.sequence().isPresent()
                        || turns.clock().isPresent() != first.clock().isPresent()) {
                    spot.expected("a sequence and a clock if, and only if, frame "
                            + first.envelope().name() + " has them");
                }
            }
            sequence(layout).ifPresent(field -> {
                FrameLayout first = withSequence.orElseThrow();
                int width = sequence(first).orElseThrow().widthBits();
                if (field.widthBits() != width) {
                    spot.optional("sequence")
                            .orElse(spot)
                            .expected(width + " bits, as in frame "
                                    + first.envelope().name());
                }
            });
            clock(layout).ifPresent(own -> {
                FrameLayout first = withClock.orElseThrow();
                Clock other = clock(first).orElseThrow();
                if (own.field().widthBits() != other.field().widthBits() || own.tickMicros() != other.tickMicros()) {
                    spot.optional("clock")
                            .orElse(spot)
                            .expected(other.field().widthBits() + " bits and tickMicros " + other.tickMicros()
                                    + ", as in frame " + first.envelope().name());
                }
            });
        }
    }

    private static Optional<BitField> sequence(FrameLayout layout) {
        if (layout instanceof FrameLayout.Turns turns) {
            return turns.sequence();
        }
        return layout instanceof FrameLayout.State state ? state.sequence() : Optional.empty();
    }

    private static Optional<Clock> clock(FrameLayout layout) {
        if (layout instanceof FrameLayout.Turns turns) {
            return turns.clock();
        }
        return layout instanceof FrameLayout.State state ? state.clock() : Optional.empty();
    }
}
