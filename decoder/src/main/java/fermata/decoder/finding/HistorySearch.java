package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.TurnCode;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Finds where a frame repeats the turns before the newest: fields that hold what the code was one frame ago, two frames
 * ago and so on, at even distances. Cost: a read of each place for each frame and each of {@value #DEEPEST} turns back.
 */
final class HistorySearch {
    static final int DEEPEST = 16;

    /** Fewer frames than these agree by chance too easily with a field of one bit. */
    private static final int LEAST_FRAMES = 20;

    /** Entries may stand elsewhere until a device that just started has filled them. */
    private static final double LEAST_AGREEING = 0.9;

    /** Entries at even distances: entry {@code k} turns back stands {@code k - 1} strides after the first. */
    record Chain(int shiftBits, int strideBits, int entries) {}

    private final TurnCode code;
    private final List<Heard> frames;
    private final Steps steps;
    private final int frameBits;
    private final BitSet taken;

    HistorySearch(TurnCode code, List<Heard> distinct, Steps steps, int frameBytes, BitSet taken) {
        this.code = code;
        this.frames = distinct;
        this.steps = steps;
        this.frameBits = frameBytes * 8;
        this.taken = taken;
    }

    /** Where the entries stand: for each part of the code a chain, all of one stride and length. */
    Optional<List<Chain>> find() {
        List<Chain> longest = List.of();
        for (Chain first : chains(code.parts().get(0))) {
            List<Chain> together = together(first);
            boolean isLonger = !together.isEmpty()
                    && (longest.isEmpty()
                            || together.get(0).entries() > longest.get(0).entries());
            longest = isLonger ? together : longest;
        }
        return longest.isEmpty() ? Optional.empty() : Optional.of(longest);
    }

    private List<Chain> together(Chain first) {
        List<Chain> together = new ArrayList<>(List.of(first));
        int entries = first.entries();
        for (BitField part : code.parts().subList(1, code.parts().size())) {
            Optional<Chain> same = chains(part).stream()
                    .filter(c -> c.strideBits() == first.strideBits() || c.entries() == 1 || first.entries() == 1)
                    .max((a, b) -> Integer.compare(a.entries(), b.entries()));
            if (same.isEmpty()) {
                return List.of();
            }
            together.add(same.get());
            entries = Math.min(entries, same.get().entries());
        }
        int least = entries;
        return together.stream()
                .map(c -> new Chain(c.shiftBits(), first.strideBits(), least))
                .toList();
    }

    /** All longest chains of a part; those of one entry only if there is no longer one. */
    private List<Chain> chains(BitField part) {
        List<BitSet> places = new ArrayList<>();
        for (int back = 1; back <= DEEPEST; back++) {
            BitSet found = places(part, back);
            if (found.isEmpty()) {
                break;
            }
            places.add(found);
        }
        List<Chain> chains = new ArrayList<>();
        int longest = 1;
        for (int at = places.isEmpty() ? -1 : places.get(0).nextSetBit(0); at >= 0; ) {
            for (Chain chain : from(at, part, places)) {
                if (chain.entries() > longest) {
                    longest = chain.entries();
                    chains.clear();
                }
                if (chain.entries() == longest) {
                    chains.add(chain);
                }
            }
            at = places.get(0).nextSetBit(at + 1);
        }
        return chains;
    }

    private static List<Chain> from(int at, BitField part, List<BitSet> places) {
        List<Chain> chains = new ArrayList<>();
        int shift = at - part.offsetBits();
        chains.add(new Chain(shift, part.widthBits(), 1));
        for (int next = places.size() < 2 ? -1 : places.get(1).nextSetBit(0); next >= 0; ) {
            int stride = next - at;
            int entries = 2;
            while (entries < places.size()
                    && at + entries * stride >= 0
                    && places.get(entries).get(at + entries * stride)) {
                entries++;
            }
            if (Math.abs(stride) >= part.widthBits()) {
                chains.add(new Chain(shift, stride, entries));
            }
            next = places.get(1).nextSetBit(next + 1);
        }
        return chains;
    }

    private BitSet places(BitField part, int back) {
        BitSet found = new BitSet();
        for (int at = 0; at + part.widthBits() <= frameBits; at++) {
            BitField field = part.shifted(at - part.offsetBits());
            if (!BitPlace.covered(field).intersects(taken) && repeats(part, field, back)) {
                found.set(at);
            }
        }
        return found;
    }

    private boolean repeats(BitField part, BitField field, int back) {
        int met = 0;
        int agreeing = 0;
        for (int i = back; i < frames.size(); i++) {
            if (steps.lead(i, back)) {
                met++;
                boolean agrees = field.read(frames.get(i).bytes())
                        == part.read(frames.get(i - back).bytes());
                agreeing += agrees ? 1 : 0;
                if (met - agreeing > frames.size() * (1 - LEAST_AGREEING)) {
                    return false;
                }
            }
        }
        return met >= LEAST_FRAMES && agreeing >= LEAST_AGREEING * met;
    }
}
