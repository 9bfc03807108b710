#!/usr/bin/env bash
# The engine against an independent reckoning: see README.md beside this file.
#
#     bash tests/independent/engine/run.sh [SEED]
#     RECORD=1 bash tests/independent/engine/run.sh    # writes the table into README.md
#
# Needs python3 with venv and a package index; not part of npm test. Leaves nothing else behind.
set -euo pipefail
cd "$(dirname "$0")/../../.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python3 -m venv "$work/venv"
"$work/venv/bin/pip" install --quiet --disable-pip-version-check numpy==2.4.6 scipy==1.17.1
node .config/run.mjs tests/independent/engine/ask.ts "$work/asked.json" "${1:-1}"
here=tests/independent/engine
PYTHONDONTWRITEBYTECODE=1 "$work/venv/bin/python" "$here/compare.py" "$work/asked.json" ${RECORD:+--record "$here/README.md"}
