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
        Optional<FrameLayout> withTurns =
                layouts.stream().filter(l -> l instanceof FrameLayout.Turns).findFirst();
        for (FrameLayout layout : layouts) {
            JsonSpot spot = framesSpot.member(layout.envelope().name(), "a frame");
            if (layout instanceof FrameLayout.Turns) {
                checkPresence(spot, layout, withTurns.orElseThrow());
            }
            sequence(layout).ifPresent(own -> checkSequence(spot, own, withSequence.orElseThrow()));
            clock(layout).ifPresent(own -> checkClock(spot, own, withClock.orElseThrow()));
        }
    }

    private static void checkPresence(JsonSpot spot, FrameLayout layout, FrameLayout first) {
        if (sequence(layout).isPresent() != sequence(first).isPresent()
                || clock(layout).isPresent() != clock(first).isPresent()) {
            spot.expected("a sequence and a clock if, and only if, frame "
                    + first.envelope().name() + " has them");
        }
    }

    private static void checkSequence(JsonSpot spot, BitField own, FrameLayout first) {
        int widthBits = sequence(first).orElseThrow().widthBits();
        if (own.widthBits() != widthBits) {
            spot.member("sequence", "a sequence")
                    .expected(
                            widthBits + " bits, as in frame " + first.envelope().name());
        }
    }

    private static void checkClock(JsonSpot spot, Clock own, FrameLayout first) {
        Clock other = clock(first).orElseThrow();
        if (own.field().widthBits() != other.field().widthBits() || own.tickMicros() != other.tickMicros()) {
            spot.member("clock", "a clock")
                    .expected(other.field().widthBits() + " bits and tickMicros " + other.tickMicros()
                            + ", as in frame " + first.envelope().name());
        }
    }

    private static Optional<BitField> sequence(FrameLayout layout) {
        return layout.fold(
                FrameLayout.Turns::sequence,
                FrameLayout.State::sequence,
                attitude -> Optional.empty(),
                battery -> Optional.empty(),
                other -> Optional.empty());
    }

    private static Optional<Clock> clock(FrameLayout layout) {
        return layout.fold(
                FrameLayout.Turns::clock,
                FrameLayout.State::clock,
                FrameLayout.Attitude::clock,
                battery -> Optional.empty(),
                other -> Optional.empty());
    }
}
