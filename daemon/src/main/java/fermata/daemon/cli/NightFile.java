package fermata.daemon.cli;

import fermata.daemon.json.Json;
import fermata.daemon.json.NightView;
import fermata.daemon.json.NightsView;
import fermata.daemon.json.Over;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.practice.Practice;
import fermata.daemon.web.OneFile;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A night's page, or one over many nights, as one file that needs no board and no network. Stateless. */
final class NightFile {
    private NightFile() {}

    /** The page of a day with practice. It holds no night that is not summed up in it. */
    static String of(Practice practice, LocalDate day, Over over) {
        NightView view = practice.night(day, over).orElseThrow();
        String word = WrittenDay.of(day);
        List<NightsView.Item> nights = practice.nights().nights().stream()
                .filter(night ->
                        night.day().compareTo(view.from()) >= 0 && night.day().compareTo(view.to()) <= 0)
                .toList();
        String query = over == Over.NIGHT ? "" : "?over=" + over.written();
        Map<String, String> documents = new HashMap<>();
        documents.put("/api/nights", Json.write(new NightsView(nights)));
        documents.put("/api/nights/" + word + query, Json.write(view));
        if (over == Over.ALL) {
            documents.put("/api/solves", practice.solvesJson());
        } else {
            nights.forEach(night -> documents.put(
                    "/api/solves?day=" + night.day(), practice.solvesJson(WrittenDay.parse(night.day()))));
        }
        return OneFile.page("night/night.html", "/nights/" + word + query, documents);
    }
}
