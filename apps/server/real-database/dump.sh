#!/usr/bin/env bash
# dump.sh <file>: one logical copy of DATABASE_URL in PostgreSQL's own format, for pg_restore of the same or a newer major
# version. `npm run backup` makes one too, together with the stored files; this one is for people who know pg_restore.
set -euo pipefail
file=${1:?Say where to: dump.sh <file>}
pg_dump --format=custom --no-owner --file="$file.part" "${DATABASE_URL:?Say which: DATABASE_URL}"
pg_restore --list "$file.part" > /dev/null
mv "$file.part" "$file"
echo "Whole: $file"
