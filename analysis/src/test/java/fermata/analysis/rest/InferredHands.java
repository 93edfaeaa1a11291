package fermata.analysis.rest;

import fermata.analysis.event.Hand;
import fermata.analysis.event.OwnTimes;
import fermata.analysis.event.OwnTimes.Taken;
import fermata.analysis.hand.Habits;
import fermata.analysis.hand.HandReader;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldInference;
import fermata.analysis.hold.HoldModel;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rehearsal.CuberStyle;

/** What the hand did as nights read it: inferred from turns and times, nothing of the truth but which hand it was. */
record InferredHands(HandReader reader) implements RestScore.HandTeller {
    InferredHands(OwnTimes own) {
        this(new HandReader(new HoldInference(HoldModel.shipped())).timed(own));
    }

    /** What a drill, each exercise done eight times, would teach of a made-up solver. */
    static OwnTimes drill(CuberStyle style) {
        long fluent = Math.round(style.pace().adjacentMicros());
        return new OwnTimes(
                new Taken(120, fluent),
                new Taken(24, fluent + style.pauses().regripMicros()),
                new Taken(16, fluent + style.pauses().rotationMicros()),
                Taken.NEVER);
    }

    @Override
    public HandFacts of(Performed solve, Rhythm yesterday) {
        Hand hand = solve.facts().hand();
        SolveRecord record = solve.record();
        HoldEvidence rhythm = yesterday.beats().beats() == 0
                ? HoldEvidence.NONE
                : RotationEvidence.of(record, hand, yesterday.beats());
        return HandFacts.of(reader.read(record, Habits.NONE, rhythm).orElseThrow(), hand);
    }
}
