package fermata.daemon.capture;

/** Why a connection ended, as far as this side can know. */
public enum LossReason {
    /** The link went down: out of range, empty battery, or the cube hung up. */
    LINK_DOWN,
    /** The device object or a subscribed characteristic vanished from the object tree. */
    OBJECT_REMOVED,
    /** The Bluetooth service left the bus. */
    SERVICE_GONE,
    /** The bus itself is gone. */
    BUS_GONE,
    /** The link looked up, but the cube answered nothing for too long. */
    SILENT,
    /** Setting the connection up failed half-way. */
    SET_UP_FAILED,
    /** We ended it. */
    STOPPED
}
