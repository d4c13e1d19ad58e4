# shellcheck shell=bash
# Running test projects and adding up what they report. Sourced by test.sh and .ci/run.

# run_tests PROJECT RESULTS ARGUMENT...: the counts go to RESULTS; the tests' own lines are shown.
run_tests() {
  local project=$1 results=$2 name
  shift 2
  name=$(basename "$project")
  dotnet test "$project" --no-build --nologo --results-directory "$results" --logger "trx;LogFileName=$name.trx" \
    --logger "console;verbosity=minimal" "$@" </dev/null
}

# count_results RESULTS: sets passed, failed_tests and skipped. A test that was skipped counts in "total" only.
count_results() {
  local file counters total ok bad
  passed=0 failed_tests=0 skipped=0
  for file in "$1"/*.trx; do
    [ -e "$file" ] || continue
    counters=$(grep -o '<Counters [^>]*>' "$file" | head -n 1)
    total=$(counter total) ok=$(counter passed) bad=$(counter failed)
    passed=$((passed + ok)) failed_tests=$((failed_tests + bad)) skipped=$((skipped + total - ok - bad))
  done
}

counter() { sed -n "s/.* $1=\"\([0-9]*\)\".*/\1/p" <<<"$counters"; }
