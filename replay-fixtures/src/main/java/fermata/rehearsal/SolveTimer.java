package fermata.rehearsal;

import fermata.decoder.cube.Turn;
import fermata.rehearsal.character.Chance;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.truth.RegripTruth;
import fermata.rehearsal.truth.RestCause;
import fermata.rehearsal.truth.RestTruth;
import fermata.rehearsal.truth.RhythmTruth;
import java.util.ArrayList;
import java.util.List;

/** Gives the turns of one solve their intervals and keeps what they are made of. */
final class SolveTimer {
    private final CuberStyle style;
    private final Chance chance;
    private final Tape tape;
    private final double slowness;
    private final int first;
    private final List<Long> motorMicros = new ArrayList<>();
    private final List<RestTruth> rests = new ArrayList<>();
    private final List<RegripTruth> regrips = new ArrayList<>();
    private final List<RestTruth> pending = new ArrayList<>();

    /** {@code slowness} is 1 for a fresh hand and grows in the course of an evening. */
    SolveTimer(CuberStyle style, Chance chance, Tape tape, double slowness) {
        this.style = style;
        this.chance = chance;
        this.tape = tape;
        this.slowness = slowness;
        this.first = tape.size();
    }

    /** Something holds up the next turn. Before the first turn nothing does: that time belongs to no solve. */
    void rest(RestCause cause, double medianMicros) {
        if (tape.size() > first) {
            long length = chance.around(medianMicros * slowness, style.pauses().spread());
            pending.add(new RestTruth(tape.size() - 1, length, cause));
        }
    }

    void regrip(RegripTruth.Reason reason) {
        if (tape.size() > first) {
            rest(RestCause.REGRIP, style.pauses().regripMicros());
            regrips.add(new RegripTruth(tape.size(), reason));
        }
    }

    /** The next turn, in the frame of the tape; {@code known} if it continues a sequence known by heart. */
    void turn(Turn core, boolean known) {
        if (tape.size() > first) {
            Turn before = tape.turns().get(tape.size() - 1).turn();
            double factor = slowness * (known ? style.pace().knownFactor() : 1);
            long motor =
                    chance.around(median(before, core) * factor, style.pace().spread());
            motorMicros.add(motor);
            tape.pass(motor);
            pending.forEach(rest -> tape.pass(rest.lengthMicros()));
            rests.addAll(pending);
            pending.clear();
        }
        tape.turn(core);
    }

    /** Rests that no turn came after are forgotten: no interval holds them. */
    RhythmTruth rhythm() {
        return new RhythmTruth(motorMicros, rests, regrips);
    }

    private long median(Turn before, Turn next) {
        if (before.face() == next.face()) {
            return style.pace().sameFaceMicros();
        }
        return before.face() == next.face().opposite()
                ? style.pace().oppositeMicros()
                : style.pace().adjacentMicros();
    }
}
