package fermata.daemon.telling;

import fermata.analysis.event.Event;
import fermata.analysis.event.MarkKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Where calibration drills lie in a stream. A note that begins with "drill" announces one, as kept logs have it; the
 * next mark ends it. Stateless.
 */
public final class CalibrationNotes {
    private static final String WORD = "drill";

    private CalibrationNotes() {}

    /** Whether a calibration drill is announced anywhere. */
    public static boolean isAnnounced(List<Event> events) {
        return events.stream().anyMatch(CalibrationNotes::announces);
    }

    /** The turns of the announced drills, one list each; if none is announced, all turns in one. */
    public static List<List<Event.Turned>> sections(List<Event> events) {
        boolean inside = !isAnnounced(events);
        List<List<Event.Turned>> sections = new ArrayList<>(List.of(new ArrayList<>()));
        for (Event event : events) {
            if (event instanceof Event.Mark) {
                inside = announces(event) || inside && !isAnnounced(events);
                sections.add(new ArrayList<>());
            } else if (inside && event instanceof Event.Turned turned) {
                sections.get(sections.size() - 1).add(turned);
            } else if (event instanceof Event.Gap) {
                // An exercise with lost turns in it would be timed wrongly.
                sections.add(new ArrayList<>());
            }
        }
        return sections.stream().filter(section -> !section.isEmpty()).toList();
    }

    private static boolean announces(Event event) {
        return event instanceof Event.Mark mark
                && mark.kind() == MarkKind.NOTE
                && mark.text().strip().toLowerCase(Locale.ROOT).startsWith(WORD);
    }
}
