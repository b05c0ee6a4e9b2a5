#!/usr/bin/env bash
# Runs the full counts and every measurement (about an hour on two cores) and writes bench/RESULTS.md.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
dotnet build Umpirage.slnx -c Release -v quiet -nologo
./umpirage help >/dev/null
tests() { UMPIRAGE_LONG=1 dotnet run --project tests/Tests -c Release --no-build -- -showliveoutput "$@" | sed 's/\x1b\[[0-9;]*m//g' | grep -oE '(OUTPUT\] .*|Total: .*)' | sed 's/OUTPUT\] //; s/^Total/full counts: total/' || true; }
{
  echo "# Measurements"
  echo
  echo "Made by \`bench/long.sh\` on $(nproc) cores, .NET $(dotnet --version), $(date -u +%Y-%m-%d). Bars stand in brackets. Every baseline is measured in the same run."
  echo
  echo '```'
  dotnet run --project bench/Bench -c Release --no-build
  echo
  for _ in $(seq 20); do
    s=$(date +%s%N); ./umpirage rule casebook/double-first-base/own-white-only-appealed.play >/dev/null; e=$(date +%s%N); echo $(( (e - s) / 1000000 ))
  done | sort -n | awk '{ t[NR] = $1 } END { printf "./umpirage rule on the worked play, 20 runs after build: median %d ms, fastest %d, slowest %d (bar 200 ms)\n", (t[10] + t[11]) / 2, t[1], t[NR] }'
  echo
  tests
  echo
  ./umpirage casebook | tail -8 || true
  echo
  dotnet run --project bench/Bench -c Release --no-build fuzz
  echo '```'
  echo
  # what is measured by other commands, each named there, stays as it was
  sed -n '/^## /,$p' bench/RESULTS.md
} > bench/RESULTS.new
mv bench/RESULTS.new bench/RESULTS.md
