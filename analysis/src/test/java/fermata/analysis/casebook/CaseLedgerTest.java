package fermata.analysis.casebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.record.StageName;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CaseLedgerTest {
    private static final long AT_MICROS = 7_100_000;
    private static final double SECOND = 1e6;

    @Test
    void shouldPriceACaseByHowOftenItIsMetAndHowMuchLongerItTakes() {
        CaseLedger ledger = new CaseLedger();
        for (int solve = 0; solve < 20; solve++) {
            ledger.add(
                    "solve " + solve,
                    List.of(solve < 5 ? orient("4", 1.0, 3.0, "F R U") : orient("27", 0.5, 1.5, "R U R'")));
        }

        List<CaseRow> rows = ledger.rows();

        assertThat(rows).extracting(CaseRow::caseName).containsExactly("4", "27");
        CaseRow dear = rows.get(0);
        assertThat(dear.met()).isEqualTo(5);
        assertThat(dear.recognitionMicros()).isCloseTo(1.0 * SECOND, within(1e-6));
        assertThat(dear.executionMicros()).isCloseTo(3.0 * SECOND, within(1e-6));
        assertThat(dear.usualMicros()).isCloseTo(2.0 * SECOND, within(1e-6));
        // Met in a quarter of the solves, two seconds longer than the median case.
        assertThat(dear.costMicros()).isCloseTo(0.5 * SECOND, within(1e-6));
        assertThat(rows.get(1).costMicros()).isCloseTo(0, within(1e-6));
    }

    @Test
    void shouldPutCasesThatWereMetTooRarelyLastWhateverTheyCost() {
        CaseLedger ledger = new CaseLedger();
        for (int solve = 0; solve < 30; solve++) {
            ledger.add("solve " + solve, List.of(solve < 4 ? orient("1", 5, 9, "R") : orient("27", 0.5, 1.5, "U")));
        }

        assertThat(ledger.rows()).extracting(CaseRow::caseName).containsExactly("27", "1");
        assertThat(ledger.rows()).extracting(CaseRow::isFew).containsExactly(false, true);
    }

    @Test
    void shouldCompareAPairWithPairsOfItsOwnNumberAndCountThemTogether() {
        CaseLedger ledger = new CaseLedger();
        for (int solve = 0; solve < 6; solve++) {
            List<CaseRun> runs = new ArrayList<>();
            // First pairs take four seconds, fourth pairs two; case 7 is half a second slower wherever it comes.
            runs.add(run(StageName.PAIR1, solve < 2 ? "7" : "12", 1, solve < 2 ? 3.5 : 3, "U R"));
            runs.add(run(
                    StageName.PAIR4, solve >= 2 && solve < 5 ? "7" : "12", 1, solve >= 2 && solve < 5 ? 1.5 : 1, "L"));
            ledger.add("solve " + solve, runs);
        }

        CaseRow slow = ledger.rows().stream()
                .filter(row -> row.caseName().equals("7"))
                .findFirst()
                .orElseThrow();

        assertThat(slow.stage()).isEqualTo("pair");
        assertThat(slow.met()).isEqualTo(5);
        // Medians by number: 4.0 and 2.25 (two kinds, half each); of two and three runs 2.25. Median run: 1.0 and 1.5.
        assertThat(slow.costMicros()).isCloseTo(0.25 * SECOND * 5 / 6, within(1e-3));
    }

    @Test
    void shouldTellACostThatTheOtherFiguresOfTheRowAddUpTo() {
        SplittableRandom random = new SplittableRandom(9);
        CaseLedger ledger = new CaseLedger();
        for (int solve = 0; solve < 40; solve++) {
            List<CaseRun> runs = new ArrayList<>();
            for (StageName stage : List.of(StageName.PAIR1, StageName.PAIR2, StageName.PAIR3, StageName.ORIENT)) {
                String name = Integer.toString(random.nextInt(3));
                runs.add(run(stage, name, random.nextDouble(), 2 * random.nextDouble(), "R"));
            }
            ledger.add("solve " + solve, runs);
        }

        assertThat(ledger.rows()).hasSize(6).allSatisfy(row -> {
            double longer = row.recognitionMicros() + row.executionMicros() - row.usualMicros();
            assertThat(row.costMicros()).isCloseTo(longer * row.met() / 40, within(1e-6));
        });
    }

    @Test
    void shouldShowTheSequenceThatIsUsedMostAndCountSolvesWithoutACase() {
        CaseLedger ledger = new CaseLedger();
        for (int solve = 0; solve < 8; solve++) {
            ledger.add("solve " + solve, List.of(orient("27", 0.5, 1.5, solve % 3 == 0 ? "R U R'" : "r U r'")));
        }
        ledger.add("none", List.of());

        assertThat(ledger.solves()).isEqualTo(9);
        assertThat(ledger.rows().get(0).sequence()).isEqualTo("r U r'");
    }

    @Test
    void shouldShowWhereACaseTookLongestBeyondWhatIsUsual() {
        CaseLedger ledger = new CaseLedger();
        double[] executions = {1.5, 4.0, 1.0, 3.0, 2.0};
        for (int solve = 0; solve < executions.length; solve++) {
            ledger.add("solve " + solve, List.of(orient("27", 0.5, executions[solve], "R U R'")));
        }

        assertThat(ledger.rows().get(0).examples())
                .containsExactly(
                        new CaseRow.Example("solve 1", AT_MICROS),
                        new CaseRow.Example("solve 3", AT_MICROS),
                        new CaseRow.Example("solve 4", AT_MICROS));
    }

    private static CaseRun orient(String name, double recognition, double execution, String sequence) {
        return run(StageName.ORIENT, name, recognition, execution, sequence);
    }

    private static CaseRun run(StageName stage, String name, double recognition, double execution, String sequence) {
        return new CaseRun(stage, name, AT_MICROS, recognition * SECOND, execution * SECOND, 4, sequence);
    }
}
