package fermata.daemon.fuzz;

import fermata.decoder.stream.OpenLayout;

/** The stream profile that comes along, and a made-up one that uses what ours does not. */
final class SampleProfiles {
    /** Turns of varying length, big end first, with old times; states by stickers; both checked at their ends. */
    static final String OTHER = """
            {"format": "stream-profile", "version": 1, "name": "made up",
             "recognise": {"name": "Test .*"},
             "colours": {"U": "#000001", "R": "#000002", "F": "#000003",
             "D": "#000004", "L": "#000005", "B": "#000006"},
             "subscribe": [{"characteristic": "ab01", "frames": ["some", "whole"], "others": "ignored"}],
             "frames": {
              "some": {"kind": "turns", "bytes": [8, 20],
               "constants": [{"byte": 0, "bits": 3, "order": "big", "value": 1}],
               "sequence": {"byte": 0, "bit": 3, "bits": 5, "order": "big"},
               "clock": {"byte": 1, "bits": 24, "order": "big", "tickMicros": 31.25},
               "code": {"byte": 4, "bits": 8, "signed": true},
               "history": {"stride": 24, "entries": 4, "order": "newest-last", "count": {"byte": 5},
                "code": {"byte": 6, "signed": true}, "ticks": {"byte": 7, "bits": 16, "order": "big"}},
               "turns": {"1": "U", "2": "R", "3": "F", "4": "D", "5": "L", "6": "B",
                "-1": "U'", "-2": "R'", "-3": "F'", "-4": "D'", "-5": "L'", "-6": "B'"},
               "checksums": [{"kind": "crc16", "byte": -2, "from": 0, "to": -2, "order": "big",
                "polynomial": 4129, "initial": 65535}]},
              "whole": {"kind": "state", "bytes": 20, "constants": [{"byte": 0, "value": 2}],
               "stickers": {"byte": 1, "bits": 3, "order": "big", "centres": false, "faces": "FRUBLD",
                "colours": {"1": "U", "2": "R", "3": "F", "4": "D", "5": "L", "6": "B"}},
               "checksums": [{"kind": "xor8", "byte": 19, "from": 0, "to": 19}]}}}
            """;

    private SampleProfiles() {}

    static String open() {
        return OpenLayout.profileText();
    }

    /** Turns without number, clock or check, so that every byte is a turn. */
    static String plain() {
        return """
            {"format": "stream-profile", "version": 1, "name": "plain", "recognise": {"name": "Test .*"},
             "colours": {"U": "#000001", "R": "#000002", "F": "#000003",
             "D": "#000004", "L": "#000005", "B": "#000006"},
             "subscribe": [{"characteristic": "ab01", "frames": ["turn"], "others": "ignored"}],
             "frames": {"turn": {"kind": "turns", "bytes": 1, "code": {"byte": 0},
              "turns": {"0": "U", "1": "R", "2": "F", "3": "D", "4": "L", "5": "B",
               "6": "U'", "7": "R'", "8": "F'", "9": "D'", "10": "L'", "11": "B'"}}}}
            """;
    }
}
