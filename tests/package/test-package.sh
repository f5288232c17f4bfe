#!/usr/bin/env bash
# Makes the Debian package, installs it into a scratch root with a package database of its own, uses what it installed
# from elsewhere, and takes it out again: nothing of it may stay, and nothing may come from the source tree.
# usage: test-package.sh BUILD
set -euo pipefail
build=$1
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
fail() { echo "test-package: $*" >&2; exit 1; }

cpack --config "$build/CPackConfig.cmake" -B "$scratch/package" >"$scratch/cpack.log" 2>&1 || { cat "$scratch/cpack.log"; fail "cpack failed"; }
deb=$(find "$scratch/package" -maxdepth 1 -name 'coldiron_*.deb')
[[ -f $deb ]] || fail "no package was made"
depends=$(dpkg-deb -f "$deb" Depends)
for library in libsndfile1 libebur128-1 libsoxr0 libhwy1 libc6; do
    [[ $depends == *$library* ]] || fail "the package does not ask for $library: $depends"
done

root=$scratch/root database=$scratch/database
mkdir -p "$root" "$database/info" "$database/updates" "$database/triggers"
: >"$database/status"
in_root() { dpkg --root="$root" --admindir="$database" --force-depends --force-not-root --log=/dev/null "$@"; }
in_root -i "$deb" >"$scratch/install.log" 2>&1 || { cat "$scratch/install.log"; fail "dpkg did not install it"; }

for file in usr/bin/coldiron usr/bin/coldiron-app usr/lib/vst3/Coldiron.vst3/Contents/x86_64-linux/Coldiron.so \
            usr/lib/lv2/Coldiron.lv2/manifest.ttl usr/share/coldiron/presets/guitars/one-humbucker.json \
            usr/share/applications/coldiron.desktop usr/share/icons/hicolor/scalable/apps/coldiron.svg \
            usr/share/doc/coldiron/copyright; do
    [[ $file != *x86_64-linux* || $(uname -m) == x86_64 ]] || continue
    [[ -e $root/$file ]] || fail "the package holds no $file"
done
grep -q '^Exec=coldiron-app' "$root/usr/share/applications/coldiron.desktop" || fail "the desktop file starts something else"

# From elsewhere, with another home and nothing in the environment.
mkdir "$scratch/elsewhere" "$scratch/home"
run() { (cd "$scratch/elsewhere" && env -i PATH=/usr/bin:/bin HOME="$scratch/home" "$root/usr/bin/coldiron" "$@"); }
run presets guitars --json >"$scratch/guitars.json"
listed=$(grep -c '"preset"' "$scratch/guitars.json")
shipped=$(find "$root/usr/share/coldiron/presets/guitars" -name '*.json' | wc -l)
((listed > 0 && listed == shipped)) || fail "$listed guitars listed, $shipped shipped"
grep -q "\"file\": \"$root/usr/share/coldiron/presets/guitars/one-humbucker.json\"" "$scratch/guitars.json" || fail "the presets are not those of the package"
printf '{ "coldiron": "job 1", "title": "t", "guitar": "one-humbucker" }\n' >"$scratch/elsewhere/job.json"
run check job.json | grep -q ': fine' || fail "a job cannot be checked"
run ohms job.json | grep -q 'k ' || fail "a job's ohms cannot be read"

in_root -P coldiron >"$scratch/remove.log" 2>&1 || { cat "$scratch/remove.log"; fail "dpkg did not remove it"; }
left=$(find "$root" -not -type d | wc -l)
((left == 0)) || fail "$left files were left behind: $(find "$root" -not -type d | head -n 5 | tr '\n' ' ')"
echo "the package installs, runs from elsewhere and goes without a trace: $(basename "$deb"), $((shipped)) guitars"
