package fermata.daemon.capture;

import java.time.Duration;

/**
 * How a capture trades memory, disk wear and patience. All durations are on the capture's monotonic clock.
 *
 * @param queueFrames frames that may wait for their commit; further ones are dropped and counted
 * @param gather how long the writer rests after a commit, so that frames which come meanwhile share the next; the first
 *     frame after a longer pause is committed at once
 * @param gatherTurns how long it rests at most once a frame is there that may tell a turn, since somebody looks on
 * @param groupItems most items in one commit
 * @param firstRetry pause after the first failed commit; doubles with each further failure
 * @param longestRetry upper end of that pause
 * @param patience how long a passing journal failure (full or failing disk, busy) is retried before the capture gives
 *     up
 */
public record PipelineSettings(
        int queueFrames,
        Duration gather,
        Duration gatherTurns,
        int groupItems,
        Duration firstRetry,
        Duration longestRetry,
        Duration patience) {
    public PipelineSettings {
        if (queueFrames < 1 || groupItems < 1) {
            throw new IllegalArgumentException(
                    "queueFrames " + queueFrames + " and groupItems " + groupItems + " must be at least 1");
        }
        checkNotNegative("gather", gather);
        checkNotNegative("gatherTurns", gatherTurns);
        checkNotNegative("firstRetry", firstRetry);
        checkNotNegative("longestRetry", longestRetry);
        checkNotNegative("patience", patience);
    }

    /**
     * For a board: 8,192 frames are 45 minutes of turning at 3 a second and about 1 MB. Samples that tell no turn share
     * four commits a second, which spares the card; turns are told within 50 ms where a commit takes 15 (the one that
     * runs, the rest, their own), which no hand feels and which costs a commit a turn. Ten minutes give somebody a
     * chance to free space while nothing acknowledged or waiting is lost.
     */
    public static PipelineSettings forBoard() {
        return new PipelineSettings(
                8192,
                Duration.ofMillis(250),
                Duration.ofMillis(20),
                1024,
                Duration.ofMillis(500),
                Duration.ofSeconds(30),
                Duration.ofMinutes(10));
    }

    private static void checkNotNegative(String name, Duration duration) {
        if (duration.isNegative()) {
            throw new IllegalArgumentException(name + " " + duration + " is negative");
        }
    }
}
