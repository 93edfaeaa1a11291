package fermata.daemon.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Map;

/**
 * One solve as {@code show --json} prints it; docs/formats.md says what each member means. Members that are not known
 * are null.
 */
public record SolveView(
        String id,
        String day,
        int number,
        String startedAt,
        String hand,
        String clock,
        String scramble,
        String startFacelets,
        Map<String, String> faceColours,
        boolean solved,
        String outcome,
        boolean setAside,
        Boundary scrambleEnd,
        Long timeUs,
        Long gapUs,
        String method,
        String crossColour,
        List<Turn> turns,
        List<Rotation> rotations,
        List<Regrip> regrips,
        RegripCount regripCount,
        List<Stage> stages,
        List<Rest> rests,
        List<Looking> looking,
        String lookingModel,
        List<Slip> slips,
        List<Gap> gaps,
        Usual usual,
        Holds holds,
        Derived derived) {
    /** How the end of the scramble is known: {@code announced_state}, {@code announced_words}, {@code inferred}. */
    public record Boundary(String known, double probability) {}

    /** A turn in the core frame, and what the hand did; null where that is untold. */
    public record Turn(int index, Long atUs, String core, String source, String hand, String hold, Double p) {}

    /** A rotation of the whole cube between turns. */
    public record Rotation(int beforeTurn, String rotation, double p) {}

    /** How probable it is that the hand took hold anew before a turn. */
    public record Regrip(int beforeTurn, double p) {}

    /** How many regrips are expected, and the central 95 % of how many there were; null where nothing is told. */
    public record RegripCount(Double expected, Integer low, Integer high) {}

    /**
     * How it is known what the hand did: {@code inferred}, {@code stated} or {@code untold}; by which weights, and how
     * many of the solver's corrections. {@code inferred} is null unless the solver said it: then it is what had been
     * inferred without any word of the solver.
     */
    public record Holds(String known, String weights, int corrections, Reading inferred) {}

    /** What the hand did by another reading: for every turn its members of that name, and the rotations. */
    public record Reading(List<Made> turns, List<Rotation> rotations) {}

    /** One turn of such a reading. */
    public record Made(String hand, String hold, double p) {}

    /** A stage, or a part of one. */
    public record Stage(
            String name,
            @JsonProperty("case") String caseName,
            List<String> faces,
            int from,
            int to,
            Long startUs,
            Long endUs,
            List<Stage> parts) {}

    /**
     * A likely rest; {@code fermata} is null where it is not judged, and {@code unjudged} says why: {@code opening},
     * {@code last_layer}, {@code block}, {@code no_stages}.
     */
    public record Rest(
            int afterTurn,
            long startUs,
            long lengthUs,
            long excessUs,
            double p,
            boolean called,
            Boolean fermata,
            String unjudged,
            List<Cause> causes) {}

    /** A cause, how likely it took part, and its share of the excess. */
    public record Cause(String cause, double p, long shareUs) {}

    /**
     * What could be known before a pair or block: {@code fermata}, {@code tilt_hint}, {@code nothing_known} or
     * {@code in_time}. Null are {@code knownUs} if it was not in view in time, {@code tilt} if a tilt adds nothing,
     * {@code sooner} if nothing was in view sooner.
     */
    public record Looking(
            String stage,
            List<String> colours,
            String finding,
            double p,
            long neededUs,
            Long knownUs,
            long restUs,
            List<String> hidden,
            Tilt tilt,
            Sooner sooner,
            String sentence) {}

    /** A tilt ({@code side} or {@code back}), and since when it would have shown enough. */
    public record Tilt(String which, long knownUs) {}

    /** Another pair, and since when it was in view. */
    public record Sooner(List<String> colours, long knownUs) {}

    /** Turns that were taken back. */
    public record Slip(int from, int to) {}

    /** The middle half of the solver's earlier solves of the same series; null while there are too few. */
    public record Usual(int nights, int solves, List<UsualStage> stages, long timeLowUs, long timeHighUs) {}

    /** The middle half of a stage's times. */
    public record UsualStage(String name, long lowUs, long highUs) {}

    /** Turns that were lost; {@code lost} is null if nobody knows how many. */
    public record Gap(int afterTurn, Long startUs, Long endUs, Integer lost) {}

    /** What derived it: the code, the night's frozen parameters, and those of the night before, for the holds. */
    public record Derived(String code, String snapshot, String beganFrom) {}

    /** The same with its place among the day's, and what is usual. */
    public SolveView placed(int newNumber, Usual newUsual) {
        return new SolveView(
                id,
                day,
                newNumber,
                startedAt,
                hand,
                clock,
                scramble,
                startFacelets,
                faceColours,
                solved,
                outcome,
                setAside,
                scrambleEnd,
                timeUs,
                gapUs,
                method,
                crossColour,
                turns,
                rotations,
                regrips,
                regripCount,
                stages,
                rests,
                looking,
                lookingModel,
                slips,
                gaps,
                newUsual,
                holds,
                derived);
    }
}
