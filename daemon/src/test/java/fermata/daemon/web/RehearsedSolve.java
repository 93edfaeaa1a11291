package fermata.daemon.web;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.StageTruth;
import fermata.rehearsal.truth.TimedTurn;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Writes an attempt of a made-up evening, by its truth, in the shape of {@code show --json} (docs/formats.md). */
final class RehearsedSolve {
    /** Longer than this between two turns is a rest here; the made-up cubers turn two to six times a second. */
    private static final long REST_MICROS = 450_000;

    private static final Map<String, String> COLOURS =
            Map.of("U", "white", "R", "red", "F", "green", "D", "yellow", "L", "orange", "B", "blue");

    private final List<TimedTurn> turns;
    private final AttemptTruth attempt;
    private final int first;
    private final CubeState start;

    RehearsedSolve(Evening evening, AttemptTruth attempt) {
        this.attempt = attempt;
        first = attempt.solve().turns().from();
        turns = evening.turns().subList(first, attempt.solve().turns().to());
        start = CubeState.SOLVED.apply(turnsOf(evening.turns().subList(0, first)));
    }

    Map<String, Object> shown(String day, int number) {
        Map<String, Object> shown = new LinkedHashMap<>();
        shown.put("id", day + "-" + number);
        shown.put("day", day);
        shown.put("number", number);
        shown.put("started_at", "%sT%02d:%02d:10".formatted(day, 21 + number / 40, number * 3 % 60));
        shown.put("hand", "left");
        shown.put("clock", "device");
        shown.put("scramble", attempt.scramble().words());
        shown.put("start_facelets", start.facelets());
        shown.put("face_colours", COLOURS);
        shown.put("solved", attempt.solve().solved());
        shown.put("outcome", attempt.solve().solved() ? "solved" : "abandoned");
        shown.put("time_us", at(turns.size() - 1));
        shown.put("gap_us", 9_300_000);
        shown.put("method", "CFOP");
        shown.put(
                "cross_colour",
                crossFace().map(face -> COLOURS.get(face.name())).orElse(null));
        shown.put("turns", turnList());
        shown.put("stages", attempt.solve().stages().stream().map(this::stage).toList());
        shown.put("rests", rests());
        shown.put("gaps", List.of());
        return shown;
    }

    /** The state after so many turns, by the decoder. */
    CubeState stateAfter(int count) {
        return start.apply(turnsOf(turns.subList(0, count)));
    }

    private List<Map<String, Object>> turnList() {
        List<Map<String, Object>> list = new ArrayList<>();
        for (int index = 0; index < turns.size(); index++) {
            Map<String, Object> turn = new LinkedHashMap<>();
            turn.put("index", index);
            turn.put("at_us", at(index));
            turn.put("core", turns.get(index).turn().toString());
            turn.put("source", index % 17 == 11 ? "repaired" : "heard");
            list.add(turn);
        }
        return list;
    }

    private Map<String, Object> stage(StageTruth truth) {
        int from = truth.turns().from() - first;
        int to = truth.turns().to() - first;
        boolean isPair = truth.name().startsWith("pair");
        Map<String, Object> stage = new LinkedHashMap<>();
        stage.put("name", truth.name());
        stage.put("case", isPair || truth.caseName().isEmpty() ? null : truth.caseName());
        stage.put(
                "faces", isPair ? Arrays.asList(truth.caseName().split("\\+")[0].split("")) : List.of());
        stage.put("from", from);
        stage.put("to", to);
        stage.put("start_us", from == 0 ? 0 : at(from - 1));
        stage.put("end_us", to == 0 ? 0 : at(to - 1));
        stage.put("parts", List.of());
        return stage;
    }

    private List<Map<String, Object>> rests() {
        List<Map<String, Object>> rests = new ArrayList<>();
        for (int index = 0; index + 1 < turns.size(); index++) {
            long length = at(index + 1) - at(index);
            if (length > REST_MICROS) {
                Map<String, Object> rest = new LinkedHashMap<>();
                rest.put("after_turn", index);
                rest.put("start_us", at(index));
                rest.put("length_us", length);
                rest.put("fermata", null);
                rests.add(rest);
            }
        }
        return rests;
    }

    private Optional<Face> crossFace() {
        CubeState after = stateAfter(attempt.solve().stages().get(0).turns().to() - first);
        return Arrays.stream(Face.values())
                .filter(face -> Arrays.stream(Edge.values())
                        .filter(edge -> edge.faces().contains(face))
                        .allMatch(after::isSolved))
                .findFirst();
    }

    private long at(int index) {
        return turns.get(index).atMicros() - turns.get(0).atMicros();
    }

    private static List<Turn> turnsOf(List<TimedTurn> timed) {
        return timed.stream().map(TimedTurn::turn).toList();
    }
}
