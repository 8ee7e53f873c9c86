# The front door: `make run` and `make test` do all the set-up that they need.

DEMO = examples/needle-chest/needle-chest.piece.hcl

.PHONY: run test test-all bench bench-cutting web build docs

run: web ## build everything, plan the demonstration piece, open the app
	go run ./cmd/scantling build $(DEMO) -o out
	go run ./cmd/scantling open $(DEMO)

test: ## every test that this machine can run, and a list of what was left out
	bash tools/test.sh

test-all: ## the long tiers too
	LONG=1 bash tools/test.sh

build: ## the command alone; needs Go only
	go build -o scantling ./cmd/scantling

web: web/node_modules ## the app's pages
	npm run --prefix web build --silent

web/node_modules: web/package-lock.json
	npm ci --prefix web --ignore-scripts --no-audit --no-fund --silent
	@touch web/node_modules

bench-kernel: ## the solid kernel beside manifold-3d, and the demonstration piece
	BENCH=1 go test -count 1 -v -run TestSpeedBesideReference ./internal/geom/solid
	BENCH=1 go test -count 1 -v -run TestKernelSpeed .

bench: ## figures for every engine
	go test -run '^$$' -bench . -benchmem ./...

# The day and the machine are passed in, so that nothing that is written asks a clock.
BENCH_DATE ?= $(shell date +%F)
BENCH_MACHINE ?= $(shell nproc) × $(shell sed -n 's/^model name[^:]*: *//p' /proc/cpuinfo | head -1)
SETS ?= $(if $(LONG),all,boards)

bench-cutting: ## cutting against published best-known values, into docs/CUTTING.md (LONG=1: sheets too; SETS=names)
	SCANTLING_SHARED="$${SCANTLING_SHARED:-$(CURDIR)/../shared}" go test ./internal/optimise -v -count 1 -timeout 6h \
		-run '$(if $(filter all boards 1d-multilength,$(SETS)),TestPublished$$|TestBesideCBC$$,TestPublished$$)' \
		-published '$(SETS)' -published-date '$(BENCH_DATE)' -published-machine '$(BENCH_MACHINE)' \
		-published-out '$(CURDIR)/docs/CUTTING.md' -beside-seconds 2 $(BENCH_FLAGS)

docs: ## the reference of the plan, what is told, the manual of joints and its pictures
	go run ./tools/plandoc
	go run ./tools/findingsdoc
	go run ./tools/jointdoc
