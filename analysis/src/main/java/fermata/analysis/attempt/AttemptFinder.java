package fermata.analysis.attempt;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.record.Boundary;
import fermata.analysis.record.ScrambleRecord;
import fermata.analysis.record.Segment;
import fermata.analysis.track.CubeTracker;
import fermata.decoder.cube.Span;
import fermata.decoder.notation.NotationException;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Cuts a capture into attempts and other turning.
 *
 * <p>No attempt crosses the announcement of a scramble or the beginning or end of practice. An attempt begins after its
 * scramble and ends at the first solved state, or with the last turn before it is cut off: then it was abandoned, or,
 * if turns were lost and neither the cube nor {@link CubeTracker} tells what it was then, nobody can know. A tracked
 * state that meets the reference after a loss is believed: by chance it would once in 10^19. What follows a solved
 * state belongs to no attempt until the next scramble, so a fidget afterwards does no harm.
 *
 * <p>Cost: linear in the turns but for {@link BoundaryModel}, whose cost between two solved states is bounded. Pure.
 */
public final class AttemptFinder {
    private final CaptureLog log;
    private final Track track;
    private final AttemptEnd closing;
    private final List<Segment> segments = new ArrayList<>();

    private AttemptFinder(CaptureLog log, Track track) {
        this.log = log;
        this.track = track;
        this.closing = new AttemptEnd(log, track);
    }

    /** All segments of a capture, in order; together they hold every turn once. */
    public static List<Segment> find(CaptureLog log) {
        return find(log, new Track(log));
    }

    /** The same by a track of that very log. */
    static List<Segment> find(CaptureLog log, Track track) {
        return new AttemptFinder(log, track).find();
    }

    private List<Segment> find() {
        int from = 0;
        int next = 0;
        for (int separator : track.separators()) {
            zone(from, separator, next);
            from = separator;
            while (next < track.announced().size()
                    && track.announced().get(next).position() < separator) {
                next++;
            }
        }
        zone(from, track.end(), next);
        return List.copyOf(segments);
    }

    /** Turns between two separators; the last scramble announced at their beginning is the one that counts. */
    private void zone(int from, int to, int next) {
        Track.Announced here = null;
        for (int index = next; index < track.announced().size(); index++) {
            if (track.announced().get(index).position() == from) {
                here = track.announced().get(index);
            }
        }
        if (from == to) {
            return;
        }
        Optional<AnnouncedBoundary> found = here == null ? Optional.empty() : locate(here, from, to);
        String words = here == null ? "" : here.words();
        if (found.isEmpty() || found.get().to() == to) {
            unannounced(from, to, words);
            return;
        }
        AnnouncedBoundary boundary = found.get();
        other(from, boundary.from());
        int solved = firstSolved(boundary.to() + 1, to);
        int end = BoundaryModel.findWithin(track, boundary.to(), solved)
                .map(BoundaryModel.Found::from)
                .orElse(solved);
        attempt(boundary, words, end);
        unannounced(end, to, "");
    }

    private Optional<AnnouncedBoundary> locate(Track.Announced announced, int from, int to) {
        try {
            return AnnouncedBoundary.find(track, Sequence.parse(announced.words()), from, to);
        } catch (NotationException unreadable) {
            // The words stay in the record as they were said; a boundary they cannot give.
            return Optional.empty();
        }
    }

    private void attempt(AnnouncedBoundary boundary, String words, int end) {
        double probability = boundary.boundary() == Boundary.ANNOUNCED_STATE ? 1 : AttemptEnd.WORDS_PROBABILITY;
        segments.add(closing.attempt(
                new ScrambleRecord(
                        words,
                        boundary.boundary(),
                        probability,
                        boundary.hold(),
                        new Span(boundary.from(), boundary.to()),
                        track.startOfAttempt(boundary.to(), end)),
                end));
    }

    private void unannounced(int from, int to, String words) {
        int begun = from;
        while (begun < to) {
            int end = firstSolved(begun + 1, to);
            infer(begun, end, words);
            begun = end;
        }
    }

    private void infer(int from, int to, String words) {
        Optional<BoundaryModel.Found> found = track.isTimed() ? BoundaryModel.find(track, from, to) : Optional.empty();
        if (found.isEmpty()) {
            other(from, to);
            return;
        }
        BoundaryModel.Found boundary = found.get();
        if (boundary.from() > from) {
            infer(from, boundary.from(), words);
        }
        segments.add(closing.attempt(
                new ScrambleRecord(
                        words,
                        Boundary.INFERRED,
                        boundary.probability(),
                        Orientation.IDENTITY,
                        new Span(boundary.from(), boundary.to()),
                        track.startOfAttempt(boundary.to(), to)),
                to));
    }

    private int firstSolved(int from, int to) {
        int position = from;
        while (position < to && !track.isSolvedAt(position)) {
            position++;
        }
        return Math.min(position, to);
    }

    private void other(int from, int to) {
        if (from == to) {
            return;
        }
        int last = segments.size() - 1;
        if (last >= 0
                && segments.get(last) instanceof Segment.OtherTurning before
                && before.span().to() == from) {
            segments.set(last, new Segment.OtherTurning(new Span(before.span().from(), to)));
        } else {
            segments.add(new Segment.OtherTurning(new Span(from, to)));
        }
    }
}
