#!/usr/bin/env bash
# Runs every test and prints "N passed, N failed, N skipped" last. Needs the .NET SDK named in global.json; installs nothing else yet:
# no test of the rule core needs a browser or a font.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
results=$(mktemp -d)
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
