#!/usr/bin/env bash
# Stryker on the engine, folder by folder: see README.md beside this file.
#
#     bash tests/mutation/run.sh                          # every folder of tests.json, hours
#     bash tests/mutation/run.sh numeric fit/stress,cracking
#     CONCURRENCY=4 bash tests/mutation/run.sh fit
#
# Needs git and a package index; not part of npm test. Reports go to tests/output/mutation, nothing else is left behind.
set -euo pipefail
cd "$(dirname "$0")/../.."
reports=$PWD/tests/output/mutation
mkdir -p "$reports"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# What git tracks or would track, as it stands, so that a test just written counts.
git ls-files -z --cached --others --exclude-standard | while IFS= read -r -d '' file; do
  if [ -e "$file" ]; then printf '%s\0' "$file"; fi
done | tar --null --files-from=- --create | tar --extract --directory "$work"
folders=("$@")
[ $# -gt 0 ] || mapfile -t folders < <(node -p 'Object.keys(require("./tests/mutation/tests.json")).join("\n")')
cd "$work"
npm ci --silent --no-audit --no-fund
npm install --silent --no-save --no-audit --no-fund @stryker-mutator/core@9.5.1 @stryker-mutator/vitest-runner@9.5.1
for mutated in "${folders[@]}"; do
  name=${mutated//[\/,]/-}
  MUTATED=$mutated REPORT=$reports/$name.json npx stryker run tests/mutation/stryker.config.mjs |
    tee "$reports/$name.log" | grep --line-buffered -v "Mutation testing" || echo "$mutated: no result, see above"
done
cd "$OLDPWD"
for mutated in "${folders[@]}"; do echo "$reports/${mutated//[\/,]/-}.json"; done | xargs node tests/mutation/tally.mjs
