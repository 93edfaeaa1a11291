package fermata.decoder.finding;

import fermata.decoder.finding.HistorySearch.Chain;
import fermata.decoder.finding.HistoryTimeSearch.TimeFound;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.Checksum;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.FrameLayout.Clock;
import fermata.decoder.stream.profile.FrameLayout.Envelope;
import fermata.decoder.stream.profile.FrameLayout.History;
import fermata.decoder.stream.profile.FrameLayout.HistoryTime;
import fermata.decoder.stream.profile.TurnCode;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;

/**
 * Finds all fields of a frame whose turn code is known. Each takes its bits away from those after it, the surest first:
 * the check, the code, the sequence, the history, the clock, the times, the tallies. One use.
 */
final class TurnsSearch {
    /** A link hands frames over every 7.5 ms at best: finer than about that no tick is sure. */
    private static final double SURE_TICK_MICROS = 10_500;

    private static final int LEAST_CLOCK_BITS = 6;

    private final FrameGroup group;
    private CodeFound code;
    private final PromptedRecording recording;
    private final List<Heard> frames;
    private final Optional<Checksum> check;
    private final BitSet taken = new BitSet();

    private Optional<CounterFound> sequence = Optional.empty();
    private Optional<ClockFound> clock = Optional.empty();
    private Optional<BitField> fresh = Optional.empty();
    private Optional<History> history = Optional.empty();

    TurnsSearch(FrameGroup group, CodeFound code, Optional<Checksum> check, PromptedRecording recording) {
        this.check = check;
        this.group = group;
        this.code = code;
        this.recording = recording;
        this.frames = group.distinct();
    }

    TurnsFound find() {
        group.tag().ifPresent(tag -> take(tag.field()));
        taken.or(BitPlace.covered(code.code()));
        check.ifPresent(c -> take(c.field()));
        sequence = new SequenceSearch(group.length(), frames, taken).find();
        sequence.ifPresent(s -> take(s.field()));
        Steps steps = Steps.of(frames, sequence, recording);
        Optional<List<Chain>> chains = findChains(steps);
        chains.ifPresent(this::takeEntries);
        clock = new ClockSearch(group.length(), frames, taken).find();
        clock.ifPresent(c -> take(c.field()));
        chains.ifPresent(found -> findHistory(found, steps));
        if (sequence.isEmpty()) {
            clock = clock.map(TurnsSearch::withoutDoubtfulBits);
        }
        Envelope envelope = new Envelope(
                "turns",
                group.length(),
                group.length(),
                group.tag().map(List::of).orElse(List.of()),
                checks());
        FrameLayout.Turns layout = new FrameLayout.Turns(
                envelope,
                sequence.map(CounterFound::field),
                clock.map(c -> new Clock(c.field(), c.tickMicros())),
                fresh,
                code.code(),
                history,
                code.table());
        boolean isUncertain = chains.isPresent() && history.isEmpty() && sequence.isEmpty();
        return new TurnsFound(group, code, layout, isUncertain, new Unexplained(group.length(), frames).ranges(taken));
    }

    /** Within one byte a code reads the same in either order; only its repetitions further on tell which it is. */
    private Optional<List<Chain>> findChains(Steps steps) {
        CodeFound turned = code.inOtherOrder();
        Optional<List<Chain>> own = new HistorySearch(code.code(), frames, steps, group.length(), taken).find();
        Optional<List<Chain>> others = turned.equals(code)
                ? Optional.empty()
                : new HistorySearch(turned.code(), frames, steps, group.length(), taken).find();
        int entries = own.map(c -> c.get(0).entries()).orElse(0);
        if (others.isPresent() && others.get().get(0).entries() > entries) {
            code = turned;
            return others;
        }
        return own;
    }

    /**
     * Bits shorter than the delays of a radio may be noise beside the clock, and then make it go back between two turns
     * of one tick. Where a number orders the turns that harms little; where the clock does, only what is longer counts.
     */
    private static ClockFound withoutDoubtfulBits(ClockFound clock) {
        ClockFound coarse = clock;
        while (coarse.tickMicros() * 2 <= SURE_TICK_MICROS && coarse.field().widthBits() > LEAST_CLOCK_BITS) {
            coarse = coarse.coarser(1);
        }
        return coarse;
    }

    private List<Checksum> checks() {
        return check.map(List::of).orElse(List.of());
    }

    private void take(BitField field) {
        taken.or(BitPlace.covered(field));
    }

    private void takeEntries(List<Chain> chains) {
        for (int back = 1; back <= chains.get(0).entries(); back++) {
            taken.or(BitPlace.covered(codeBack(chains, back)));
        }
    }

    private TurnCode codeBack(List<Chain> chains, int back) {
        List<BitField> parts = new ArrayList<>();
        for (int i = 0; i < chains.size(); i++) {
            Chain chain = chains.get(i);
            parts.add(code.code().parts().get(i).shifted(chain.shiftBits() + (back - 1) * chain.strideBits()));
        }
        return new TurnCode(parts);
    }

    private void findHistory(List<Chain> chains, Steps steps) {
        int entries = chains.get(0).entries();
        int numbers =
                sequence.map(s -> 1 << Math.min(30, s.field().widthBits())).orElse(1 << 30);
        entries = Math.min(entries, numbers / 2 - 2);
        if (entries < 1) {
            return;
        }
        findFresh(chains, entries);
        if (sequence.isEmpty() && fresh.isEmpty()) {
            return;
        }
        Optional<TimeFound> time =
                clock.flatMap(c -> new HistoryTimeSearch(c, frames, steps, group.length(), taken).find());
        time.ifPresent(t -> clock = clock.map(c -> c.coarser(t.below())));
        boolean newestFirst = chains.get(0).strideBits() > 0;
        int stride = Math.abs(chains.get(0).strideBits());
        TurnCode first = codeBack(chains, newestFirst ? 1 : entries);
        int toFirst = newestFirst ? 0 : -stride * (entries - 1);
        HistoryTime historyTime = time.filter(t -> t.field().offsetBits() + toFirst >= 0)
                .map(t -> t.at(toFirst))
                .orElseGet(HistoryTime.None::new);
        takeTimes(historyTime, stride, entries);
        Optional<BitField> count = findCount(entries);
        history = Optional.of(new History(
                stride,
                entries,
                newestFirst,
                count,
                count.isPresent() ? Optional.empty() : findEmpty(chains, entries),
                first,
                historyTime));
    }

    private void takeTimes(HistoryTime time, int stride, int entries) {
        for (int i = 0; i < entries; i++) {
            if (time instanceof HistoryTime.Absolute absolute) {
                take(absolute.field().shifted(i * stride));
            } else if (time instanceof HistoryTime.BeforeNewer before) {
                take(before.field().shifted(i * stride));
            }
        }
    }

    private TallySearch tallies() {
        return new TallySearch(group.length(), frames, taken);
    }

    private void findFresh(List<Chain> chains, int entries) {
        IntUnaryOperator steps = sequence.<IntUnaryOperator>map(s -> i -> i == 0 ? -1 : (int) s.step(i))
                .orElseGet(() -> i -> i == 0 ? -1 : newTurns(chains, entries, i));
        fresh = tallies().find(steps, frames.size() / 25).map(f -> tallies().widened(f, entries + 1));
        fresh.ifPresent(this::take);
    }

    /** By how many turns a frame's list is ahead of that of the frame before; -1 if they have none in common. */
    private int newTurns(List<Chain> chains, int entries, int index) {
        for (int ahead = 1; ahead <= entries; ahead++) {
            boolean agrees = true;
            for (int back = ahead; back <= entries && agrees; back++) {
                agrees = codeAt(chains, back, index) == codeAt(chains, back - ahead, index - 1);
            }
            if (agrees) {
                return ahead;
            }
        }
        return -1;
    }

    private long codeAt(List<Chain> chains, int back, int index) {
        TurnCode at = back == 0 ? code.code() : codeBack(chains, back);
        return at.read(frames.get(index).bytes());
    }

    /** A count shows only if the device started shortly before: then it rises with the first turns. */
    private Optional<BitField> findCount(int entries) {
        for (int before = 0; before <= 1; before++) {
            int[] filled = new int[frames.size()];
            long made = before;
            for (int i = 0; i < filled.length; i++) {
                made += i == 0 ? 0 : sequence.isPresent() ? sequence.get().step(i) : 1;
                filled[i] = (int) Math.min(entries, made);
            }
            Optional<BitField> count = tallies().find(i -> filled[i], 0);
            if (count.isPresent()) {
                take(count.get());
                return count;
            }
        }
        return Optional.empty();
    }

    /** What the unfilled entries of the first frames hold, if it is no turn. */
    private Optional<Long> findEmpty(List<Chain> chains, int entries) {
        long held = codeAt(chains, entries, 0);
        return code.table().containsKey(held) ? Optional.empty() : Optional.of(held);
    }
}
