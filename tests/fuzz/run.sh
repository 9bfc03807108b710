#!/usr/bin/env bash
# Schemathesis against the running service: see README.md beside this file.
#
#     bash tests/fuzz/run.sh [CASES-A-CALL]
#
# Ends with 75 where there is no Python or no package index to have it from.
set -euo pipefail
cd "$(dirname "$0")/../.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
if ! { python3 -m venv "$work/venv" &&
  timeout 120 "$work/venv/bin/pip" install --quiet --disable-pip-version-check schemathesis==4.32.5; } >"$work/pip.log" 2>&1; then
  tail -n 3 "$work/pip.log"
  echo "Not asked: schemathesis cannot be installed here."
  exit 75
fi
port=$((20000 + RANDOM % 20000))
PORT=$port RINGTRUE_LOG=off node .config/run.mjs api/server.ts >"$work/server.log" 2>&1 &
server=$!
trap 'kill "$server" 2>/dev/null || true; rm -rf "$work"' EXIT
for _ in $(seq 100); do curl -fs "localhost:$port/ready" >/dev/null && break || sleep 0.1; done
here=$PWD/tests/fuzz
cd "$work"
SCHEMATHESIS_HOOKS="$here/hooks.py" "$work/venv/bin/schemathesis" --config-file "$here/schemathesis.toml" run \
  "http://localhost:$port/openapi.json" --phases examples,coverage,fuzzing -n "${1:-40}" --seed 1
