package fermata.daemon.web;

import fermata.daemon.json.Over;
import fermata.daemon.json.PracticeReader;
import fermata.daemon.json.WrittenDay;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which address answers with what: pages, their files under {@code /site/}, and the JSON under {@code /api/}.
 *
 * <p>Pages: {@code /now}, {@code /nights} (the latest night), {@code /nights/DAY}, {@code /solves/ID}, {@code /cases};
 * {@code /} is
 * what happens now while a cube is listened to, and the latest night otherwise; {@code /kept/ID.html} is a solve's page
 * as one file, to be saved. Thread-safe; the cost is that of the {@link PracticeReader}'s answer.
 */
final class Routes {
    /** What a solve's id may look like; everything else is no such solve, without asking the reader. */
    private static final Pattern SOLVE_ID = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,79}");

    private static final String NO_SOLVE = "there is no solve with this id; /api/solves lists them";
    private static final String DAY_QUERY = "day=";
    private static final String OVER_QUERY = "over=";

    private static final Pattern TURN_QUERY = Pattern.compile("turn=(\\d{1,5})");
    private static final String SETUP = "/setup";
    private static final String KEPT = ".html";

    private final SiteFiles files;
    private final PracticeReader practice;
    private final Setups setups = new Setups();
    private final BooleanSupplier isListening;

    Routes(SiteFiles files, PracticeReader practice, BooleanSupplier isListening) {
        this.files = files;
        this.practice = practice;
        this.isListening = isListening;
    }

    /**
     * The answer for a path.
     *
     * @param path decoded, starting with a slash
     * @param query the text after the question mark; empty if there is none
     */
    Answer answer(String path, String query) {
        if (path.startsWith("/api/")) {
            return api(path.substring(5), query);
        }
        if (path.startsWith("/site/")) {
            return files.file(path.substring(6))
                    .filter(file -> file.status() == 200)
                    .orElseGet(this::missing);
        }
        if (path.equals("/favicon.ico")) {
            return page("page/icon.svg");
        }
        if (path.equals("/now") || path.equals("/") && isListening.getAsBoolean()) {
            return page("now/now.html");
        }
        if (path.startsWith("/kept/") && path.endsWith(KEPT)) {
            return kept(path.substring(0, path.length() - KEPT.length()));
        }
        if (path.equals("/") || path.equals("/nights") || day(path, "/nights/").isPresent()) {
            return page("night/night.html");
        }
        if (path.equals("/cases")) {
            return page("cases/cases.html");
        }
        return tail(path, "/solves/").isPresent() ? page("score/score.html") : missing();
    }

    /** The address that a page asks for first, known before its script is. */
    static Optional<String> firstQuestion(String path) {
        return tail(path, "/solves/").map(id -> "/api/solves/" + id);
    }

    /** The answer for a browser that was not paired: the page that pairs it, and nothing of the practice. */
    Answer strangersAnswer(String path) {
        if (path.startsWith("/api/")) {
            return notPaired();
        }
        return path.startsWith("/site/") || path.equals("/favicon.ico") ? answer(path, "") : page("now/pair.html");
    }

    static Answer notPaired() {
        return Answer.error(401, "this browser is not paired with the board; open any page here to pair it");
    }

    private Answer api(String path, String query) {
        if (path.equals("nights")) {
            return Answer.json(practice.nightsJson());
        }
        if (path.equals("solves")) {
            return solves(query);
        }
        Optional<LocalDate> day = day(path, "nights/");
        if (day.isPresent()) {
            return over(query, Over.NIGHT)
                    .map(over -> practice.nightJson(day.get(), over)
                            .map(Answer::json)
                            .orElseGet(() -> Answer.error(404, "no solve was recorded on " + WrittenDay.of(day.get()))))
                    .orElseGet(Routes::notOver);
        }
        if (path.equals("cases")) {
            return over(query, Over.ALL)
                    .map(over -> Answer.json(practice.casesJson(over)))
                    .orElseGet(Routes::notOver);
        }
        if (path.startsWith("solves/") && path.endsWith(SETUP)) {
            return setup(path.substring(0, path.length() - SETUP.length()), query);
        }
        if (path.startsWith("solves/")) {
            return tail(path, "solves/")
                    .flatMap(practice::solveJson)
                    .map(Answer::json)
                    .orElseGet(() -> Answer.error(404, NO_SOLVE));
        }
        return Answer.error(404, "nothing here; try /api/nights, /api/cases or /api/solves");
    }

    /** Empty if the query is something else. */
    private static Optional<Over> over(String query, Over unasked) {
        if (query.isEmpty()) {
            return Optional.of(unasked);
        }
        return query.startsWith(OVER_QUERY) ? Over.of(query.substring(OVER_QUERY.length())) : Optional.empty();
    }

    private static Answer notOver() {
        return Answer.error(400, "the query must be over=night, over=week or over=all");
    }

    private Answer setup(String path, String query) {
        Matcher turn = TURN_QUERY.matcher(query);
        if (!turn.matches()) {
            return Answer.error(400, "the query must be turn=N, so many turns done");
        }
        return tail(path, "solves/")
                .flatMap(practice::solveJson)
                .map(solve -> setups.answer(solve, Integer.parseInt(turn.group(1))))
                .orElseGet(() -> Answer.error(404, NO_SOLVE));
    }

    private Answer kept(String path) {
        return tail(path, "/kept/")
                .flatMap(id -> practice.solveJson(id).map(solve -> OneFile.score(id, solve)))
                .map(html -> Answer.of(200, Answer.HTML, html.getBytes(StandardCharsets.UTF_8)))
                .orElseGet(this::missing);
    }

    private Answer solves(String query) {
        if (query.isEmpty()) {
            return Answer.json(practice.solvesJson());
        }
        return day(query, DAY_QUERY)
                .map(day -> Answer.json(practice.solvesJson(day)))
                .orElseGet(() -> Answer.error(400, "the query must be day=YYYY-MM-DD, a day of the calendar"));
    }

    private Answer page(String name) {
        return files.file(name).orElseThrow();
    }

    private Answer missing() {
        return page("page/missing.html");
    }

    private static Optional<LocalDate> day(String text, String prefix) {
        return tail(text, prefix).flatMap(Routes::calendarDay);
    }

    private static Optional<LocalDate> calendarDay(String text) {
        try {
            return Optional.of(WrittenDay.parse(text));
        } catch (DateTimeException notADay) {
            return Optional.empty();
        }
    }

    private static Optional<String> tail(String text, String prefix) {
        return Optional.of(text)
                .filter(whole -> whole.startsWith(prefix))
                .map(whole -> whole.substring(prefix.length()))
                .filter(tail -> SOLVE_ID.matcher(tail).matches());
    }
}
