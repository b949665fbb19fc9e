# Two commands do all the set-up: `make demo` and `make test`. Each makes what it needs and says so when it cannot.
.DEFAULT_GOAL := help
.PHONY: help demo test check bench docs lock clean
FOLDER ?= demo-job

help: ## say what there is
	@sed -n 's/^\([a-z]*\):.*## /  make \1\t/p' $(MAKEFILE_LIST)

.venv/ready-run: requirements/run.lock pyproject.toml tools/set_up.sh
	@tools/set_up.sh run

.venv/ready-dev: requirements/dev.lock pyproject.toml tools/set_up.sh
	@tools/set_up.sh dev

demo: .venv/ready-run ## build the invented demo job from its raw inputs and say where the report is
	@.venv/bin/witnessmark demo $(FOLDER) --replace

check: .venv/ready-dev ## format, lint, types, import order
	@.venv/bin/ruff format --check --quiet . || { echo "Run: .venv/bin/ruff format ."; exit 1; }
	@.venv/bin/ruff check --quiet .
	@.venv/bin/mypy --no-error-summary
	@.venv/bin/lint-imports --no-cache > .venv/imports-log 2>&1 || { cat .venv/imports-log; exit 1; }
	@echo "check: format, lint, types and import order are clean"

test: check ## everything that must hold: checks, guards, tests, docs
	@.venv/bin/pytest -n auto --dist loadgroup

bench: .venv/ready-dev ## speed, each figure beside its baseline
	@.venv/bin/pytest benchmarks -o addopts= -o "python_files=bench_*.py" -o filterwarnings=error -p no:cacheprovider --import-mode=importlib --benchmark-columns=min,median,rounds --benchmark-sort=name -q -s
	@.venv/bin/python benchmarks/bench_verify.py
	-@.venv/bin/python benchmarks/bench_report.py

docs: .venv/ready-dev ## write the generated pages under docs/
	@.venv/bin/python tools/write_docs.py

lock: ## renew the locks (needs uv on the path)
	@uv pip compile --quiet --universal --python-version 3.11 --generate-hashes --no-emit-index-url --custom-compile-command "make lock" --extra build pyproject.toml -o requirements/run.lock
	@uv pip compile --quiet --universal --python-version 3.11 --generate-hashes --no-emit-index-url --custom-compile-command "make lock" --extra build --extra dev pyproject.toml -o requirements/dev.lock

clean: ## remove what the commands made
	@rm -rf .venv demo-job node_modules .pytest_cache .mypy_cache .ruff_cache .hypothesis .import_linter_cache build dist
