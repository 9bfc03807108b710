#!/usr/bin/env bash
# Schemathesis against the running service: see README.md beside this file.
#
#     bash tests/fuzz/run.sh [CASES-A-CALL]
set -euo pipefail
cd "$(dirname "$0")/../.."
work=$(mktemp -d)
port=$((20000 + RANDOM % 20000))
PORT=$port RINGTRUE_LOG=off node .config/run.mjs api/server.ts >"$work/server.log" 2>&1 &
server=$!
trap 'kill "$server" 2>/dev/null || true; rm -rf "$work"' EXIT
python3 -m venv "$work/venv"
"$work/venv/bin/pip" install --quiet --disable-pip-version-check schemathesis==4.32.5
for _ in $(seq 100); do curl -fs "localhost:$port/ready" >/dev/null && break || sleep 0.1; done
here=$PWD/tests/fuzz
cd "$work"
SCHEMATHESIS_HOOKS="$here/hooks.py" "$work/venv/bin/schemathesis" --config-file "$here/schemathesis.toml" run \
  "http://localhost:$port/openapi.json" --phases examples,coverage,fuzzing -n "${1:-40}" --seed 1
