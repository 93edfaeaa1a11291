package fermata.analysis.rest;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.event.Hand;
import fermata.analysis.event.OwnTimes;
import fermata.analysis.event.OwnTimes.Taken;
import fermata.analysis.hand.HandReader;
import fermata.analysis.hand.HandReading;
import fermata.analysis.hand.MadeTurn;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldHabits;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rhythm.RotationEvidence;
import fermata.rehearsal.character.CuberStyle;
import java.util.List;

/** What the hand did as nights read it: inferred from turns and times, by what is known of the solver. */
record InferredHands(HandReader reader, HoldHabits habits) implements RestScore.HandTeller {
    InferredHands(OwnTimes own) {
        this(new HandReader(new HoldInference(HoldModel.shipped())).timed(own), HoldHabits.NONE);
    }

    /** The same for a solver who typed the last-layer sequences and set the solves of an earlier evening right. */
    static InferredHands taught(CuberStyle style, List<Performed> corrected) {
        SequenceBook typed = SequenceBook.parse(String.join("\n", style.sequences()));
        return new InferredHands(
                new HandReader(new HoldInference(HoldModel.shipped())).knowing(typed),
                HoldHabits.learn(
                        HoldModel.shipped(),
                        corrected.stream().map(InferredHands::example).toList()));
    }

    private static HoldExample example(Performed solve) {
        List<MadeTurn> made = solve.facts().turns().stream()
                .map(turn -> new MadeTurn(turn.move(), turn.hold(), 1))
                .toList();
        return HandReader.example(
                solve.record(),
                new HandReading(
                        made,
                        List.of(),
                        true,
                        solve.facts().turns().stream()
                                .map(HandFacts.AtTurn::odds)
                                .toList()));
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
        return HandFacts.of(reader.read(record, habits, rhythm).orElseThrow(), hand);
    }
}
