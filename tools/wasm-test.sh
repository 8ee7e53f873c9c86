#!/usr/bin/env bash
# Runs the tests of the packages whose results reach bytes under js/wasm in Node.
set -eu
cd "$(dirname "$0")/.."
export PATH="$(go env GOROOT)/lib/wasm:$PATH"
# Programs of the outside cannot be started from there: nothing is required.
unset REQUIRE OUTSIDE_LOG
GOOS=js GOARCH=wasm go test -short -timeout 20m \
  ./internal/unit ./internal/address ./internal/ledger ./internal/share ./internal/timber ./internal/mechanics \
  ./internal/geom/... ./internal/shape ./internal/joinery ./internal/evaluate
