package fermata.daemon.practice;

import fermata.analysis.casebook.CaseRun;
import fermata.analysis.hold.sequence.SequenceReading;
import fermata.analysis.hotspot.HotspotKey;
import fermata.analysis.hotspot.Loss;
import fermata.analysis.night.SolveAccount;
import fermata.analysis.record.StageName;
import fermata.analysis.rest.Cause;
import fermata.daemon.json.AccountDocument;
import fermata.daemon.json.Json;
import fermata.daemon.store.AccountRow;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Puts the accounts of solves into the rows that keep them, and back. What comes back is rounded to whole microseconds
 * and thousandths. One for a reading of many: equal keys and words become one object, so that a year fits. Not
 * thread-safe.
 */
final class AccountRows {
    private static final double THOUSANDTHS = 1000;

    private final Map<HotspotKey, HotspotKey> keys = new HashMap<>();
    private final Map<String, StageName> stages = new HashMap<>();

    /** @param sequences how its last-layer sequences were read */
    static AccountRow row(SolveAccount account, LocalDate day, Instant startedAt, List<SequenceReading> sequences) {
        Map<String, Long> stages = new LinkedHashMap<>();
        account.stages().forEach(stage -> stages.put(stage.name().written(), stage.micros()));
        AccountDocument document = new AccountDocument(
                account.turns(),
                Math.round(account.regrips() * THOUSANDTHS) / THOUSANDTHS,
                stages,
                places(account.losses()),
                account.cases().stream()
                        .map(one -> new AccountDocument.Case(
                                one.stage().written(),
                                one.caseName(),
                                Math.round(one.recognitionMicros()),
                                Math.round(one.executionMicros()),
                                Math.round(one.turnsPerSecond() * THOUSANDTHS) / THOUSANDTHS,
                                one.sequence(),
                                one.atMicros()))
                        .toList(),
                sequences.stream()
                        .map(one -> new AccountDocument.Turned(
                                one.words(), (int) Math.round(one.probability() * THOUSANDTHS)))
                        .toList());
        return new AccountRow(
                account.solveId(),
                day,
                startedAt,
                account.series(),
                account.outcome(),
                account.timeMicros(),
                Json.write(document));
    }

    /** Losses of one turn share all but cause, length and clarity. */
    private static List<AccountDocument.Place> places(List<Loss> losses) {
        List<AccountDocument.Place> places = new ArrayList<>();
        List<AccountDocument.Part> parts = new ArrayList<>();
        for (int index = 0; index < losses.size(); index++) {
            Loss loss = losses.get(index);
            parts.add(new AccountDocument.Part(
                    loss.key().cause().map(Cause::written).orElse(""), Math.round(loss.micros()), (int)
                            Math.round(loss.clarity() * THOUSANDTHS)));
            boolean isLastOfTurn =
                    index + 1 == losses.size() || losses.get(index + 1).afterTurn() != loss.afterTurn();
            if (isLastOfTurn) {
                HotspotKey key = loss.key();
                places.add(new AccountDocument.Place(
                        loss.afterTurn(),
                        loss.atMicros(),
                        key.before().map(StageName::written).orElse(""),
                        key.after().map(StageName::written).orElse(""),
                        key.caseName(),
                        key.hold(),
                        List.copyOf(parts)));
                parts.clear();
            }
        }
        return places;
    }

    SolveAccount read(AccountRow row) {
        AccountDocument document = Json.read(row.json(), AccountDocument.class);
        List<SolveAccount.StageTime> times = new ArrayList<>();
        document.stagesUs().forEach((name, micros) -> times.add(new SolveAccount.StageTime(stage(name), micros)));
        List<Loss> losses = new ArrayList<>();
        for (AccountDocument.Place place : document.losses()) {
            place.parts().forEach(part -> losses.add(loss(row.solveId(), place, part)));
        }
        List<CaseRun> cases = document.cases().stream()
                .map(one -> new CaseRun(
                        stage(one.stage()),
                        one.caseName(),
                        one.atUs(),
                        one.recognitionUs(),
                        one.executionUs(),
                        one.turnsPerSecond(),
                        one.sequence()))
                .toList();
        return new SolveAccount(
                row.solveId(),
                row.series(),
                row.outcome(),
                row.timeMicros(),
                document.turns(),
                document.regrips(),
                times,
                losses,
                cases);
    }

    /** How the last-layer sequences of a solve were read. */
    static List<SequenceReading> sequences(AccountRow row) {
        return Json.read(row.json(), AccountDocument.class).sequences().stream()
                .map(one -> SequenceReading.of(one.words(), one.p() / THOUSANDTHS))
                .toList();
    }

    private Loss loss(String solveId, AccountDocument.Place place, AccountDocument.Part part) {
        HotspotKey key = new HotspotKey(
                stageIfAny(place.before()),
                stageIfAny(place.after()),
                place.caseName(),
                Optional.of(part.cause()).filter(word -> !word.isEmpty()).map(Cause::of),
                place.hold());
        return new Loss(
                keys.computeIfAbsent(key, same -> same),
                solveId,
                place.afterTurn(),
                place.atUs(),
                part.us(),
                part.clarity() / THOUSANDTHS);
    }

    private Optional<StageName> stageIfAny(String written) {
        return written.isEmpty() ? Optional.empty() : Optional.of(stage(written));
    }

    private StageName stage(String written) {
        return stages.computeIfAbsent(written, word -> StageName.valueOf(word.toUpperCase(Locale.ROOT)));
    }
}
