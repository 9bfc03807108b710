#!/usr/bin/env bash
# One app on every runtime: this Node, Node 24, workerd, Deno and Bun answer the same, byte for byte.
#
#     bash tests/clients/runtimes/run.sh
#
# Fetches the runtimes from a package registry (540 MB) into a folder that is removed again; not part of npm test.
# Recorded on 2026-11-28 with node 20.20.2, node 24.21.0, workerd 1.20261117.1, deno 2.9.6, bun 1.4.5:
#
#     5 runtimes, 39 answers each: the same, byte for byte
#
# every example of the description in every form, a stream of 200 lines, refusals and the description itself.
set -euo pipefail
cd "$(dirname "$0")/../../.."
here=$PWD/tests/clients/runtimes
work=${RUNTIMES:-$(mktemp -d)}
pids=()
clean() {
  for pid in "${pids[@]}"; do kill "$pid" 2>/dev/null || true; done
  [ -n "${RUNTIMES:-}" ] || rm -rf "$work"
}
trap clean EXIT
if [ ! -d "$work/node_modules" ]; then
  echo '{ "private": true, "allowScripts": { "node": true, "workerd": true, "deno": true, "bun": true } }' >"$work/package.json"
  (cd "$work" && npm install --silent --no-audit --no-fund node@24.21.0 workerd@1.20261117.1 deno@2.9.6 bun@1.4.5)
fi
bin=$work/node_modules/.bin
npx esbuild examples/deploy/worker.ts --bundle --minify --format=esm --platform=browser --log-level=warning --outfile="$work/worker.mjs"
port=$((20000 + RANDOM % 20000))
export RINGTRUE_LOG=off
PORT=$port node .config/run.mjs api/server.ts >"$work/node.log" 2>&1 &
pids+=($!)
PORT=$((port + 1)) "$bin/node" .config/run.mjs api/server.ts >"$work/node24.log" 2>&1 &
pids+=($!)
sed "s/PORT/$((port + 2))/" "$here/workerd.capnp" >"$work/workerd.capnp"
"$bin/workerd" serve "$work/workerd.capnp" >"$work/workerd.log" 2>&1 &
pids+=($!)
"$bin/deno" serve --host 127.0.0.1 --port $((port + 3)) "$work/worker.mjs" >"$work/deno.log" 2>&1 &
pids+=($!)
PORT=$((port + 4)) "$bin/bun" run "$work/worker.mjs" >"$work/bun.log" 2>&1 &
pids+=($!)
at() { echo "http://127.0.0.1:$((port + $1))"; }
node "$here/same.mjs" "node$(node -p 'process.versions.node.split(".")[0]')=$(at 0)" "node24=$(at 1)" "workerd=$(at 2)" "deno=$(at 3)" "bun=$(at 4)"
