package fermata.daemon.cli;

import fermata.daemon.json.Json;
import fermata.daemon.json.NightsView;
import fermata.daemon.json.Over;
import fermata.daemon.practice.Practice;
import fermata.daemon.web.OneFile;
import java.time.LocalDate;
import java.util.Map;

/** A night's page as one file that needs no board and no network. Stateless. */
final class NightFile {
    private NightFile() {}

    /** The page of a day with practice. It holds no other night, so that nothing in it leads nowhere. */
    static String of(Practice practice, LocalDate day) {
        NightsView only = new NightsView(practice.nights().nights().stream()
                .filter(night -> night.day().equals(day.toString()))
                .toList());
        return OneFile.page(
                "night.html",
                "/nights/" + day,
                Map.of(
                        "/api/nights",
                        Json.write(only),
                        "/api/nights/" + day,
                        practice.nightJson(day, Over.NIGHT).orElseThrow(),
                        "/api/solves?day=" + day,
                        practice.solvesJson(day)));
    }
}
