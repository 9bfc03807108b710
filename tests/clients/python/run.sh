#!/usr/bin/env bash
# A client in another language: generated from the description that the service serves, then put to the main job.
#
#     bash tests/clients/python/run.sh
#
# Needs python3 with venv and a package index; not part of npm test. Leaves nothing behind.
set -euo pipefail
cd "$(dirname "$0")/../../.."
work=$(mktemp -d)
port=$((20000 + RANDOM % 20000))
PORT=$port RINGTRUE_LOG=off node .config/run.mjs api/server.ts >"$work/server.log" 2>&1 &
server=$!
trap 'kill "$server" 2>/dev/null || true; rm -rf "$work"' EXIT

python3 -m venv "$work/venv"
"$work/venv/bin/pip" install --quiet --disable-pip-version-check openapi-python-client==0.29.1
for _ in $(seq 100); do curl -fs "localhost:$port/ready" >/dev/null && break || sleep 0.1; done
curl -fs "localhost:$port/openapi.json" -o "$work/openapi.json"
PATH="$work/venv/bin:$PATH" openapi-python-client generate --path "$work/openapi.json" --output-path "$work/client"
PYTHONPATH="$work/client" "$work/venv/bin/python" tests/clients/python/main_job.py "http://localhost:$port"
