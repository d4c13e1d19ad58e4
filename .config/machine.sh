# shellcheck shell=bash
# What run.sh and test.sh need of the machine: found, or else installed. Sourced, with the project's folder as the current one.
# Debian and Ubuntu only; elsewhere each need ends in one line that says what to install by hand.

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_GENERATE_ASPNET_CERTIFICATE=false DOTNET_SKIP_FIRST_TIME_EXPERIENCE=1
export DOTNET_CLI_WORKLOAD_UPDATE_NOTIFY_DISABLE=true DOTNET_SKIP_WORKLOAD_INTEGRITY_CHECK=true MSBUILDDISABLENODEREUSE=1

notes=$PWD/artifacts/setup.log
mkdir -p artifacts

say() { printf '== %s\n' "$*"; }

stop() {
  printf '%s: %s\n' "$(basename "$0")" "$*" >&2
  exit 1
}

# Runs a command quietly; what it said is shown only when it fails.
quietly() {
  "$@" >"$notes" 2>&1 </dev/null || {
    tail -n 15 "$notes" >&2
    return 1
  }
}

need_dotnet() {
  command -v dotnet >/dev/null || stop "the .NET 10 SDK is not here: install it (https://dot.net, or the package dotnet-sdk-10.0)."
  dotnet --list-sdks | grep -q '^10\.' || stop "the .NET SDK here is not version 10: install it (https://dot.net, or the package dotnet-sdk-10.0)."
}

# Packages can be installed as root, or with sudo when it asks no password or there is a terminal to ask at.
may_install() {
  [ "$(id -u)" = 0 ] && return
  command -v sudo >/dev/null && { sudo -n true 2>/dev/null || [ -t 0 ]; }
}

as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

# apt_install PACKAGE...: the package lists are fetched only when the first try fails, as on a bare image.
apt_install() {
  local install=(env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends -o DPkg::Lock::Timeout=120
    -o Dpkg::Options::=--force-confold "$@")
  as_root "${install[@]}" >"$notes" 2>&1 </dev/null && return
  as_root apt-get update -q >"$notes" 2>&1 </dev/null || true
  quietly as_root "${install[@]}"
}

# apt_unpack PACKAGE...: without root, fetches the packages and what they need that is not installed, and unpacks them beside each
# other. The programs find their own files by relative paths; the libraries have to be pointed at.
unpacked=${TRACEABILITY_DATA:-${XDG_DATA_HOME:-$HOME/.local/share}/traceability}/programs
apt_unpack() {
  local state=$unpacked/.apt options names folder
  mkdir -p "$state/lists/partial" "$state/cache/archives/partial"
  options=(-q -o Debug::NoLocking=1 -o "Dir::Cache=$state/cache")
  if ! apt-get "${options[@]}" -s install --no-install-recommends "$@" >"$notes" 2>&1; then
    options+=(-o "Dir::State::Lists=$state/lists")
    quietly apt-get "${options[@]}" update || return
    quietly apt-get "${options[@]}" -s install --no-install-recommends "$@" || return
  fi
  # Not unpacked: Perl, which only the packages' own scripts use, and the compiler that PostgreSQL would load for its JIT.
  names=$(sed -n 's/^Inst \([^ ]*\).*/\1/p' "$notes" | grep -vE -- '-perl$|^perl|^libperl|^libllvm|^postgresql(-client)?-common$|^ssl-cert$' || true)
  folder=$state/cache/archives
  # shellcheck disable=SC2086 # one word a package
  (cd "$folder" && quietly apt-get "${options[@]}" download $names) || return
  for package in "$folder"/*.deb; do quietly dpkg-deb -x "$package" "$unpacked" || return; done
  rm -rf "$state"
}

# The folders of unpacked libraries, for LD_LIBRARY_PATH: some keep theirs one level deeper.
unpacked_libraries() {
  find "$unpacked"/usr/lib/*-linux-gnu* "$unpacked"/lib/*-linux-gnu* -maxdepth 2 -name 'lib*.so*' -printf '%h\n' 2>/dev/null | sort -u | paste -sd:
}

# The first folder that holds both programs, in the order in which the service looks.
find_postgres() {
  local folder
  for folder in ${TRACEABILITY_POSTGRES_PROGRAMS:-$(
    tr : '\n' <<<"$PATH"
    find /usr/lib/postgresql -mindepth 1 -maxdepth 1 2>/dev/null | sort -Vr | sed 's,$,/bin,'
    find /usr -maxdepth 1 -name 'pgsql-*' 2>/dev/null | sort -Vr | sed 's,$,/bin,'
    echo /usr/local/pgsql/bin
    find "$unpacked/usr/lib/postgresql" -mindepth 1 -maxdepth 1 2>/dev/null | sort -Vr | sed 's,$,/bin,'
  )}; do
    [ -x "$folder/postgres" ] && [ -x "$folder/initdb" ] && echo "$folder" && return
  done
  return 1
}

need_postgres() {
  local folder
  if ! folder=$(find_postgres); then
    [ -z "${TRACEABILITY_POSTGRES_PROGRAMS:-}" ] || stop "TRACEABILITY_POSTGRES_PROGRAMS=$TRACEABILITY_POSTGRES_PROGRAMS holds no postgres and initdb."
    command -v apt-get >/dev/null || stop "PostgreSQL is not here and only Debian and Ubuntu are provided for: install its server, name one in ConnectionStrings__Traceability, or use docker compose up."
    if may_install; then
      say "Installing PostgreSQL (its programs only; no server of the system is started)"
      [ -e /etc/postgresql-common/createcluster.conf ] || as_root sh -c \
        'mkdir -p /etc/postgresql-common && echo "create_main_cluster = false" >/etc/postgresql-common/createcluster.conf'
      apt_install postgresql || stop "PostgreSQL could not be installed (see $notes): name a server in ConnectionStrings__Traceability, or use docker compose up."
    else
      say "Fetching PostgreSQL into $unpacked (no right to install packages here)"
      apt_unpack postgresql || stop "PostgreSQL could not be fetched (see $notes): name a server in ConnectionStrings__Traceability, or use docker compose up."
    fi
    folder=$(find_postgres) || stop "PostgreSQL was installed but its programs are not where they are looked for."
  fi
  case $folder in
    "$unpacked"/*) export TRACEABILITY_POSTGRES_PROGRAMS=$folder ;;
  esac
  say "PostgreSQL programs: $folder"
}

need_pdf_tools() {
  command -v pdftoppm >/dev/null && return
  command -v apt-get >/dev/null || stop "pdftoppm is not here: install poppler's tools."
  if may_install; then
    say "Installing poppler-utils (the tests look at PDF pages)"
    apt_install poppler-utils || stop "poppler-utils could not be installed (see $notes)."
  else
    [ -x "$unpacked/bin/pdftoppm" ] || {
      say "Fetching poppler-utils into $unpacked"
      apt_unpack poppler-utils || stop "poppler-utils could not be fetched (see $notes)."
      for program in pdftoppm pdftotext pdfinfo; do wrap_unpacked "$program" "$unpacked/usr/bin/$program"; done
    }
    export PATH=$unpacked/bin:$PATH
  fi
}

need_chromium() {
  local program
  for program in "${TRACEABILITY_CHROMIUM:-}" chromium google-chrome google-chrome-stable "$unpacked/bin/chromium"; do
    [ -n "$program" ] && TRACEABILITY_CHROMIUM=$(command -v "$program") && export TRACEABILITY_CHROMIUM && return
  done
  # Ubuntu's package of this name only points to a snap, which a test cannot start.
  local way_out="install Chromium or Chrome and name it in TRACEABILITY_CHROMIUM"
  command -v apt-get >/dev/null || stop "no browser for the browser tests: $way_out."
  if may_install; then
    say "Installing chromium (for the browser tests)"
    apt_install chromium || stop "chromium could not be installed (see $notes): $way_out."
    program=chromium
  else
    say "Fetching chromium into $unpacked (for the browser tests)"
    apt_unpack chromium || stop "chromium could not be fetched (see $notes): $way_out."
    wrap_unpacked chromium "$unpacked/usr/lib/chromium/chromium"
    program=$unpacked/bin/chromium
  fi
  export TRACEABILITY_CHROMIUM
  TRACEABILITY_CHROMIUM=$(command -v "$program") || stop "chromium was installed but is not to be found: $way_out."
}

# wrap_unpacked NAME PROGRAM: a command that starts an unpacked program with its libraries and fonts.
wrap_unpacked() {
  local fonts=$unpacked/bin/fonts.conf
  mkdir -p "$unpacked/bin"
  printf '<fontconfig><dir>%s</dir><dir>/usr/share/fonts</dir><cachedir>%s</cachedir></fontconfig>\n' \
    "$unpacked/usr/share/fonts" "$unpacked/bin/font-cache" >"$fonts"
  printf '#!/bin/sh\nLD_LIBRARY_PATH=%s FONTCONFIG_FILE=%s exec %s "$@"\n' "$(unpacked_libraries)" "$fonts" "$2" >"$unpacked/bin/$1"
  chmod +x "$unpacked/bin/$1"
}
