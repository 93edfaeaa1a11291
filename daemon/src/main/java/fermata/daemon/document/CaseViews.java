package fermata.daemon.document;

import fermata.analysis.casebook.CaseLedger;
import fermata.analysis.casebook.CaseRow;
import fermata.analysis.cases.CasePictures;
import fermata.analysis.hotspot.Series;
import fermata.daemon.json.CasesView;
import fermata.daemon.json.NightView;
import fermata.daemon.json.Over;
import fermata.daemon.json.WrittenDay;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Puts the table of cases into the document that is printed. Stateless. */
public final class CaseViews {
    private static final double HUNDREDTHS = 100;

    private CaseViews() {}

    /** While there is no practice. */
    public static CasesView none(Over over) {
        return new CasesView(over.written(), null, null, null, 0, List.of());
    }

    /** The table of one of several series; no cases where none has a solve. */
    public static CasesView view(
            Over over, LocalDate from, LocalDate to, Optional<Series> main, Map<Series, CaseLedger> ledgers) {
        Optional<CaseLedger> ledger = main.map(ledgers::get);
        return new CasesView(
                over.written(),
                WrittenDay.of(from),
                WrittenDay.of(to),
                main.map(NightViews::series).orElse(null),
                ledger.map(CaseLedger::solves).orElse(0),
                ledger.map(CaseLedger::rows).orElse(List.of()).stream()
                        .map(CaseViews::row)
                        .toList());
    }

    private static CasesView.Case row(CaseRow row) {
        return new CasesView.Case(
                row.stage(),
                row.caseName(),
                picture(row),
                row.met(),
                row.isFew(),
                Math.round(row.recognitionMicros()),
                Math.round(row.executionMicros()),
                Math.round(row.turnsPerSecond() * HUNDREDTHS) / HUNDREDTHS,
                row.sequence(),
                Math.round(row.usualMicros()),
                Math.round(row.costMicros()),
                row.examples().stream()
                        .map(one -> new NightView.Example(one.solveId(), one.atMicros()))
                        .toList());
    }

    private static String picture(CaseRow row) {
        return switch (row.stage()) {
            case "orient" -> CasePictures.ofOrientation(row.caseName(), row.sequence());
            case "permute" -> CasePictures.ofPermutation(row.caseName(), row.sequence());
            case "pair" -> CasePictures.ofPair(row.caseName(), row.sequence());
            default -> null;
        };
    }
}
