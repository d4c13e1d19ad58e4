#!/usr/bin/env bash
# Builds everything and runs every test project. Arguments are passed to each dotnet test, for instance: --filter Category=Storage
# The last line is: N passed, N failed, N skipped
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
. .config/machine.sh
. .config/results.sh

need_dotnet
if [ -n "${TRACEABILITY_TEST_POSTGRES:-}" ]; then
  say "Using the PostgreSQL server named in TRACEABILITY_TEST_POSTGRES"
else
  need_postgres
fi
need_pdf_tools
need_chromium

say "Restoring and building"
dotnet build Traceability.sln --nologo --verbosity quiet || stop "the build failed."

say "Checking the layout of the code"
dotnet format whitespace Traceability.sln --no-restore --verify-no-changes --verbosity quiet \
  || stop "the layout differs from .editorconfig: run dotnet format whitespace."

results=artifacts/tests
rm -rf "$results"
failed=0
for project in tests/*.Tests; do
  say "Testing $(basename "$project")"
  run_tests "$project" "$results" "$@" || failed=1
done

count_results "$results"
echo "$passed passed, $failed_tests failed, $skipped skipped"
[ "$failed" = 0 ] && [ "$failed_tests" = 0 ] && [ $((passed + skipped)) -gt 0 ]
