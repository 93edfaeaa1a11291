package fermata.decoder.finding;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.madeup.MadeUpCube;
import fermata.decoder.stream.RawFrame;
import fermata.decoder.stream.StreamDecoder;
import fermata.decoder.stream.StreamEvent;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.List;

/**
 * What came of one made-up cube.
 *
 * @param cube it was
 * @param finding of its drill
 * @param wrong what is wrong with the evening as read by a profile that was called sound; empty if nothing
 * @param findingNanos how long the finding took
 */
record FindingRun(MadeUpCube cube, Finding finding, List<String> wrong, long findingNanos) {
    static FindingRun of(MadeUpCube cube) {
        long began = System.nanoTime();
        Finding finding = ProfileFinder.find(cube.drill());
        long nanos = System.nanoTime() - began;
        List<String> wrong = new ArrayList<>();
        if (finding instanceof Finding.Sound sound) {
            readEvenly(cube, sound.profile(), wrong);
            readWithLosses(cube, sound.profile(), wrong);
        }
        return new FindingRun(cube, finding, wrong, nanos);
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
        long gaps = gaps(events);
        int missing = cube.turned().size() - read.size();
        if (cube.layouts().get(0) instanceof FrameLayout.State) {
            // Between two states a lost quarter and its neighbour are one half turn: the same turning, told shorter.
            if (gaps == 0 && !comesTo(read, cube.turned())) {
                wrong.add("with losses: turns that come to something else");
            }
        } else if (!isPart(read, cube.turned())) {
            wrong.add("with losses: a turn that was not made");
        }
        if (missing > cube.lostTurns() || gaps > cube.lostTurns()) {
            wrong.add(
                    "with losses: " + missing + " turns missing and " + gaps + " gaps, lost were " + cube.lostTurns());
        }
    }

    /** What was lost at the very end, nothing that follows can show. */
    private static boolean comesTo(List<Turn> read, List<Turn> turned) {
        for (int unseen = 0; unseen <= 2; unseen++) {
            if (merged(read).equals(merged(turned.subList(0, turned.size() - unseen)))) {
                return true;
            }
        }
        return false;
    }

    private static boolean isPart(List<Turn> part, List<Turn> whole) {
        int at = 0;
        for (Turn turn : part) {
            while (at < whole.size() && !whole.get(at).equals(turn)) {
                at++;
            }
            at++;
        }
        return at <= whole.size();
    }

    /** Turns of one axis in a row as what they come to, face by face. */
    private static List<Turn> merged(List<Turn> turns) {
        List<Turn> merged = new ArrayList<>();
        int at = 0;
        while (at < turns.size()) {
            Turn first = turns.get(at);
            int[] quarters = new int[Face.values().length];
            while (at < turns.size() && turns.get(at).commutesWith(first)) {
                quarters[turns.get(at).face().ordinal()] += turns.get(at).quarters();
                at++;
            }
            for (Face face : Face.values()) {
                if (quarters[face.ordinal()] % 4 != 0) {
                    merged.add(Turn.of(face, quarters[face.ordinal()]));
                }
            }
        }
        return merged;
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
