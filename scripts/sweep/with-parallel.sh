#!/usr/bin/env bash
# A sweep in shards by GNU parallel (Debian package `parallel`), merged when all are done.
#
#   scripts/sweep/with-parallel.sh SEASON SHARDS SHARES [options of the sweep ...]
#
# SEASON   season folder, the same files on every machine
# SHARDS   how many shares; as many run at once as PARALLEL_JOBS says (default: one a core)
# SHARES   folder for the shares, share-1, share-2, ...; also where they are looked for when a run goes on
#
# To spread them over machines that share this folder and these files, give parallel their names, each with
# the cores to use, in PARALLEL_HOSTS: PARALLEL_HOSTS='4/barn,8/office' (see `man parallel`, --sshlogin).
# Another scheduler needs only the command inside: one `npm run sweep -- SEASON --shard I/N --out SHARES/share-I` a task.
set -euo pipefail
if [ "$#" -lt 3 ]; then
  sed -n '2,12p' "$0" | sed 's/^# \{0,1\}//' >&2
  exit 2
fi
season=$(realpath "$1")
shards=$2
mkdir -p "$3"
shares=$(realpath "$3")
shift 3
cd "$(dirname "$0")/../.."
hosts=()
if [ -n "${PARALLEL_HOSTS:-}" ]; then
  hosts=(--sshlogin "$PARALLEL_HOSTS" --workdir "$PWD")
fi
# One worker a share: parallel keeps the cores busy. A share that fails stops those not yet begun; run again, it goes on.
seq "$shards" | parallel --halt soon,fail=1 --jobs "${PARALLEL_JOBS:-100%}" "${hosts[@]}" --quote \
  npm run --silent sweep -- "$season" --workers 1 "$@" --shard "{}/$shards" --out "$shares/share-{}"
merged=()
for shard in $(seq "$shards"); do merged+=("$shares/share-$shard"); done
npm run --silent sweep -- "$season" --out "$shares/merged" --merge "${merged[@]}"
