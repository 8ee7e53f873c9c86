#!/usr/bin/env bash
# Looks for fused multiply-adds in the arm64 code of the packages whose floats
# reach bytes. Go fuses x*y+z where the product is not rounded by a conversion.
set -eu
cd "$(dirname "$0")/.."
packages="internal/optimise/lp internal/optimise/cover internal/optimise/boards internal/optimise/sheets internal/geom/vec internal/geom/polygon internal/geom/solid internal/geom/hidden internal/timber internal/tool internal/share internal/shape internal/page internal/typeset internal/font internal/scene internal/output/drawing internal/output/booklet internal/output/view3d internal/write/svg internal/write/pdf internal/write/gltf internal/analysis/movement internal/analysis/cutting internal/mechanics internal/sundries internal/accuracy internal/analysis/estimate internal/analysis/strength"
found=0
for p in $packages; do
  [ -d "$p" ] || continue
  list=$(GOARCH=arm64 go build -gcflags="scantling/$p=-S" "./$p" 2>&1 | grep -E '\bF(N)?M(ADD|SUB)[SD]?\b' || true)
  if [ -n "$list" ]; then
    found=1
    echo "fused multiply-add in $p:"
    printf '%s\n' "$list" | sed -n 's/.*(\(.*\.go:[0-9]*\)).*/  \1/p' | sort -u | head -20
  fi
done
exit $found
