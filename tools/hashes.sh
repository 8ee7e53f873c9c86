#!/usr/bin/env bash
# Compares the SHA-256 of every output of the demonstration piece: native with one
# and with two workers, and under js/wasm in Node.
set -eu
cd "$(dirname "$0")/.."
dir=$(mktemp -d); trap 'rm -rf "$dir"' EXIT
GOMAXPROCS=1 go test -count=1 -run TestSameDocumentsSameBytes . -args -hashes "$dir/one"
GOMAXPROCS=2 go test -count=1 -run TestSameDocumentsSameBytes . -args -hashes "$dir/two"
diff "$dir/one" "$dir/two"
if command -v node >/dev/null; then
  PATH="$(go env GOROOT)/lib/wasm:$PATH" GOOS=js GOARCH=wasm go test -count=1 -run TestSameDocumentsSameBytes . -args -hashes "$dir/wasm"
  diff "$dir/one" "$dir/wasm"
  echo "$(wc -l <"$dir/one") files: the same bytes with one worker, two workers and under js/wasm"
fi
