package fermata.daemon.turnfile;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.analysis.event.OwnTimes;
import fermata.analysis.event.OwnTimes.Taken;
import fermata.daemon.json.JsonLine;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A calibration's times as a line of a turn stream. Stateless. */
final class CalibrationLine {
    static final String KIND = "calibration";

    private static final String TIMES = "times";
    private static final List<String> KINDS = List.of("fluent", "regrip", "rotation", "wide");

    private CalibrationLine() {}

    /** A kind that is not named was not done. */
    static Event read(JsonLine line, Origin origin, long at) {
        Hand hand = Hand.of(line.oneOf(KIND, List.of(Hand.LEFT.written(), Hand.RIGHT.written())));
        if (at == Event.NO_TIME) {
            throw line.bad(KIND, "no such line, since the header says that there is no clock");
        }
        Map<String, Taken> taken = new TreeMap<>();
        for (JsonLine times : line.objects(TIMES)) {
            String kind = times.oneOf("kind", KINDS);
            if (taken.put(kind, taken(times)) != null) {
                throw times.bad("kind", "each kind once");
            }
        }
        return new Event.Calibrated(
                hand,
                new OwnTimes(of(taken, "fluent"), of(taken, "regrip"), of(taken, "rotation"), of(taken, "wide")),
                origin,
                at);
    }

    private static Taken of(Map<String, Taken> taken, String kind) {
        return taken.getOrDefault(kind, Taken.NEVER);
    }

    private static Taken taken(JsonLine times) {
        long count = times.optionalWhole("count", 1).orElseThrow(() -> times.bad("count", "how many intervals"));
        if (count > Integer.MAX_VALUE) {
            throw times.bad("count", "a whole number up to " + Integer.MAX_VALUE);
        }
        return new Taken(
                (int) count,
                times.optionalWhole("median_us", 1)
                        .orElseThrow(() -> times.bad("median_us", "their median in microseconds")));
    }

    static void write(Event.Calibrated calibrated, ObjectNode node) {
        node.put(KIND, calibrated.hand().written());
        ArrayNode times = node.putArray(TIMES);
        OwnTimes own = calibrated.times();
        List<Taken> taken = List.of(own.fluent(), own.regrip(), own.rotation(), own.wide());
        for (int kind = 0; kind < KINDS.size(); kind++) {
            if (taken.get(kind).count() > 0) {
                times.addObject()
                        .put("kind", KINDS.get(kind))
                        .put("count", taken.get(kind).count())
                        .put("median_us", taken.get(kind).medianMicros());
            }
        }
    }
}
