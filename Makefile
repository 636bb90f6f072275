# One word per job. `make run` and `make test` set everything up first; nothing is written outside this folder.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
STAMP := $(VENV)/.installed
LEAD := examples/gate-leg-table.yaml
SHOP := examples/workshop.yaml
TRADE_CASES ?= tests/reference/data/trade_cases_more.yaml
PLAN_CASES ?=
OTHERS := $(filter-out $(LEAD) examples/journal.yaml $(wildcard examples/workshop*.yaml),$(sort $(wildcard examples/*.yaml)))

.DELETE_ON_ERROR:
.PHONY: system setup run test check explore measure lock wheel clean

system:  ## the one package of the system that is needed where Python comes without venv
	@if $(PYTHON) -c 'import ensurepip, venv' 2>/dev/null; then \
	  echo "Nothing to install: $(PYTHON) can make virtual environments."; \
	elif command -v apt-get >/dev/null && [ "$$(id -u)" = 0 ]; then \
	  apt-get install -y -q python3-venv; \
	elif command -v apt-get >/dev/null && command -v sudo >/dev/null; then \
	  sudo apt-get install -y -q python3-venv; \
	else \
	  echo "Cannot install python3-venv here: install it by hand, or name a Python 3.11 with venv: make PYTHON=..." >&2; \
	  exit 1; \
	fi

setup: $(STAMP)  ## the virtual environment with Refettle and its tools

$(STAMP): pyproject.toml
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null || \
	  { echo "Refettle needs Python 3.11 or newer as $(PYTHON), or named: make PYTHON=python3.11" >&2; exit 1; }
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || \
	  { echo "This Python comes without venv: run 'make system', which installs python3-venv." >&2; exit 1; }
	@$(PYTHON) -m venv $(VENV)
	@$(BIN)/python -m pip install -qq --disable-pip-version-check -e '.[dev]'
	@touch $@

run: $(STAMP)  ## plan the demo: one piece in full, the others in short
	$(BIN)/refettle plan $(LEAD) --workshop $(SHOP)
	@for piece in $(OTHERS); do \
	  echo; $(BIN)/refettle plan "$$piece" --workshop $(SHOP) --short || exit; \
	done

test: $(STAMP)  ## all tests
	$(BIN)/python -m pytest -n 2

check: $(STAMP)  ## style, types, layers, dependencies, dead code, then all tests
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy
	$(BIN)/lint-imports
	$(BIN)/deptry .
	$(BIN)/vulture
	$(BIN)/python -m pytest -n 2

explore: $(STAMP)  ## the tests that draw examples, with new ones: what it finds goes into the test as an example
	REFETTLE_EXPLORE=1 $(BIN)/python -m pytest -n 2 tests/unit tests/reference

measure: $(STAMP)  ## how fast, how far from known answers; prints, judges nothing
	$(BIN)/python measure/startup.py
	$(BIN)/python measure/planning.py
	$(BIN)/python measure/choice.py
	$(BIN)/python measure/trouble.py
	$(BIN)/python measure/evenings.py --pieces 1 3 6 12 25
	$(BIN)/python measure/evenings.py --workshops 30 --pieces 2 4 6 12
	$(BIN)/python measure/trade_cases.py $(TRADE_CASES)
	$(if $(SCHEDULES),$(BIN)/python measure/schedules.py $(SCHEDULES))
	$(if $(PLAN_CASES),$(BIN)/python measure/plan_cases.py $(PLAN_CASES))

lock: $(STAMP)  ## renew counts and checksums of the knowledge tables, after a change made on purpose
	$(BIN)/python -m refettle.files.lock

wheel: $(STAMP)  ## the package to hand on
	$(BIN)/python -m pip wheel -q --disable-pip-version-check --no-deps --no-build-isolation -w dist .
	@ls dist/*.whl

clean:  ## everything that can be made again
	rm -rf $(VENV) build dist .mypy_cache .ruff_cache .pytest_cache .hypothesis .import_linter_cache
