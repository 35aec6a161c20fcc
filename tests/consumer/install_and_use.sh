#!/usr/bin/env bash
# Installs the build into a folder of its own, builds the plugin `purging` against it, and uses it.
#   install_and_use.sh BUILD CMAKE COMPILER
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
build=$1 cmake=$2 compiler=$3
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
umask 022
export -n PUTEAL_PLUGIN_PATH
export XDG_DATA_HOME=$work/home

"$cmake" --install "$build" --prefix "$work/puteal" >"$work/log" || { cat "$work/log"; exit 1; }
{ "$cmake" -G Ninja -S "$here/purging" -B "$work/build" -DCMAKE_PREFIX_PATH="$work/puteal" -DCMAKE_CXX_COMPILER="$compiler" \
    -DCMAKE_CXX_FLAGS="-Wall -Wextra -Wpedantic -Werror" && "$cmake" --build "$work/build"; } >"$work/log" 2>&1 ||
    { cat "$work/log"; exit 1; }

failed=0
# says WHAT CODE COMMAND...: the whole output and the exit code
says() {
    local wanted=$1 code=$2 got=0 text
    shift 2
    text=$("$@" 2>&1) || got=$?
    if [ "$text" != "$wanted" ] || [ "$got" != "$code" ]; then
        printf 'wanted (%s): %s\nfound  (%s): %s\n' "$code" "$wanted" "$got" "$text"
        failed=1
    fi
}
puteal=$work/puteal/bin/puteal

# Elsewhere it is a stranger's: listed, never run.
notShipped="not shipped with this program; this version runs shipped plugins only"
says "purge_time(100 gal, 10 gpm)
^^^^^^^^^^
puteal: \`purge_time\` needs the plugin purging, which is $notShipped" 6 \
    "$puteal" eval --plugin-dir "$work/build/plugins" 'purge_time(100 gal, 10 gpm)'
"$puteal" plugins --plugin-dir "$work/build/plugins" | grep -q "^purging .*$notShipped" || { echo "a stranger's plugin is not listed"; failed=1; }

# Installed where the programs look, it is one of theirs.
"$cmake" --install "$work/build" >"$work/log" || { cat "$work/log"; exit 1; }
says "puteal: note: longer than half a working day: purge to a steady temperature instead
825 min" 0 "$puteal" eval 'purge_time(220 gal, 0.8 gpm)'
says "30 min" 0 "$puteal" eval 'purge_time(100 gal, 10 gpm)'
says "2027-05-12" 0 "$puteal" eval 'retest_day(2026-05-12)'
says "purge_time(3 lb, 10 gpm)
           ^^^^
puteal: purge_time takes stored in gal, not 3 lb" 4 "$puteal" eval 'purge_time(3 lb, 10 gpm)'
"$puteal" plugins verify | tail -n 1
"$puteal" functions purge_time | grep -q '825 min' || { echo "its help shows no example"; failed=1; }
printf 'puteal workbook 1\ntitle "Purging"\nuses purging 1\nsheet s "Sample"\ncolumn item words "Item" 30\ncolumn amount amounts "Amount" 14\nline\namount: purge_time(100 gal, 10 gpm, 2)\n  name purge\nexpect purge = 20 min\nend s 1\nend workbook\n' >"$work/purge.puteal"
"$puteal" check "$work/purge.puteal" >"$work/log" || { cat "$work/log"; failed=1; }
exit $failed
