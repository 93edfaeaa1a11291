package fermata.daemon.document;

import fermata.analysis.SolveReading;
import fermata.analysis.event.Event;
import fermata.analysis.hand.HandReading;
import fermata.analysis.hand.MadeTurn;
import fermata.analysis.lookahead.JudgedRest;
import fermata.analysis.lookahead.LookAhead;
import fermata.analysis.record.Segment.GapRecord;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.analysis.record.TurnRecord;
import fermata.analysis.rest.CauseShare;
import fermata.analysis.rhythm.BeatReading;
import fermata.daemon.holdmodel.HoldFiles;
import fermata.daemon.json.SolveView;
import fermata.daemon.json.SolvesView;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.reading.CaptureReading;
import fermata.daemon.reading.Source;
import fermata.decoder.cube.Face;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Puts the analysis' solves into the documents that are printed and kept. Stateless. */
public final class SolveViews {
    private static final DateTimeFormatter LOCAL = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss");

    private SolveViews() {}

    /** The whole of a solve, not yet numbered. */
    public static SolveView view(
            SolveReading reading,
            Source source,
            KnownHand hand,
            RegripViews regrips,
            String beganFrom,
            long marginMicros) {
        SolveRecord solve = reading.solve().record();
        CaptureReading capture = source.reading();
        ZoneId zone = source.row().start().zone();
        Instant startedAt = source.startedAt(solve);
        LookingViews looking = new LookingViews(solve, capture.faceColours());
        String announced = solve.attempt().scramble().announced();
        return new SolveView(
                solve.id(),
                WrittenDay.of(source.day(solve)),
                0,
                source.row().start().isDated() ? local(startedAt, zone) : null,
                solve.attempt().origin().hand().written(),
                capture.clock().written(),
                announced.isEmpty() ? null : announced,
                solve.attempt().scramble().start().facelets(),
                colours(capture.faceColours()),
                solve.isSolved(),
                word(solve.attempt().outcome()),
                solve.attempt().setAside(),
                boundary(solve),
                micros(solve.timeMicros()),
                micros(solve.pauseMicros()),
                solve.method().written(),
                solve.crossFace().map(face -> capture.faceColours().get(face)).orElse(null),
                solve.turns().stream().map(turn -> turn(turn, hand)).toList(),
                hand.reading().map(SolveViews::rotations).orElse(List.of()),
                regrips.regrips(),
                regrips.count(),
                solve.stages().stream().map(SolveViews::stage).toList(),
                reading.rests().stream().map(SolveViews::rest).toList(),
                reading.looking().stream().map(looking::view).toList(),
                LookAhead.model(marginMicros),
                slips(reading),
                gaps(solve),
                null,
                holds(hand),
                new SolveView.Derived(
                        reading.provenance().codeVersion(), reading.provenance().snapshotId(), beganFrom));
    }

    private static SolveView.Boundary boundary(SolveRecord solve) {
        return new SolveView.Boundary(
                word(solve.attempt().scramble().boundary()),
                solve.attempt().scramble().probability());
    }

    private static List<SolveView.Slip> slips(SolveReading reading) {
        return reading.beats().slips().stream()
                .map(slip ->
                        new SolveView.Slip(slip.turns().from(), slip.turns().to()))
                .toList();
    }

    private static List<SolveView.Gap> gaps(SolveRecord solve) {
        return solve.attempt().gaps().stream()
                .map(gap -> gap(gap, solve.turns()))
                .toList();
    }

    private static SolveView.Holds holds(KnownHand hand) {
        return new SolveView.Holds(
                known(hand),
                HoldFiles.modelId(),
                hand.corrections(),
                hand.before().map(SolveViews::reading).orElse(null));
    }

    private static SolveView.Rest rest(JudgedRest rest) {
        BeatReading beat = rest.rest().reading();
        Optional<Boolean> fermata = rest.judgement().isFermata();
        return new SolveView.Rest(
                rest.rest().afterTurn(),
                rest.startMicros(),
                beat.beat().micros(),
                Math.round(beat.excessMicros()),
                rounded(beat.restProbability()),
                rest.isCalled(),
                fermata.orElse(null),
                fermata.isPresent() ? null : word(rest.judgement()),
                rest.rest().shares().stream()
                        .sorted(Comparator.comparingDouble(CauseShare::micros).reversed())
                        .map(share -> new SolveView.Cause(
                                share.cause().written(), rounded(share.probability()), Math.round(share.micros())))
                        .toList());
    }

    /** Its line in the list, not yet numbered. */
    public static SolvesView.Item item(SolveView solve) {
        Map<String, Long> stages = new LinkedHashMap<>();
        for (SolveView.Stage stage : solve.stages()) {
            if (stage.startUs() != null) {
                stages.put(stage.name(), stage.endUs() - stage.startUs());
            }
        }
        boolean timed = solve.timeUs() != null;
        return new SolvesView.Item(
                solve.id(),
                solve.day(),
                0,
                solve.startedAt(),
                solve.hand(),
                solve.solved(),
                solve.outcome(),
                solve.setAside(),
                solve.timeUs(),
                solve.turns().size(),
                solve.gaps().stream()
                        .mapToInt(gap -> gap.lost() == null ? 0 : gap.lost())
                        .sum(),
                solve.method(),
                timed
                        ? solve.rests().stream()
                                .mapToLong(SolveView.Rest::lengthUs)
                                .sum()
                        : null,
                stages);
    }

    private static String local(Instant moment, ZoneId zone) {
        return LOCAL.format(moment.atZone(zone));
    }

    private static Map<String, String> colours(Map<Face, String> colours) {
        Map<String, String> named = new LinkedHashMap<>();
        for (Face face : Face.values()) {
            named.put(face.name(), colours.get(face));
        }
        return named;
    }

    private static SolveView.Turn turn(TurnRecord turn, KnownHand hand) {
        Optional<MadeTurn> made = hand.reading().map(reading -> reading.turns().get(turn.index()));
        return new SolveView.Turn(
                turn.index(),
                micros(turn.atMicros()),
                turn.core().toString(),
                word(turn.source()),
                made.map(one -> one.move().written()).orElse(null),
                made.map(one -> one.hold().letters()).orElse(null),
                made.map(one -> rounded(one.probability())).orElse(null));
    }

    private static List<SolveView.Rotation> rotations(HandReading reading) {
        return reading.rotations().stream()
                .map(rotation -> new SolveView.Rotation(
                        rotation.beforeTurn(), rotation.rotation().word(), rounded(rotation.probability())))
                .toList();
    }

    private static SolveView.Reading reading(HandReading reading) {
        return new SolveView.Reading(
                reading.turns().stream()
                        .map(made -> new SolveView.Made(
                                made.move().written(), made.hold().letters(), rounded(made.probability())))
                        .toList(),
                rotations(reading));
    }

    private static String known(KnownHand hand) {
        return hand.reading()
                .map(reading -> reading.stated() ? "stated" : "inferred")
                .orElse("untold");
    }

    /** More digits would promise more than a model can know. */
    public static double rounded(double probability) {
        return Math.round(probability * 1000) / 1000.0;
    }

    private static SolveView.Stage stage(StageRecord stage) {
        return new SolveView.Stage(
                stage.name().written(),
                stage.caseName().isEmpty() ? null : stage.caseName(),
                stage.faces().stream().map(Face::name).toList(),
                stage.span().from(),
                stage.span().to(),
                micros(stage.startMicros()),
                micros(stage.endMicros()),
                stage.parts().stream().map(SolveViews::stage).toList());
    }

    private static SolveView.Gap gap(GapRecord gap, List<TurnRecord> turns) {
        int after = gap.beforeTurn() - 1;
        return new SolveView.Gap(
                after,
                after >= 0 ? micros(turns.get(after).atMicros()) : null,
                gap.beforeTurn() < turns.size()
                        ? micros(turns.get(gap.beforeTurn()).atMicros())
                        : null,
                gap.turnsLost() == Event.Gap.UNKNOWN_COUNT ? null : gap.turnsLost());
    }

    private static Long micros(long micros) {
        return micros == Event.NO_TIME ? null : micros;
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
