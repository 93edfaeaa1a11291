package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.madeup.MadeUpCube;
import fermata.decoder.stream.RawFrame;
import fermata.decoder.stream.StreamDecoder;
import fermata.decoder.stream.StreamEvent;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.List;

/**
 * What came of one made-up cube.
 *
 * @param cube it was
 * @param finding of its drill
 * @param wrong what is wrong with the evening as read by a profile that was called sound; empty if nothing
 */
record FindingRun(MadeUpCube cube, Finding finding, List<String> wrong) {
    static FindingRun of(MadeUpCube cube) {
        Finding finding = ProfileFinder.find(cube.drill());
        List<String> wrong = new ArrayList<>();
        if (finding instanceof Finding.Sound sound) {
            readEvenly(cube, sound.profile(), wrong);
            readWithLosses(cube, sound.profile(), wrong);
        }
        return new FindingRun(cube, finding, wrong);
    }

    boolean isSound() {
        return finding instanceof Finding.Sound;
    }

    /** Of an evening of which nothing was lost every turn must be there. */
    private static void readEvenly(MadeUpCube cube, StreamProfile profile, List<String> wrong) {
        List<StreamEvent> events = read(profile, cube.evenly());
        if (!turns(events).equals(cube.turned())) {
            wrong.add("evenly: " + turns(events).size() + " turns of "
                    + cube.turned().size());
        }
        long gaps = gaps(events);
        if (gaps > 0) {
            wrong.add("evenly: " + gaps + " gaps where nothing was lost");
        }
    }

    /** With losses, what is there must be in order, and no more may be missing than was lost. */
    private static void readWithLosses(MadeUpCube cube, StreamProfile profile, List<String> wrong) {
        List<StreamEvent> events = read(profile, cube.evening());
        List<Turn> read = turns(events);
        int at = 0;
        for (Turn turn : read) {
            while (at < cube.turned().size() && !cube.turned().get(at).equals(turn)) {
                at++;
            }
            at++;
        }
        if (at > cube.turned().size()) {
            wrong.add("with losses: a turn that was not made");
        }
        int missing = cube.turned().size() - read.size();
        if (missing > cube.lostTurns() || gaps(events) > cube.lostTurns()) {
            wrong.add("with losses: " + missing + " turns missing and " + gaps(events) + " gaps, lost were "
                    + cube.lostTurns());
        }
    }

    private static List<StreamEvent> read(StreamProfile profile, List<RawFrame> frames) {
        return new StreamDecoder(profile).accept(frames);
    }

    private static List<Turn> turns(List<StreamEvent> events) {
        return events.stream()
                .filter(StreamEvent.TurnSensed.class::isInstance)
                .map(e -> ((StreamEvent.TurnSensed) e).turn())
                .toList();
    }

    private static long gaps(List<StreamEvent> events) {
        return events.stream().filter(StreamEvent.TurnsLost.class::isInstance).count();
    }
}
