#!/usr/bin/env bash
# Solves every crew-travel row whose instance is at hand and holds each solution against its instance: bench/trips.sh FOLDER [SECONDS A ROW]
# FOLDER holds instances/*.txt and best-known.csv. Prints a table: ours beside the published figure, and the seconds.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
folder=${1:?name the folder of the instances} seconds=${2:-600}
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
dotnet build -c Release -v quiet -nologo bench/Trips >/dev/null && dotnet build -c Release -v quiet -nologo bench/TripsCheck >/dev/null || exit 1
echo "| row | ours | bound | status | checked | published | its status | seconds |"
echo "|---|---|---|---|---|---|---|---|"
tail -n +2 "$folder/best-known.csv" | while IFS=, read -r name q1 q2 _ upper status; do
  file=$folder/instances/$name.txt
  [ -f "$file" ] || continue
  rm -f "$out/solution"
  told=$(dotnet bench/Trips/bin/Release/net10.0/Umpirage.Trips.dll "$file" "$q1" "$q2" "$seconds" "$out/solution" </dev/null)
  read -r _ cost _ bound _ state <<<"$(tail -1 <<<"$told")"
  checked=none
  [ ! -f "$out/solution" ] || checked=$(dotnet bench/TripsCheck/bin/Release/net10.0/Umpirage.TripsCheck.dll "$file" "$q1" "$q2" "$out/solution" </dev/null | tail -1)
  echo "| $name $q1,$q2 | $cost | $bound | $state | $checked | ${upper:-none} | $status | $(grep -o '[0-9.]* s$' <<<"$told") |"
done
