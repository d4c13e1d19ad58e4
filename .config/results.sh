# shellcheck shell=bash
# Running test projects and adding up what they report. Sourced by test.sh and .ci/run.

# run_tests PROJECT RESULTS ARGUMENT...: the counts go to RESULTS; the tests' own lines are shown.
run_tests() {
  local project=$1 results=$2 name
  shift 2
  name=$(basename "$project")
  dotnet test "$project" --no-build --nologo --results-directory "$results" --logger "trx;LogFileName=$name.trx" \
    --logger "console;verbosity=minimal" "$@" </dev/null && return
  # A test process that died reports no failed test: it counts as one.
  grep -q '<Counters [^>]* failed="[1-9]' "$results/$name.trx" 2>/dev/null || { mkdir -p "$results" && : >"$results/$name.broken"; }
  return 1
}

# count_results RESULTS: sets ran, passed, failed_tests and skipped. A test that was skipped counts in "total" only.
count_results() {
  local file counters total ok bad
  ran=0 passed=0 failed_tests=0 skipped=0
  for file in "$1"/*.trx; do
    [ -e "$file" ] || continue
    counters=$(grep -o '<Counters [^>]*>' "$file" | head -n 1)
    total=$(counter total) ok=$(counter passed) bad=$(counter failed)
    ran=$((ran + total)) passed=$((passed + ok)) failed_tests=$((failed_tests + bad)) skipped=$((skipped + total - ok - bad))
  done
  for file in "$1"/*.broken; do
    [ ! -e "$file" ] || failed_tests=$((failed_tests + 1)) ran=$((ran + 1))
  done
}

counter() { sed -n "s/.* $1=\"\([0-9]*\)\".*/\1/p" <<<"$counters"; }
