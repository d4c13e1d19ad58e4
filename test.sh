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

results=artifacts/tests
rm -rf "$results"

say "Checking the layout of the code (one more test in the count)"
layout=passed
dotnet tool restore --verbosity quiet && dotnet csharpier check . || layout=failed
[ $layout = passed ] || say "The layout differs: dotnet csharpier format . puts it right"

for project in tests/*.Tests; do
  say "Testing $(basename "$project")"
  run_tests "$project" "$results" "$@" || true
done

count_results "$results"
if [ $layout = passed ]; then passed=$((passed + 1)); else failed_tests=$((failed_tests + 1)); fi
echo "$passed passed, $failed_tests failed, $skipped skipped"
[ "$failed_tests" = 0 ] && [ "$ran" -gt 0 ]
