package fermata.daemon.bluetooth;

import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.profile.StreamProfile.KeepAlive;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * Keeps watch over a link that delivers: keeps the device awake, and asks whether it is there when it says nothing.
 * Owned by the central's thread.
 *
 * <p>A device that was turned a moment ago and falls silent is asked soon, because its subscription may have died under
 * a link that looks well; one that stays silent is asked ever more rarely, because a read costs its battery. Where it
 * is moved, which a motion sensor tells, it is asked soon again.
 */
final class LinkVigil {
    /**
     * Pauses before the first questions: the second one tells whether the cube was turned since the first without a
     * word. With the time that a turn may be late and a reconnect takes, turning is heard again within half a minute.
     */
    private static final List<Duration> FIRST_QUESTIONS = List.of(Duration.ofSeconds(15), Duration.ofSeconds(7));
    /** The pause after those; it doubles with each further one. */
    private static final Duration LATER_QUESTIONS = Duration.ofSeconds(20);

    private final LinkSession session;
    private final CaptureTarget target;
    private final CentralSettings settings;
    private final LinkWatch watch;
    private final MonotonicClock clock;
    private final List<Long> keepAliveDue = new ArrayList<>();

    private long hostDue;
    private long quietSince;
    private long askedAt;
    private int questions;

    /** Begins at once. */
    LinkVigil(
            LinkSession session,
            CaptureTarget target,
            CentralSettings settings,
            LinkWatch watch,
            MonotonicClock clock) {
        this.session = session;
        this.target = target;
        this.settings = settings;
        this.watch = watch;
        this.clock = clock;
        long now = clock.nanos();
        target.keepAlive()
                .forEach(each -> keepAliveDue.add(
                        now + Duration.ofMillis(each.periodMillis()).toNanos()));
        hostDue = now + HostCheck.EVERY.toNanos();
        quietSince = now;
        askedAt = now;
    }

    /** How long silence is believed, by how often the device was asked since it said something. */
    private Duration patience() {
        int later = questions - FIRST_QUESTIONS.size();
        // Twenty doublings are more than any limit.
        Duration patience =
                later < 0 ? FIRST_QUESTIONS.get(questions) : LATER_QUESTIONS.multipliedBy(1L << Math.min(later, 20));
        return patience.compareTo(settings.silenceLimit()) < 0 ? patience : settings.silenceLimit();
    }

    /** Returns when the link is lost or the capture stopped; throws when the device no longer answers. */
    void keep() {
        while (!watch.isOver()) {
            keepAwake(clock.nanos());
            if (clock.nanos() - hostDue >= 0) {
                session.checkHost();
                hostDue = clock.nanos() + HostCheck.EVERY.toNanos();
            }
            askIfQuiet();
            watch.pause(watch::isOver, Duration.ofNanos(Math.max(0, nextDue() - clock.nanos())));
        }
    }

    private void keepAwake(long now) {
        for (int i = 0; i < keepAliveDue.size(); i++) {
            KeepAlive each = target.keepAlive().get(i);
            if (now - keepAliveDue.get(i) >= 0) {
                session.write(each.write());
                keepAliveDue.set(i, now + Duration.ofMillis(each.periodMillis()).toNanos());
            }
        }
    }

    private void askIfQuiet() {
        boolean turned = session.lastTurnNanos() - quietSince > 0;
        boolean moved = session.lastOtherNanos() - askedAt > 0;
        if (turned || moved) {
            questions = 0;
        }
        if (turned) {
            quietSince = session.lastTurnNanos();
        }
        if (!watch.isOver() && clock.nanos() - quietSince >= patience().toNanos()) {
            session.provePresence();
            askedAt = clock.nanos();
            quietSince = askedAt;
            questions++;
        }
    }

    private long nextDue() {
        long next = Math.min(hostDue, quietSince + patience().toNanos());
        for (long due : keepAliveDue) {
            next = Math.min(next, due);
        }
        return next;
    }
}
