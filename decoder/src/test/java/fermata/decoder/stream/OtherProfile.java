package fermata.decoder.stream;

import fermata.decoder.stream.profile.ProfileReading;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.UUID;

/** A layout unlike our own, made up to use what ours does not: two frames on one characteristic, big end first. */
final class OtherProfile {
    static final UUID NOTIFY = UUID.fromString("0000ab01-0000-1000-8000-00805f9b34fb");

    /** Turns: 1, length varies, absolute low bits of the clock, oldest first. State: 2, stickers. Checks at the end. */
    static final String JSON = """
            {
              "format": "stream-profile", "version": 1, "name": "made up for tests",
              "recognise": {"name": "Test .*"},
              "colours": {"U": "#000001", "R": "#000002", "F": "#000003",
                          "D": "#000004", "L": "#000005", "B": "#000006"},
              "subscribe": [{"characteristic": "ab01", "frames": ["some", "whole"], "others": "ignored"}],
              "frames": {
                "some": {
                  "kind": "turns", "bytes": [8, 20],
                  "constants": [{"byte": 0, "bits": 3, "order": "big", "value": 1}],
                  "sequence": {"byte": 0, "bit": 3, "bits": 5, "order": "big"},
                  "clock": {"byte": 1, "bits": 24, "order": "big", "tickMicros": 31.25},
                  "code": {"byte": 4, "bits": 8, "signed": true},
                  "history": {
                    "stride": 24, "entries": 4, "order": "newest-last", "count": {"byte": 5},
                    "code": {"byte": 6, "signed": true},
                    "ticks": {"byte": 7, "bits": 16, "order": "big"}
                  },
                  "turns": {"1": "U", "2": "R", "3": "F", "4": "D", "5": "L", "6": "B",
                            "-1": "U'", "-2": "R'", "-3": "F'", "-4": "D'", "-5": "L'", "-6": "B'"},
                  "checksums": [{"kind": "crc16", "byte": -2, "from": 0, "to": -2, "order": "big",
                                 "polynomial": 4129, "initial": 65535}]
                },
                "whole": {
                  "kind": "state", "bytes": 20,
                  "constants": [{"byte": 0, "value": 2}],
                  "stickers": {"byte": 1, "bits": 3, "order": "big", "centres": false, "faces": "FRUBLD",
                               "colours": {"1": "U", "2": "R", "3": "F", "4": "D", "5": "L", "6": "B"}},
                  "checksums": [{"kind": "xor8", "byte": 19, "from": 0, "to": 19}]
                }
              }
            }
            """;

    private OtherProfile() {}

    static StreamProfile profile() {
        ProfileReading reading = StreamProfile.parse(JSON);
        if (reading instanceof ProfileReading.Usable usable) {
            return usable.profile();
        }
        throw new AssertionError(reading.toString());
    }
}
