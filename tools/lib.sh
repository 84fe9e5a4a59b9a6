# Shared by the commands in this folder. To be sourced, not run.
# shellcheck shell=bash

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd -P)
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1

# With standard input closed, the next file that a program opens would become its standard input.
{ : <&0; } 2>/dev/null || exec </dev/null

say() { printf '%s\n' "$*" >&2; }

# The SDK, also where its installer has not put it on the PATH.
find_dotnet() {
    local folder
    for folder in "${DOTNET_ROOT:-}" "${HOME:-}/.dotnet" /usr/share/dotnet /usr/lib/dotnet /usr/local/share/dotnet; do
        command -v dotnet >/dev/null && break
        if [ -n "$folder" ] && [ -x "$folder/dotnet" ]; then export PATH="$folder:$PATH" DOTNET_ROOT="$folder"; fi
    done
    command -v dotnet >/dev/null || { say "The .NET SDK 10 is needed: https://dotnet.microsoft.com/download"; exit 1; }

    # Service users often have no home that they can write to, and the SDK needs one.
    if [ ! -w "${HOME:-/nonexistent}" ]; then
        export HOME="${TMPDIR:-/tmp}/colony-lineage-home-$(id -u)"
        mkdir -p -m 700 "$HOME"
    fi
}

# Whether PostgreSQL's programs are there: the places are those of src/Ledger/Postgres/PostgresBinaries.cs.
have_postgres() {
    if [ -n "${COLONY_LINEAGE_PGBIN:-}" ]; then [ -x "$COLONY_LINEAGE_PGBIN/initdb" ]; return; fi
    command -v initdb >/dev/null && return
    local program
    for program in /usr/lib/postgresql/*/bin/initdb /usr/pgsql-*/bin/initdb /usr/local/pgsql/bin/initdb \
        {/opt/homebrew,/usr/local,/home/linuxbrew/.linuxbrew}/opt/postgresql@*/bin/initdb; do
        [ -x "$program" ] && return
    done
    return 1
}

have_chromium() {
    [ -x "${COLONY_LINEAGE_CHROMIUM:-}" ] || command -v chromium || command -v chromium-browser \
        || command -v google-chrome || command -v google-chrome-stable
} >/dev/null

# install PACKAGE: by apt-get, where we are root or may become root without being asked for a password.
install() {
    local as=()
    if ! command -v apt-get >/dev/null; then return 1; fi
    if [ "$(id -u)" != 0 ]; then
        sudo -n true 2>/dev/null || return 1
        as=(sudo -n)
    fi
    say "Installing $1 ..."
    { "${as[@]}" apt-get update -qq \
        && "${as[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$1"; } </dev/null >/dev/null
}

# The private PostgreSQL is wanted unless somebody names another database.
need_postgres() {
    [ -n "${COLONY_LINEAGE_DATABASE:-}" ] && [ "${1:-}" != always ] && return
    have_postgres || install postgresql || true
    have_postgres && return
    say "PostgreSQL 14 or newer is needed. Install it (Debian, Ubuntu: apt-get install postgresql; Fedora: dnf install postgresql-server;"
    say "macOS: brew install postgresql@17), or name the folder of its programs in COLONY_LINEAGE_PGBIN."
    return 1
}

# build PROJECT: Release, quietly, once for those that ask at the same time; says what went wrong where it fails.
build() {
    local log
    log=$(mktemp)
    if ! dotnet build "$1" -c Release -nologo -v quiet -nodeReuse:false >"$log" 2>&1 </dev/null; then
        cat "$log" >&2
        rm -f "$log"
        return 1
    fi
    rm -f "$log"
}
