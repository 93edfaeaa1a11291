package fermata.decoder.stream.profile;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.profile.FrameLayout.Clock;
import fermata.decoder.stream.profile.FrameLayout.Envelope;
import fermata.decoder.stream.profile.FrameLayout.History;
import fermata.decoder.stream.profile.FrameLayout.HistoryTime;
import fermata.decoder.stream.profile.StreamProfile.Source;
import fermata.decoder.stream.profile.StreamProfile.Write;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Writes a profile as the JSON file that {@link StreamProfile#parse} reads back as the same profile. Stateless. */
public final class ProfileWriter {
    private static final JsonMapper JSON = JsonMapper.shared();

    private ProfileWriter() {}

    /** The whole file. */
    public static String write(StreamProfile profile) {
        ObjectNode root = JSON.createObjectNode();
        root.put("format", "stream-profile").put("version", 1).put("name", profile.name());
        ObjectNode recognise = root.putObject("recognise");
        profile.recognition().service().ifPresent(s -> recognise.put("service", s.toString()));
        profile.recognition().namePattern().ifPresent(p -> recognise.put("name", p.pattern()));
        ObjectNode colours = root.putObject("colours");
        for (Face face : Face.values()) {
            colours.put(face.name(), profile.colours().get(face));
        }
        if (profile.bonding() == StreamProfile.Bonding.REQUIRED) {
            root.put("bonding", "required");
        }
        putSources(root, "subscribe", profile.subscribe());
        putSources(root, "read", profile.read());
        profile.onConnect().forEach(w -> putWrite(root.withArray("onConnect").addObject(), w));
        profile.keepAlive().forEach(keep -> {
            ObjectNode node = root.withArray("keepAlive").addObject();
            putWrite(node, keep.write());
            node.put("everyMillis", keep.periodMillis());
        });
        ObjectNode frames = root.putObject("frames");
        Stream.concat(profile.subscribe().stream(), profile.read().stream())
                .flatMap(source -> source.frames().stream())
                .distinct()
                .forEach(frame -> putFrame(frames.putObject(frame.envelope().name()), frame));
        return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root) + "\n";
    }

    private static void putSources(ObjectNode root, String name, List<Source> sources) {
        for (Source source : sources) {
            ObjectNode node = root.withArray(name).addObject();
            node.put("characteristic", source.characteristic().toString());
            source.frames()
                    .forEach(f -> node.withArray("frames").add(f.envelope().name()));
            if (source.ignoreOthers()) {
                node.put("others", "ignored");
            }
        }
    }

    private static void putWrite(ObjectNode node, Write write) {
        node.put("characteristic", write.characteristic().toString());
        node.put("hex", HexFormat.of().formatHex(write.bytes())).put("response", write.withResponse());
    }

    private static void putFrame(ObjectNode node, FrameLayout frame) {
        if (frame instanceof FrameLayout.Turns turns) {
            putEnvelope(node, "turns", turns.envelope());
            putTurns(node, turns);
        } else if (frame instanceof FrameLayout.State state) {
            putEnvelope(node, "state", state.envelope());
            state.sequence().ifPresent(f -> putField(node.putObject("sequence"), f));
            state.clock().ifPresent(c -> putClock(node, c));
            StateWriter.put(node, state.encoding());
        } else if (frame instanceof FrameLayout.Attitude attitude) {
            putEnvelope(node, "orientation", attitude.envelope());
            attitude.clock().ifPresent(c -> putClock(node, c));
            OrientationWriter.put(node, attitude);
        } else if (frame instanceof FrameLayout.Battery battery) {
            putEnvelope(node, "battery", battery.envelope());
            putField(node.putObject("percent"), battery.percent());
        } else {
            putEnvelope(node, "other", frame.envelope());
        }
    }

    private static void putEnvelope(ObjectNode node, String kind, Envelope envelope) {
        node.put("kind", kind);
        if (envelope.minBytes() == envelope.maxBytes()) {
            node.put("bytes", envelope.minBytes());
        } else {
            node.putArray("bytes").add(envelope.minBytes()).add(envelope.maxBytes());
        }
        envelope.constants().forEach(constant -> {
            ObjectNode item = node.withArray("constants").addObject();
            putField(item, constant.field());
            item.put("value", constant.value());
        });
        envelope.checksums()
                .forEach(check -> putCheck(node.withArray("checksums").addObject(), check));
    }

    private static void putCheck(ObjectNode node, Checksum check) {
        String kind = switch (check.kind()) {
            case SUM_8 -> "sum8";
            case XOR_8 -> "xor8";
            case CRC_8 -> "crc8";
            case CRC_16 -> "crc16";
        };
        int place = check.backBytes() > 0 ? -check.backBytes() : check.field().firstByte();
        node.put("kind", kind).put("byte", place).put("from", check.from()).put("to", check.to());
        node.put("order", order(check.field()));
        node.put("initial", check.crc().initial());
        if (check.kind() == Checksum.Kind.CRC_8 || check.kind() == Checksum.Kind.CRC_16) {
            node.put("polynomial", check.crc().polynomial());
            node.put("reflected", check.crc().reflected())
                    .put("finalXor", check.crc().finalXor());
        }
    }

    private static void putTurns(ObjectNode node, FrameLayout.Turns turns) {
        turns.sequence().ifPresent(f -> putField(node.putObject("sequence"), f));
        turns.clock().ifPresent(c -> putClock(node, c));
        turns.fresh().ifPresent(f -> putField(node.putObject("fresh"), f));
        putCode(node, turns.code());
        turns.history().ifPresent(h -> putHistory(node.putObject("history"), h));
        ObjectNode table = node.putObject("turns");
        for (Map.Entry<Long, Turn> entry : new TreeMap<>(turns.turns()).entrySet()) {
            table.put(entry.getKey().toString(), entry.getValue().toString());
        }
    }

    private static void putHistory(ObjectNode node, History history) {
        node.put("stride", history.strideBits()).put("entries", history.entries());
        node.put("order", history.newestFirst() ? "newest-first" : "newest-last");
        history.count().ifPresent(f -> putField(node.putObject("count"), f));
        history.emptyCode().ifPresent(code -> node.put("empty", code));
        putCode(node, history.code());
        if (history.time() instanceof HistoryTime.Absolute absolute) {
            putField(node.putObject("ticks"), absolute.field());
        } else if (history.time() instanceof HistoryTime.BeforeNewer before) {
            ObjectNode field = node.putObject("before");
            putField(field, before.field());
            field.put("saturates", before.saturates());
        }
    }

    private static void putCode(ObjectNode node, TurnCode code) {
        if (code.parts().size() == 1) {
            putField(node.putObject("code"), code.parts().get(0));
        } else {
            ArrayNode parts = node.putArray("code");
            code.parts().forEach(part -> putField(parts.addObject(), part));
        }
    }

    private static void putClock(ObjectNode node, Clock clock) {
        ObjectNode field = node.putObject("clock");
        putField(field, clock.field());
        field.put("tickMicros", clock.tickMicros());
    }

    static void putField(ObjectNode node, BitField field) {
        node.put("byte", field.firstByte()).put("bit", field.offsetBits() % 8);
        node.put("bits", field.widthBits()).put("order", order(field));
        if (field.signed()) {
            node.put("signed", true);
        }
    }

    private static String order(BitField field) {
        return field.order() == BitField.Order.BIG ? "big" : "little";
    }
}
