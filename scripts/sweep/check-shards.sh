#!/usr/bin/env bash
# Two shards by GNU parallel, merged, give the bytes of one run.
#
#   scripts/sweep/check-shards.sh SEASON [options of the sweep ...]
set -euo pipefail
cd "$(dirname "$0")/../.."
season=$1
shift
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
npm run --silent sweep -- "$season" --out "$work/whole" "$@"
scripts/sweep/with-parallel.sh "$season" 2 "$work/shares" "$@"
for name in strategies.arrow sweep.json; do
  cmp "$work/whole/$name" "$work/shares/merged/$name"
done
echo "two shards give the bytes of one run"
