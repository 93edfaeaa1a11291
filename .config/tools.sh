# Shared by ./fermata and ./verify: finds or brings the tools they need. Meant for Debian 12 and 13.

say() { printf 'fermata: %s\n' "$*" >&2; }

java_command() {
    if [ -n "${JAVA_HOME:-}" ] && [ -x "$JAVA_HOME/bin/java" ]; then
        printf '%s\n' "$JAVA_HOME/bin/java"
    else
        command -v java || true
    fi
}

# The major version of a java command, or 0.
java_major() {
    [ -n "$1" ] || { echo 0; return; }
    "$1" -version 2>&1 | sed -n 's/.*version "\(1\.\)\{0,1\}\([0-9][0-9]*\).*/\2/p' | head -n 1 | grep . || echo 0
}

# Installs Debian packages as root or through sudo; otherwise names the exact command and stops.
bring() {
    local why=$1
    shift
    local apt=(apt-get install -y --no-install-recommends "$@")
    if ! command -v apt-get > /dev/null; then
        say "$why is missing and this is not a Debian system: install the equivalent of: $*"
        exit 1
    fi
    if [ "$(id -u)" = 0 ]; then
        say "installing $why: $*"
        { apt-get update && DEBIAN_FRONTEND=noninteractive "${apt[@]}"; } > /dev/null
    elif command -v sudo > /dev/null && sudo -n true 2> /dev/null; then
        say "installing $why through sudo: $*"
        { sudo apt-get update && sudo DEBIAN_FRONTEND=noninteractive "${apt[@]}"; } > /dev/null
    else
        say "$why is missing. Install it, then run this again:"
        say "  sudo apt-get update && sudo apt-get install -y --no-install-recommends $*"
        exit 1
    fi
}

need_java() {
    local found
    found=$(java_command)
    if [ "$(java_major "$found")" -lt 17 ]; then
        bring "a JDK, version 17 or newer" default-jdk-headless
    fi
}

need_maven() {
    local javac
    javac=$(java_command | sed 's|/java$|/javac|')
    if [ ! -x "$javac" ]; then
        bring "a Java compiler" default-jdk-headless
    fi
    command -v mvn > /dev/null || bring "Maven" maven
}

# The D-Bus library asks for a machine id, which containers often lack or leave empty; the private bus takes any.
need_machine_id() {
    local file
    for file in "${DBUS_MACHINE_ID_LOCATION:-/nonexistent}" /var/lib/dbus/machine-id /etc/machine-id; do
        [ ! -s "$file" ] || return 0
    done
    file=$1/daemon/target/machine-id
    mkdir -p "${file%/*}"
    [ -s "$file" ] || od -An -N16 -tx1 /dev/urandom | tr -d ' \n' > "$file"
    export DBUS_MACHINE_ID_LOCATION=$file
}

# The first source file under $1 that is newer than $2, if any.
newer_sources() {
    find "$1"/pom.xml "$1"/*/pom.xml "$1"/*/src/main -newer "$2" -type f -print -quit 2> /dev/null
}

# Sets $classes to the archive in which java $1 keeps the classes of jar $2, so that it need not read them anew at each
# start; makes it where it is missing (a few seconds, once). Empty where it cannot be made: nothing depends on it.
keep_classes() {
    local java=$1 jar=$2 modules stamp
    shift 2
    classes=
    modules=$(readlink -f "$java")
    modules=${modules%/bin/java}/lib/modules
    # An archive serves one build of Java only.
    stamp=$(stat -c '%Y-%s' "$modules" 2> /dev/null) || return 0
    classes=${jar%/*}/classes-$stamp.jsa
    if [ ! -f "$classes" ] || [ "$jar" -nt "$classes" ]; then
        # On the disk before it counts: a Java that is given half an archive dies.
        if [ ! -w "${jar%/*}" ] || ! { "$java" "$@" -XX:ArchiveClassesAtExit="$classes.$$" -jar "$jar" prepare \
            && sync "$classes.$$" && mv -f "$classes.$$" "$classes"; } > /dev/null 2>&1; then
            rm -f "$classes.$$"
            classes=
        fi
    fi
}
