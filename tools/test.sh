#!/usr/bin/env bash
# Runs the project's tests and ends with a list of what was checked against the
# outside and what was left out. With Go and Node alone it runs all it can;
# under REQUIRE=all a missing tool or data folder is a failure.
set -u
cd "$(dirname "$0")/.."
failed=0
log=$(mktemp); trap 'rm -f "$log"' EXIT
export OUTSIDE_LOG="$log"
run() {
  printf '\n== %s\n' "$1"; shift
  "$@" || { failed=1; printf 'FAILED: %s\n' "$*"; }
}
need() { # need CHECK PROGRAM: notes a check that this script itself runs
  if command -v "$2" >/dev/null; then printf 'run\t%s\t%s\n' "$1" "$2" >>"$log"; return 0; fi
  printf 'left out\t%s\t%s not installed\n' "$1" "$2" >>"$log"
  [ "${REQUIRE:-}" = all ] && { failed=1; echo "FAILED: $1 needs $2"; }
  return 1
}

unformatted=$(git ls-files '*.go' | xargs gofmt -l)
[ -z "$unformatted" ] || { failed=1; echo "not gofmt-ed: $unformatted"; }
run "vet" go vet ./...
if need "node modules of the reference programs" npm && [ -f tools/reference/package-lock.json ]; then
  [ -d tools/reference/node_modules ] || run "reference modules" npm ci --prefix tools/reference --ignore-scripts --no-audit --no-fund --silent
fi
if need "front end: build and type check" npm && [ -f web/package-lock.json ]; then
  [ -d web/node_modules ] || run "front end: modules" npm ci --prefix web --ignore-scripts --no-audit --no-fund --silent
  run "front end: types" npm run --prefix web check --silent
  run "front end: build" npm run --prefix web build --silent
fi
run "tests" go test -timeout 30m ./...
if need "the engine under js/wasm" node; then
  run "the engine under js/wasm" bash tools/wasm-test.sh
fi
run "the same bytes everywhere" bash tools/hashes.sh
run "no fused multiply-add on arm64" bash tools/fma.sh
run "benchmarks run once" go test -run '^$' -bench . -benchtime 1x -short ./internal/... 
printf '\n== outside\n'
sort -u "$log" -o "$log"
ran=$(grep -c '^run' "$log"); out=$(grep -c '^left out' "$log")
grep '^left out' "$log" | sed 's/\t/: /g'
echo "outside checks run: $ran of $((ran + out))"
exit $failed
