package fermata.analysis.night;

import fermata.analysis.hotspot.Grouping;
import fermata.analysis.hotspot.HotspotLedger;
import fermata.analysis.night.NightReport.StageShare;
import fermata.analysis.record.StageName;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import org.apache.commons.statistics.descriptive.Median;

/** The solved attempts of one series, added up. */
final class SeriesLedger {
    private final Map<Grouping, HotspotLedger> places = new EnumMap<>(Grouping.class);
    private final Map<StageName, DoubleStream.Builder> stages = new EnumMap<>(StageName.class);
    private long night = Long.MIN_VALUE;
    private int solves;
    private double micros;
    private double writtenMicros;

    SeriesLedger() {
        for (Grouping grouping :
                List.of(Grouping.TRANSITION, Grouping.CAUSE, Grouping.TRANSITION_AND_CAUSE, Grouping.ALL)) {
            places.put(grouping, new HotspotLedger(grouping));
        }
    }

    void add(long day, SolveAccount solve) {
        if (day != night) {
            night = day;
            places.values().forEach(HotspotLedger::beginNight);
        }
        solves++;
        micros += solve.timeMicros();
        writtenMicros += Averages.written(solve.timeMicros());
        places.values().forEach(ledger -> ledger.add(solve.losses()));
        for (SolveAccount.StageTime stage : solve.stages()) {
            stages.computeIfAbsent(stage.name(), name -> DoubleStream.builder()).add(stage.micros());
        }
    }

    int solves() {
        return solves;
    }

    /** Of times as they are written down. */
    double meanMicros() {
        return solves == 0 ? 0 : writtenMicros / solves;
    }

    HotspotLedger places(Grouping grouping) {
        return places.get(grouping);
    }

    /** In the order of the stages; may be asked once. */
    List<StageShare> stages() {
        List<StageShare> shares = new ArrayList<>();
        stages.forEach((name, times) -> {
            double[] all = times.build().toArray();
            double share = micros == 0 ? 0 : Arrays.stream(all).sum() / micros;
            shares.add(new StageShare(name, Median.withDefaults().evaluate(all), share));
        });
        return shares;
    }
}
