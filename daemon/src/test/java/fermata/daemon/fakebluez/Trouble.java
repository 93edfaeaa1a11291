package fermata.daemon.fakebluez;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/** What a fake can do to a capture, each with the time within which turning must be heard again. */
enum Trouble {
    /** The cube refuses a read; BlueZ hands ATT 0x07 and 0x0d on as Invalid..., others by number. */
    READ_REFUSED(30) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            bluez.bend(new Bend(
                    Bend.Way.REFUSE,
                    "ReadValue",
                    1 + random.nextInt(3),
                    pick(
                            random,
                            List.of(
                                    "org.bluez.Error.InvalidArguments|Invalid offset",
                                    "org.bluez.Error.InvalidValueLength|Invalid Length",
                                    "org.bluez.Error.Failed|Operation failed with ATT error: 0x0e (Unlikely Error)",
                                    "org.bluez.Error.Failed|Operation failed with ATT error: 0x80",
                                    "org.bluez.Error.NotPermitted|Read not permitted"))));
            return again(bluez, random);
        }
    },
    SUBSCRIPTION_REFUSED(30) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            bluez.bend(new Bend(
                    Bend.Way.REFUSE,
                    "StartNotify",
                    1 + random.nextInt(3),
                    pick(
                            random,
                            List.of(
                                    "org.bluez.Error.InvalidValueLength|Invalid Length",
                                    "org.bluez.Error.InProgress|In Progress",
                                    "org.bluez.Error.Failed|Operation failed with ATT error: 0x0d",
                                    "com.example.Unheard|of"))));
            return again(bluez, random);
        }
    },
    CONNECT_REFUSED(30) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            bluez.bend(new Bend(
                    Bend.Way.REFUSE,
                    "Connect",
                    1 + random.nextInt(4),
                    pick(
                            random,
                            List.of(
                                    "org.bluez.Error.Failed|le-connection-abort-by-local",
                                    "org.bluez.Error.Failed|le-connection-invalid-arguments",
                                    "org.bluez.Error.Failed|br-connection-canceled",
                                    "org.bluez.Error.InProgress|Operation already in progress",
                                    "org.freedesktop.DBus.Error.InvalidArgs|what",
                                    "com.example.Unheard|of"))));
            return again(bluez, random);
        }
    },
    /** Answers of another type than the method has. */
    ODD_ANSWERS(60) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            String method = pick(
                    random,
                    List.of("ReadValue", "GetManagedObjects", "Get", "StartNotify", "Connect", "StartDiscovery", ""));
            bluez.bend(new Bend(Bend.Way.ODD, method, 1 + random.nextInt(4), ""));
            return again(bluez, random);
        }
    },
    /** Answers that never come. */
    LOST_ANSWERS(90) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            String method = pick(
                    random,
                    List.of("ReadValue", "GetManagedObjects", "Get", "StartNotify", "Connect", "StartDiscovery", ""));
            bluez.bend(new Bend(Bend.Way.LOSE, method, 1 + random.nextInt(2), ""));
            return again(bluez, random);
        }
    },
    LATE_ANSWERS(60) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            bluez.bend(new Bend(Bend.Way.DELAY, "", 1 + random.nextInt(8), ""));
            return again(bluez, random);
        }
    },
    ANSWERED_TWICE(30) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            bluez.bend(new Bend(Bend.Way.TWICE, "", 1 + random.nextInt(8), ""));
            return again(bluez, random);
        }
    },
    ODD_NEIGHBOURS(30) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            for (int i = 0; i < 20; i++) {
                bluez.added(bluez.tree().addNeighbour(random));
            }
            bluez.tree().addNamelessCharacteristic();
            return again(bluez, random);
        }
    },
    /** Within milliseconds, while the cube goes on notifying. */
    LINK_FLAPS(10) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            int times = 1 + random.nextInt(12);
            long at = 0;
            for (int i = 0; i < times; i++) {
                at += 25 + random.nextInt(300);
                bluez.after(Duration.ofMillis(at), bluez::flap);
            }
            return Duration.ofMillis(at);
        }
    },
    LINK_DROPS(30) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            return drop(bluez, random);
        }
    },
    /** A stranger says that the service has gone, or is he. */
    OWNER_FORGED(5) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            String other = random.nextBoolean() ? "" : ":1.99";
            for (int i = 0; i < 1 + random.nextInt(3); i++) {
                bluez.signal(
                        "/org/freedesktop/DBus",
                        "org.freedesktop.DBus",
                        "NameOwnerChanged",
                        "sss",
                        FakeBluez.NAME,
                        ":1.1",
                        other);
            }
            return Duration.ZERO;
        }
    },
    SERVICE_RESTARTS(30) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            Duration absent = Duration.ofMillis(50 + random.nextInt(4000));
            bluez.restart(absent);
            return absent;
        }
    },
    ADAPTER_VANISHES(30) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            Duration absent = Duration.ofMillis(50 + random.nextInt(8000));
            bluez.vanish(absent, random.nextBoolean());
            return absent;
        }
    },
    /** The subscription dies under a link that looks well. */
    SILENCE(30) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            bluez.mute(true);
            return Duration.ZERO;
        }
    },
    FOREIGN_OBJECTS_GO(5) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            String foreign = bluez.tree().adapterPath() + "/dev_AA_BB_CC_DD_EE_FF";
            for (String each : List.of(
                    foreign, foreign + "/service0010/char0011", bluez.tree().devicePath() + "0")) {
                bluez.signal(
                        "/",
                        FakeBluez.OBJECT_MANAGER,
                        "InterfacesRemoved",
                        "oas",
                        new DBusPath(each),
                        List.of(FakeTree.DEVICE, FakeTree.CHARACTERISTIC, FakeTree.ADAPTER));
            }
            return Duration.ZERO;
        }
    },
    SIGNALS_DOUBLED(5) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            for (int i = 0; i < 3; i++) {
                bluez.added(bluez.tree().adapterPath());
                bluez.added(bluez.tree().devicePath());
                bluez.added(bluez.tree().turnsPath());
                bluez.show(bluez.tree().devicePath(), FakeTree.DEVICE, "Connected", bluez.tree().connected);
                bluez.show(bluez.tree().devicePath(), FakeTree.DEVICE, "ServicesResolved", bluez.tree().resolved);
            }
            return Duration.ZERO;
        }
    },
    /** Signals whose bodies are not what their names say, also of the cube itself. */
    ODD_SIGNALS(5) {
        @Override
        Duration strike(FakeBluez bluez, RandomGenerator random) {
            for (int i = 0; i < 10; i++) {
                OddValues.Body body = OddValues.body(random);
                String signature = body.signature().isEmpty() ? null : body.signature();
                bluez.signal(
                        bluez.tree().devicePath(), FakeBluez.PROPERTIES, "PropertiesChanged", signature, body.values());
                bluez.signal("/", FakeBluez.OBJECT_MANAGER, "InterfacesAdded", signature, body.values());
                bluez.signal("/", FakeBluez.OBJECT_MANAGER, "InterfacesRemoved", signature, body.values());
                Variant<?> odd = OddValues.variant(random);
                bluez.show(bluez.tree().devicePath(), FakeTree.DEVICE, "Connected", odd);
                bluez.signal(
                        "/",
                        FakeBluez.OBJECT_MANAGER,
                        "InterfacesAdded",
                        "oa{sa{sv}}",
                        new DBusPath(bluez.tree().devicePath()),
                        Map.of(FakeTree.DEVICE, Map.of("UUIDs", odd)));
            }
            return Duration.ZERO;
        }
    };

    private final int backWithinSeconds;

    Trouble(int backWithinSeconds) {
        this.backWithinSeconds = backWithinSeconds;
    }

    /** Does it; gives how long it lasts by itself, so that coming back is counted from its end. */
    abstract Duration strike(FakeBluez bluez, RandomGenerator random);

    Duration backWithin() {
        return Duration.ofSeconds(backWithinSeconds);
    }

    /** Most answers are only asked for while a link is made. */
    private static Duration again(FakeBluez bluez, RandomGenerator random) {
        return random.nextInt(4) == 0 ? Duration.ZERO : drop(bluez, random);
    }

    private static Duration drop(FakeBluez bluez, RandomGenerator random) {
        Duration outage = Duration.ofMillis(20 + random.nextInt(2000));
        bluez.dropLink(outage);
        return outage;
    }

    private static String pick(RandomGenerator random, List<String> of) {
        return of.get(random.nextInt(of.size()));
    }
}
