#!/usr/bin/env bash
# restore-to-time.sh <base backup> <archive> <new data folder> <time>: prepares a data folder that recovers to a moment, such
# as '2026-11-25 14:03:00+00'. Start PostgreSQL on it; it stops replaying there and opens. Nothing that exists is changed.
# Afterwards: npm run verify-records, which names stored files that are newer or gone.
set -euo pipefail
base=${1:?Say which base backup}
archive=$(cd "${2:?Say which archive}" && pwd)
target=${3:?Say where to: a folder that does not exist}
time=${4:?Say which moment}
if [ -e "$target" ]; then echo "$target exists; nothing was changed." >&2; exit 1; fi
if [ ! -f "$base/backup_label" ]; then echo "$base is not a base backup: it has no backup_label." >&2; exit 1; fi
cp -a "$base" "$target.half"
rm -rf "$target.half/pg_wal" "$target.half/postmaster.pid"
mkdir -m 700 "$target.half/pg_wal"
chown --reference="$base" "$target.half/pg_wal"
cat >> "$target.half/postgresql.auto.conf" <<SETTINGS
archive_mode = off
restore_command = 'cp "$archive/%f" "%p"'
recovery_target_time = '$time'
recovery_target_action = promote
SETTINGS
touch "$target.half/recovery.signal"
chown --reference="$base" "$target.half/recovery.signal"
mv "$target.half" "$target"
echo "Ready: start PostgreSQL on $target"
