#!/usr/bin/env bash
# base-backup.sh <empty folder>: copies a running PostgreSQL server with its own tool. With the archive that archive.conf
# fills, restore-to-time.sh brings back any moment after it. The connection comes from PGHOST, PGPORT, PGUSER, PGPASSWORD;
# the tool must be of the server's major version or newer. Take one a day, and keep the archive from the oldest one on.
set -euo pipefail
target=${1:?Say where to: base-backup.sh <empty folder>}
mkdir -p "$target"
pg_basebackup --pgdata="$target" --format=plain --checkpoint=fast --wal-method=fetch --manifest-checksums=SHA256 --progress
# Debian keeps this tool off the path.
verify=$(command -v pg_verifybackup || ls /usr/lib/postgresql/*/bin/pg_verifybackup | sort -V | tail -1)
"$verify" "$target"
echo "Whole and verified: $target"
