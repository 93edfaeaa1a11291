package fermata.daemon.turnfile;

import fermata.analysis.event.Event;
import fermata.daemon.json.Json;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.TurnSource;
import java.util.Locale;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The members of an event's line, all but the time. A half of {@link EventLines}. */
final class LineMembers implements Event.Visitor<ObjectNode> {
    /** Writes any event. */
    static final Event.Visitor<ObjectNode> OF_EVENT = new LineMembers();

    /** Stands where the count of a gap would stand when the stream cannot tell it. */
    static final String UNKNOWN_COUNT = "unknown";

    /** Four decimals: a hundredth of a degree, finer than any such sensor. */
    private static final double DIGITS = 10_000;

    private LineMembers() {}

    @Override
    public ObjectNode turned(Event.Turned turned) {
        ObjectNode node = Json.object().put("turn", turned.turn().toString());
        return turned.source() == TurnSource.HEARD ? node : node.put("source", word(turned.source()));
    }

    @Override
    public ObjectNode gap(Event.Gap gap) {
        return gap.turnsLost() == Event.Gap.UNKNOWN_COUNT
                ? Json.object().put("gap", UNKNOWN_COUNT)
                : Json.object().put("gap", gap.turnsLost());
    }

    @Override
    public ObjectNode snapshot(Event.Snapshot snapshot) {
        return Json.object().put("snapshot", snapshot.state().facelets());
    }

    @Override
    public ObjectNode reference(Event.Reference reference) {
        return Json.object().put("reference", reference.state().facelets());
    }

    @Override
    public ObjectNode mark(Event.Mark mark) {
        ObjectNode node = Json.object().put("mark", word(mark.kind()));
        return mark.text().isEmpty() ? node : node.put("text", mark.text());
    }

    @Override
    public ObjectNode verdict(Event.Verdict verdict) {
        return Json.object().put("verdict", word(verdict.ruling())).put("first_turn", firstTurn(verdict.attemptId()));
    }

    @Override
    public ObjectNode handStated(Event.HandStated stated) {
        return Json.object().put("hand", stated.words()).put("first_turn", firstTurn(stated.attemptId()));
    }

    @Override
    public ObjectNode calibrated(Event.Calibrated calibrated) {
        ObjectNode node = Json.object();
        CalibrationLine.write(calibrated, node);
        return node;
    }

    @Override
    public ObjectNode sequencesStated(Event.SequencesStated stated) {
        ObjectNode node = Json.object();
        SequencesLine.write(stated, node);
        return node;
    }

    @Override
    public ObjectNode oriented(Event.Oriented oriented) {
        ObjectNode node = Json.object();
        ArrayNode parts = node.putArray("orientation");
        Quaternion attitude = oriented.attitude();
        for (double part : new double[] {attitude.w(), attitude.x(), attitude.y(), attitude.z()}) {
            parts.add(Math.round(part * DIGITS) / DIGITS);
        }
        return node;
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static long firstTurn(String attemptId) {
        return Long.parseLong(attemptId.substring(attemptId.lastIndexOf('-') + 1));
    }
}
