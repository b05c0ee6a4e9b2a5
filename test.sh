#!/usr/bin/env bash
# Runs every test and prints "N passed, N failed, N skipped" last. Needs the .NET SDK named in global.json. On Debian it installs what else it
# needs when it is not there: chromium with two fonts for the pages, PostgreSQL for the region's store, readers of drawings and of pages (apt-get; as root or
# with sudo).
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
results=$(mktemp -d)
server=$(mktemp -d)

as_root() { if [ "$(id -u)" -eq 0 ]; then "$@"; else sudo -n "$@"; fi; }
missing=()
command -v chromium >/dev/null || missing+=(chromium)
command -v pdftotext >/dev/null || missing+=(poppler-utils)
ls /usr/share/fonts/truetype/liberation*/LiberationSans-Regular.ttf >/dev/null 2>&1 || missing+=(fonts-liberation)
ls -d /usr/lib/postgresql/*/bin >/dev/null 2>&1 || missing+=(postgresql)
/usr/bin/python3 -c 'import ezdxf' 2>/dev/null || missing+=(python3-ezdxf)
if [ ${#missing[@]} -gt 0 ] && command -v apt-get >/dev/null; then
  echo "installing ${missing[*]}"
  { as_root apt-get update && as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "${missing[@]}"; } >"$results/apt.log" 2>&1 || tail -3 "$results/apt.log"
fi

# a PostgreSQL of the tests' own, on loopback, gone afterwards
bin=$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | tail -1)
as_server() { if [ "$(id -u)" -eq 0 ]; then setpriv --reuid=postgres --regid=postgres --init-groups "$@"; else "$@"; fi; }
stop() { [ -d "$server/data" ] && as_server "$bin/pg_ctl" -D "$server/data" -m immediate stop >/dev/null 2>&1; rm -rf "$server"; }
trap stop EXIT
if [ -n "$bin" ]; then
  port=$((20000 + RANDOM % 20000))
  [ "$(id -u)" -ne 0 ] || chown postgres "$server"
  chmod 755 "$server"
  if as_server "$bin/initdb" -D "$server/data" -A trust -U umpirage >"$results/pg.log" 2>&1 &&
     as_server "$bin/pg_ctl" -D "$server/data" -w -l "$server/log" -o "-p $port -k $server -c listen_addresses=127.0.0.1" start >>"$results/pg.log" 2>&1; then
    export UMPIRAGE_TEST_POSTGRES="Host=127.0.0.1;Port=$port;Username=umpirage;Database=postgres"
  else tail -5 "$results/pg.log"; fi
fi

dotnet build Umpirage.slnx -c Release -v quiet -nologo || { echo "0 passed, 1 failed, 0 skipped"; exit 1; }
dotnet test --solution Umpirage.slnx -c Release --no-build --no-progress --no-ansi --report-trx --results-directory "$results"
code=$?
shopt -s nullglob
sum() { cat "$results"/*.trx 2>/dev/null | grep -o '<Counters [^>]*' | grep -o " $1=\"[0-9]*\"" | tr -dc '0-9\n' | awk '{ s += $1 } END { print s + 0 }'; }
total=$(sum total); passed=$(sum passed); failed=$(sum failed)
rm -rf "$results"
[ "$code" -eq 0 ] || [ "$failed" -gt 0 ] || failed=1
echo "$passed passed, $failed failed, $((total - passed - failed > 0 ? total - passed - failed : 0)) skipped"
exit "$code"
