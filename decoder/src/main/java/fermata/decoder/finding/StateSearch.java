package fermata.decoder.finding;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Edge;
import fermata.decoder.stream.profile.Checksum;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.FrameLayout.Clock;
import fermata.decoder.stream.profile.FrameLayout.Envelope;
import fermata.decoder.stream.profile.StateEncoding;
import fermata.decoder.stream.profile.StateEncoding.Cubies;
import fermata.decoder.stream.profile.StateEncoding.Run;
import fermata.decoder.stream.profile.StateEncoding.Stickers;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Finds the whole state in the frames of a group, by stickers or by pieces. Stateless. */
final class StateSearch {
    /** Three bits a sticker for 48 of them, or less for the pieces: fewer bytes hold no state. */
    private static final int LEAST_BYTES = 9;

    private static final List<String> CORNERS =
            Stream.of(Corner.values()).map(Enum::name).toList();
    private static final List<String> EDGES =
            Stream.of(Edge.values()).map(Enum::name).toList();

    private StateSearch() {}

    static Optional<FrameLayout.State> find(FrameGroup group, Lesson lesson, Optional<Checksum> check) {
        if (group.length() < LEAST_BYTES) {
            return Optional.empty();
        }
        return StatePairs.of(group, lesson)
                .flatMap(pairs -> encoding(pairs, group.length()))
                .map(encoding -> layout(group, encoding, check));
    }

    private static Optional<StateEncoding> encoding(StatePairs pairs, int frameBytes) {
        Optional<Stickers> stickers = new StickerSearch(pairs, frameBytes).find();
        return stickers.isPresent() ? Optional.of(stickers.get()) : cubies(pairs, frameBytes);
    }

    private static Optional<StateEncoding> cubies(StatePairs pairs, int frameBytes) {
        Optional<PieceSearch.Found> corners = new PieceSearch(
                        pairs,
                        frameBytes,
                        CORNERS,
                        (state, place) -> state.cornerAt(Corner.values()[place]).ordinal(),
                        (state, place) -> state.twistAt(Corner.values()[place]))
                .find();
        if (corners.isEmpty()) {
            return Optional.empty();
        }
        return new PieceSearch(
                        pairs,
                        frameBytes,
                        EDGES,
                        (state, place) -> state.edgeAt(Edge.values()[place]).ordinal(),
                        (state, place) -> state.flipAt(Edge.values()[place]))
                .find()
                .map(edges -> new Cubies(
                        corners.get().names(),
                        edges.names(),
                        corners.get().places(),
                        corners.get().twists(),
                        edges.places(),
                        edges.twists()));
    }

    private static FrameLayout.State layout(FrameGroup group, StateEncoding encoding, Optional<Checksum> check) {
        BitSet taken = new BitSet();
        group.tag().ifPresent(tag -> taken.or(BitPlace.covered(tag.field())));
        check.ifPresent(c -> taken.or(BitPlace.covered(c.field())));
        if (encoding instanceof Stickers stickers) {
            take(stickers.run(), stickers.withCentres() ? 54 : 48, taken);
        } else if (encoding instanceof Cubies cubies) {
            take(cubies.cornerPlaces(), CORNERS.size(), taken);
            take(cubies.cornerTwists(), CORNERS.size(), taken);
            take(cubies.edgePlaces(), EDGES.size(), taken);
            take(cubies.edgeFlips(), EDGES.size(), taken);
        }
        Optional<ClockFound> clock = new ClockSearch(group.length(), group.distinct(), taken).find();
        Envelope envelope = new Envelope(
                "state",
                group.length(),
                group.length(),
                group.tag().map(List::of).orElse(List.of()),
                check.map(List::of).orElse(List.of()));
        return new FrameLayout.State(
                envelope, Optional.empty(), clock.map(c -> new Clock(c.field(), c.tickMicros())), encoding);
    }

    private static void take(Run run, int count, BitSet taken) {
        for (int i = 0; i < count; i++) {
            taken.or(BitPlace.covered(run.at(i)));
        }
    }
}
