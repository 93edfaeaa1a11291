package fermata.rehearsal;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Span;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.orientation.Quaternion;
import fermata.rehearsal.character.SensorStyle;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.MoveTruth;
import fermata.rehearsal.truth.SolveTruth;
import fermata.rehearsal.truth.TimedOrientation;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * A motion sensor in a virtual cuber's cube: how the core lies in the course of each solve, as a poor sensor tells it.
 *
 * <p>The cube is carried from hold to hold in the time that the tape leaves for it, a wide turn or slice carries the
 * core along; some holds are reached in part only. Where north is at first is drawn; then it walks, drifts and is
 * pulled along by each rotation. Everything comes from the generator handed in. One use; not thread-safe.
 */
public final class MotionSensor {
    private static final double CARRIED_MICROS = 240_000;
    private static final long TURN_MICROS = 120_000;
    private static final long MARGIN_MICROS = 700_000;

    private final SensorStyle style;
    private final RandomGenerator random;
    private final List<TimedOrientation> samples = new ArrayList<>();
    private final Quaternion lean;
    private double north;

    /** On its way to {@code target} from {@code fromMicros} to {@code toMicros}. */
    private record Carry(long fromMicros, long toMicros, Quaternion target) {}

    private MotionSensor(SensorStyle style, RandomGenerator random) {
        this.style = style;
        this.random = random;
        this.north = random.nextDouble() * 2 * Math.PI;
        this.lean = tilt(style.leanDegrees() * random.nextDouble());
    }

    /** What the sensor tells of every attempt of an evening. */
    public static List<TimedOrientation> of(Evening evening, SensorStyle style, RandomGenerator random) {
        MotionSensor sensor = new MotionSensor(style, random);
        for (AttemptTruth attempt : evening.attempts()) {
            if (attempt.solve().turns().to() > attempt.solve().turns().from()) {
                sensor.record(evening, attempt.solve());
            }
        }
        return List.copyOf(sensor.samples);
    }

    /** About a level axis drawn by chance. */
    private Quaternion tilt(double degrees) {
        double direction = random.nextDouble() * 2 * Math.PI;
        return Quaternion.about(Math.cos(direction), 0, Math.sin(direction), Math.toRadians(degrees));
    }

    private void record(Evening evening, SolveTruth solve) {
        Quaternion start = exact(Orientation.ofLetters(solve.hold()));
        List<Carry> carries = carries(evening, solve);
        long first = evening.turns().get(solve.turns().from()).atMicros() - MARGIN_MICROS;
        long last = evening.turns().get(solve.turns().to() - 1).atMicros() + MARGIN_MICROS;
        double phase = random.nextDouble() * 2 * Math.PI;
        Quaternion before = start;
        for (long at = first; at <= last; at += style.everyMicros()) {
            Quaternion held = held(start, carries, at);
            double seconds = style.everyMicros() / 1e6;
            double carried = held.after(before.inverse()).yaw();
            north += Math.toRadians(
                    style.driftDegrees() * Math.sqrt(seconds) * random.nextGaussian() + style.biasDegrees() * seconds);
            north += style.scaleError() * carried;
            before = held;
            double sway = style.swayDegrees() * Math.sin(phase + at / 1e6 * 1.3);
            Quaternion swayed = Quaternion.about(1, 0, 0.5, Math.toRadians(sway))
                    .after(lean)
                    .after(held);
            if (random.nextDouble() >= style.lostShare()) {
                Quaternion seen = Quaternion.about(0, 1, 0, north).after(swayed);
                samples.add(new TimedOrientation(Math.max(0, at), noise().after(seen)));
            }
        }
    }

    private Quaternion noise() {
        double x = random.nextGaussian();
        double y = random.nextGaussian();
        double z = random.nextGaussian();
        return Quaternion.about(x, y, z, Math.toRadians(style.noiseDegrees()) * Math.sqrt(x * x + y * y + z * z));
    }

    private static Quaternion held(Quaternion start, List<Carry> carries, long at) {
        Quaternion held = start;
        for (Carry carry : carries) {
            if (at < carry.fromMicros()) {
                return held;
            }
            double share = at >= carry.toMicros()
                    ? 1
                    : (at - carry.fromMicros()) / (double) (carry.toMicros() - carry.fromMicros());
            // Speeds up and slows down.
            held = held.towards(carry.target(), share * share * (3 - 2 * share));
        }
        return held;
    }

    private List<Carry> carries(Evening evening, SolveTruth solve) {
        List<Carry> carries = new ArrayList<>();
        Orientation hold = Orientation.ofLetters(solve.hold());
        for (MoveTruth truth : solve.moves()) {
            Move move = Sequence.parse(truth.move()).moves().get(0);
            Orientation next = hold.then(move.rotation());
            if (next != hold) {
                Quaternion target = partly(exact(hold), exact(next));
                Span turns = truth.turns();
                carries.add(
                        truth.isRotation()
                                ? between(evening, solve, turns.from(), target)
                                : during(evening, turns, target));
            }
            hold = next;
        }
        return carries;
    }

    /** Sometimes a rotation stays short, or the cube leans to a side until it is turned next. */
    private Quaternion partly(Quaternion from, Quaternion target) {
        if (random.nextDouble() >= style.partialShare()) {
            return target;
        }
        double degrees = style.partialDegrees() * random.nextDouble();
        return random.nextBoolean()
                ? target.towards(from, Math.toRadians(degrees) / from.angleTo(target))
                : tilt(degrees).after(target);
    }

    /** A rotation has the time between two turns; before the first and after the last there is enough. */
    private Carry between(Evening evening, SolveTruth solve, int next, Quaternion target) {
        long after = next < solve.turns().to()
                ? evening.turns().get(next).atMicros()
                : evening.turns().get(next - 1).atMicros() + MARGIN_MICROS;
        long before =
                next > solve.turns().from() ? evening.turns().get(next - 1).atMicros() : after - MARGIN_MICROS;
        long gap = after - before;
        long end = after - Math.round(gap * (0.05 + 0.2 * random.nextDouble()));
        long duration = Math.round(CARRIED_MICROS * (0.7 + 0.6 * random.nextDouble()));
        return new Carry(Math.max(before + gap / 50, end - duration), Math.max(before + gap / 50 + 1, end), target);
    }

    /** The sensor of a turn says so a little before the layer has come to rest. */
    private static Carry during(Evening evening, Span turns, Quaternion target) {
        long first = evening.turns().get(turns.from()).atMicros();
        long last = evening.turns().get(turns.to() - 1).atMicros();
        return new Carry(first - TURN_MICROS, last + TURN_MICROS / 4, target);
    }

    /** The core's axes R, U and F go to where the solver sees those centres. */
    private static Quaternion exact(Orientation hold) {
        return Quaternion.takingAxesTo(
                Quaternion.axisOutOf(hold.handAt(Face.R)),
                Quaternion.axisOutOf(hold.handAt(Face.U)),
                Quaternion.axisOutOf(hold.handAt(Face.F)));
    }
}
