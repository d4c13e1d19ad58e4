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
# Analyzers judge the code for those who change it (test.sh); who starts it need not wait for them.
dotnet build src/Traceability.Web --configuration Release --nologo --verbosity quiet -p:RunAnalyzers=false || stop "the build failed."

say "Starting; Ctrl-C stops it"
exec src/Traceability.Web/bin/Release/net10.0/Traceability.Web serve "${demo[@]}" "${arguments[@]}"
