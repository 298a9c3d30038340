#!/bin/sh
# Brings one table of readings into a house, with a column map from docs/how-to/column-maps.
#
#   OAKUM_URL=http://127.0.0.1:8480 OAKUM_TOKEN=oak_... \
#     docs/how-to/import-readings.sh HOUSE MAP FILE
#
# HOUSE  the house's id, such as H3
# MAP    a file of docs/how-to/column-maps without ".json", or a path to one of your own
# FILE   the table: plain or gzip
#
# Can be run again at any time: sensors and map that are there stay, and no reading doubles.
set -eu
[ $# -eq 3 ] || { sed -n '2,12p' "$0"; exit 2; }
house=$1
map=$2
file=$3
url=${OAKUM_URL:-http://127.0.0.1:8480}
: "${OAKUM_TOKEN:?set OAKUM_TOKEN to an API token with the permissions manage-sensors, write-readings, view-readings and view-house}"
[ -r "$file" ] || { echo "cannot read $file" >&2; exit 2; }
[ -r "$map" ] || map=$(dirname "$0")/column-maps/$map.json
[ -r "$map" ] || { echo "cannot read $map" >&2; exit 2; }
command -v python3 >/dev/null || { echo "python3 is needed to take the map file apart" >&2; exit 2; }
name=$(basename "$map" .json)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# request METHOD PATH BODYFILE TYPE [HEADER]: prints the status, leaves the answer in $work/answer
request() {
    if [ $# -gt 4 ]; then
        set -- "$1" "$2" "$3" "$4" -H "$5"
    fi
    method=$1 path=$2 body=$3 type=$4
    shift 4
    curl -sS -o "$work/answer" -w '%{http_code}' -X "$method" "$url$path" \
        -H "Authorization: Bearer $OAKUM_TOKEN" -H "Content-Type: $type" "$@" --data-binary "@$body"
}

# one small file for each sensor, and one for the map
python3 - "$map" "$work" <<'PY'
import json, sys
kept = json.load(open(sys.argv[1], encoding="utf-8"))
for i, sensor in enumerate(kept["sensors"]):
    json.dump(sensor, open(f"{sys.argv[2]}/sensor-{i:03}.json", "w", encoding="utf-8"))
json.dump(kept["map"], open(f"{sys.argv[2]}/map.json", "w", encoding="utf-8"))
PY

for sensor in "$work"/sensor-*.json; do
    status=$(request POST "/api/v1/houses/$house/sensors" "$sensor" application/json)
    case $status in
        201) ;;
        409) grep -q '"sensor-exists"' "$work/answer" || { cat "$work/answer" >&2; exit 1; } ;;
        *) cat "$work/answer" >&2; exit 1 ;;
    esac
done

tag=$(curl -sS -o /dev/null -D - "$url/api/v1/houses/$house/column-maps/$name" \
    -H "Authorization: Bearer $OAKUM_TOKEN" | tr -d '\r' | sed -n 's/^[Ee][Tt][Aa][Gg]: //p')
if [ -n "$tag" ]; then
    status=$(request PUT "/api/v1/houses/$house/column-maps/$name" "$work/map.json" application/json "If-Match: $tag")
else
    status=$(request PUT "/api/v1/houses/$house/column-maps/$name" "$work/map.json" application/json)
fi
[ "$status" = 200 ] || { cat "$work/answer" >&2; exit 1; }

status=$(request POST "/api/v1/houses/$house/readings?map=$name" "$file" text/csv)
cat "$work/answer"
echo
[ "$status" = 200 ]
