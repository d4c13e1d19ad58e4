#!/usr/bin/env bash
# Builds the service, starts it and serves until Ctrl-C. The demo scenario is loaded into an empty store, unless --empty is given.
# Other arguments are passed to the program.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
. .config/machine.sh

demo=(--demo)
arguments=()
for argument in "$@"; do
  case $argument in
    --empty) demo=() ;;
    *) arguments+=("$argument") ;;
  esac
done

need_dotnet
if [ -n "${ConnectionStrings__Traceability:-}" ]; then
  say "Using the PostgreSQL server named in ConnectionStrings__Traceability"
else
  need_postgres
fi

say "Restoring and building (the first time takes a minute or two)"
# Compiled ahead of time the service starts in two thirds of the time. The compiler for that is a package of its own: where it cannot be
# had, the service is built without it. Analyzers judge the code for those who change it (test.sh); who starts it need not wait for them.
publish=(dotnet publish src/Traceability.Web --configuration Release --output artifacts/service --nologo --verbosity quiet -p:RunAnalyzers=false)
ahead=(--use-current-runtime --self-contained false -p:PublishReadyToRun=true)
quietly "${publish[@]}" "${ahead[@]}" || "${publish[@]}" || stop "the build failed."

say "Starting; Ctrl-C stops it"
exec artifacts/service/Traceability.Web serve "${demo[@]}" "${arguments[@]}"
