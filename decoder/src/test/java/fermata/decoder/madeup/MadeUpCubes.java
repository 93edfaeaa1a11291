package fermata.decoder.madeup;

import fermata.decoder.madeup.MadeUpDevice.Channel;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.FrameLayout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.function.UnaryOperator;

/** Draws whole cubes by seed. The same seed gives the same cube, drill and evening. */
public final class MadeUpCubes {
    private static final double LOSS = 0.01;

    private final Random random;
    private final long seed;

    private MadeUpCubes(long seed) {
        this.seed = seed;
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 14);
    }

    /** A cube that speaks plainly. */
    public static MadeUpCube plain(long seed) {
        MadeUpCubes cubes = new MadeUpCubes(seed);
        Family[] families = Family.values();
        // Every other cube has its turn in one field, as most devices would.
        Family family = cubes.random.nextBoolean() ? Family.ONE_FIELD : families[cubes.random.nextInt(families.length)];
        return cubes.draw(family, false);
    }

    /** A cube whose frames are enciphered, and change from turn to turn by a counter. */
    public static MadeUpCube enciphered(long seed) {
        MadeUpCubes cubes = new MadeUpCubes(seed);
        return cubes.draw(Family.ONE_FIELD, true);
    }

    private MadeUpCube draw(Family family, boolean enciphers) {
        List<Channel> channels = channels(family, enciphers);
        Channel main = channels.get(0);
        boolean hasTag = !main.writer().layout().envelope().constants().isEmpty();
        UnaryOperator<byte[]> cipher = enciphers ? FrameCipher.drawn(hasTag, random) : UnaryOperator.identity();
        boolean halves = feelsHalves(main.writer().layout());
        boolean doubles = !family.sendsOnlyStates() && tellsCopies(main.writer().layout());
        long gap = family == Family.SEVERAL_TURNS ? 250_000 : 0;
        long deviceSeed = random.nextLong();
        MadeUpHand drilled = new MadeUpHand(halves, random);
        drilled.drill();
        MadeUpDevice device =
                new MadeUpDevice(main, channels.subList(1, channels.size()), gap, cipher, new Random(deviceSeed));
        MadeUpRadio drillRadio = new MadeUpRadio(LOSS, doubles, random);
        device.play(drilled.made(), drillRadio);
        PromptedRecording drill = new PromptedRecording(
                "Made-up cube " + seed, List.of(), false, drilled.prompts(), drillRadio.heard(), drilled.now());
        MadeUpHand solving = new MadeUpHand(halves, random);
        solving.evening();
        device.sleep(3.6e9 * (1 + random.nextDouble()));
        MadeUpRadio radio = new MadeUpRadio(LOSS, doubles, random);
        device.play(solving.made(), radio);
        int lost = device.lostTurns();
        device.sleep(3.6e9);
        MadeUpRadio perfect = new MadeUpRadio(0, doubles, random);
        device.play(solving.made(), perfect);
        return new MadeUpCube(
                seed,
                family,
                channels.stream().map(c -> c.writer().layout()).toList(),
                drill,
                drilled.made().stream().map(MadeTurn::turn).toList(),
                radio.heard(),
                perfect.heard(),
                solving.made().stream().map(MadeTurn::turn).toList(),
                lost);
    }

    private static boolean feelsHalves(FrameLayout layout) {
        return layout instanceof FrameLayout.Turns turns
                && turns.turns().values().stream().anyMatch(t -> t.quarters() == 2);
    }

    /** A device without a number or a clock in its frames does not send them twice: nobody could tell. */
    private static boolean tellsCopies(FrameLayout layout) {
        return layout instanceof FrameLayout.Turns turns
                && (turns.sequence().isPresent()
                        || turns.clock().filter(c -> c.field().widthBits() > 10).isPresent());
    }

    private List<Channel> channels(Family family, boolean mustChange) {
        UUID first = new UUID(random.nextLong(), random.nextLong());
        int extraKinds = random.nextInt(3);
        boolean shared = random.nextBoolean();
        boolean tagged = shared && extraKinds > 0 || random.nextInt(3) == 0;
        Optional<Integer> tag = tagged ? Optional.of(random.nextInt(256)) : Optional.empty();
        Channel main = family.sendsOnlyStates()
                ? new Channel(stateWriter(family == Family.STATE_STICKERS, tag, 0), first)
                : turnsWriter(family, tag, first, mustChange);
        List<Channel> channels = new ArrayList<>(List.of(main));
        for (int kind = 0; kind < extraKinds; kind++) {
            UUID own = shared ? first : new UUID(random.nextLong(), random.nextLong());
            int number = kind + 1;
            Optional<Integer> ownTag = tag.map(value -> value + 37 * number & 0xFF);
            boolean state = family == Family.TURNS_AND_STATE && kind == 0;
            channels.add(new Channel(
                    state ? stateWriter(random.nextBoolean(), ownTag, number) : batteryWriter(ownTag, number), own));
        }
        if (family == Family.TURNS_AND_STATE && extraKinds == 0) {
            UUID own = new UUID(random.nextLong(), random.nextLong());
            channels.add(new Channel(stateWriter(random.nextBoolean(), Optional.empty(), 1), own));
        }
        return channels;
    }

    private BitRoom room() {
        return new BitRoom(
                random.nextBoolean() ? BitField.Order.BIG : BitField.Order.LITTLE, random.nextInt(3) == 0, random);
    }

    private Channel turnsWriter(Family family, Optional<Integer> tag, UUID characteristic, boolean mustChange) {
        while (true) {
            TurnsMaker maker = new TurnsMaker(family, random.nextInt(5) < 2, room(), random);
            FrameLayout.Turns layout = maker.draw("turns", tag);
            boolean changes = layout.sequence().filter(f -> f.widthBits() >= 12).isPresent()
                    || layout.clock().filter(c -> c.field().widthBits() >= 16).isPresent();
            if (changes || !mustChange) {
                return new Channel(new FrameWriter(layout, maker.extras(), random), characteristic);
            }
        }
    }

    private FrameWriter stateWriter(boolean stickers, Optional<Integer> tag, int number) {
        int sequenceBits = number == 0 && random.nextBoolean() ? 8 : 0;
        int clockBits = number == 0 && random.nextBoolean() ? 16 + 8 * random.nextInt(3) : 0;
        FrameLayout.State layout =
                new StateMaker(room(), random).draw("state" + number, tag, stickers, sequenceBits, clockBits, 1000);
        return new FrameWriter(layout, List.of(), random);
    }

    private FrameWriter batteryWriter(Optional<Integer> tag, int number) {
        BitRoom room = room();
        List<FrameLayout.Constant> constants = tag.map(
                        value -> List.of(new FrameLayout.Constant(room.takeHere(8), value)))
                .orElse(List.of());
        BitField percent = room.take(8);
        room.skip(8 * random.nextInt(18));
        return new FrameWriter(
                new FrameLayout.Battery(
                        new FrameLayout.Envelope("battery" + number, room.bytes(), room.bytes(), constants, List.of()),
                        percent),
                List.of(new Extra(percent, Extra.Kind.BATTERY)),
                random);
    }
}
