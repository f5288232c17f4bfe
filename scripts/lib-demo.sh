# Parts of scripts/demo: the build, the numbers, the words. Every number spoken is read from what was just computed.

build_quickly() {
    local plugin=OFF
    # A build folder that makes the plugin already goes on making it.
    ! grep -Eqs '^COLDIRON_PLUGIN:[A-Z]*=ON' build/CMakeCache.txt || plugin=ON
    export CCACHE_SLOPPINESS=pch_defines,time_macros
    cmake --preset release -DCOLDIRON_PLUGIN=$plugin >/dev/null
    cmake --build build --target coldiron demo_take
}

title_of() { sed -n 's/.*"title": "\(.*\)",$/\1/p' "$1"; }

# number FOLDER OPTION JQ-PATH [FORMAT]: one figure of `coldiron compare --json`
number() {
    local value
    value=$(jq -r --arg o "$2" ".columns[] | select (.option == \$o) | $3" "$1/compare.json")
    if [[ $value == null || -z $value ]]; then
        echo "scripts/demo: compare says nothing of $3 for option $2 in $1" >&2
        printf MISSING
        return
    fi
    printf "${4:-%+.1f}" "$value" | sed 's/^-\(0\(\.0*\)\{0,1\}\)$/+\1/'
}

# hum_below FOLDER OPTION: how far the hum of the noisy room lies below the playing, from the two renderings [dB]
hum_below() { build/demo_take --hum "$1/$2.wav" "$1/noisy-room/$2.wav"; }

# level_and_clarity JOB: for each option "LETTER LEVEL CLARITY", from the response the take meets: level at 500 Hz and clarity
# re the take, in dB
level_and_clarity() {
    build/coldiron compare "$1" --json | jq -r '.columns[] | select (.option != "now") | "\(.option) \(.level_db) \(.clarity_db)"'
}

# The 2 x 2 of ordinary or independent volume against tone on the input or output side, knob by knob.
knob_table() {
    local job=$1/hum-4-knobs-rolled-down.json letter knob
    printf '   %-48s' "volume knob at"
    printf '%16s' 10 8 5 2 0
    echo
    for knob in 10 8 5 2 0; do
        sed "s/\"bridge-volume\": 5/\"bridge-volume\": $knob/" "$job" >"$1/.knob.json"
        level_and_clarity "$1/.knob.json" >"$1/.knob-$knob.txt"
    done
    for letter in A B C D; do
        printf '   %-48s' "$(jq -r --arg o $letter '.columns[] | select (.option == $o) | .name | sub ("Volume 5: "; "")' "${job%.json}/compare.json")"
        for knob in 10 8 5 2 0; do
            printf '%16s' "$(cat "$1/.knob-10.txt" "$1/.knob-$knob.txt" | awk -v o=$letter '$1 == o { if (n++ == 0) { l = $2; c = $3 } else if ($3 == "null") printf "silent"; else printf "%.1f / %+.1f", $2 - l, $3 - c }')"
        done
        echo
    done
    rm -f "$1"/.knob.json "$1"/.knob-*.txt
}

say_in_words() {
    local d1=$1/hum-1-bridge-pickup d2=$1/hum-2-neck-and-both d3=$1/hum-3-both-in-series-and-phase
    local d4=$1/hum-4-knobs-rolled-down d5=$1/hum-5-volume-at-zero d6=$1/hum-6-the-finished-guitar d7=$1/hum-7-true-single-coils
    cat <<WORDS

What was made
   $1/demo-take.wav       the take; every WAV below is this take through another wiring
   $1/hum-N-.../A.wav ... each option at its true level; now.wav is the take as recorded; truth/ holds what each
                                     option truly is, made by another route
   .../noisy-room/                   the same with the room's hum (jobs 1, 2, 7);  hum-1-.../as-loud/ at equal loudness
   .../compare.txt                   the table of each job
   Figures are on a synthesized take and generic pickups ("assumed"): meter readings of the guitar on the bench make them surer.

What to listen for, gains and costs
1 The bridge pickup (hum-1-bridge-pickup)
   B, parallel: brighter and thinner. The resonance moves from $(number "$d1" now .peak_hz %.0f) to $(number "$d1" B .peak_hz %.0f) Hz, and it stays quiet:
     in the noisy room the hum lies $(hum_below "$d1" B) dB below the playing ($(hum_below "$d1" now) dB as it is). The cost: $(number "$d1" B .loudness_lu) LU in loudness.
   C, split: $(number "$d1" C .loudness_lu) LU, resonance $(number "$d1" C .peak_hz %.0f) Hz, and the hum of a single coil: $(hum_below "$d1" C) dB below the playing. D leaves the
     other coil open instead of shorted: $(number "$d1" D .peak_hz %.0f) Hz, $(number "$d1" D .loudness_lu) LU, hum $(hum_below "$d1" D) dB below. Play noisy-room/B, C, D in turn.
     (The coils of a pickup are taken to differ by 2 % in turns, as real ones do: quiet, not silent.)
   Back to series the level jumps by $(awk -v x="$(number "$d1" B .level_db)" 'BEGIN { printf "%.1f", -x }') dB from parallel, by $(awk -v x="$(number "$d1" D .level_db)" 'BEGIN { printf "%.1f", -x }') dB from the split.
2 Neck, and both (hum-2-neck-and-both)
   A and B, neck in series and in parallel: $(number "$d2" A .loudness_lu) and $(number "$d2" B .loudness_lu) LU; warmer, and the parallel one gives back some air.
   C to F, both: D (both in parallel) is $(number "$d2" D .loudness_lu) LU; E keeps the neck full and the bridge clear, $(number "$d2" E .loudness_lu) LU; F the
     other way round, $(number "$d2" F .loudness_lu) LU. A pickup in parallel loads the other more than one in series: the balance shifts to it.
3 Both in series, and out of phase (hum-3-both-in-series-and-phase)
   B, both in series: $(number "$d3" B .loudness_lu) LU re the take, $(number "$d3" A .loudness_lu) for both in parallel; louder and thicker, and darker: -3 dB at $(number "$d3" B .corner_hz %.0f)
     instead of $(number "$d3" A .corner_hz %.0f) Hz. C, bridge reversed: $(number "$d3" C .loudness_lu) LU, thin and hollow, for a break more than a song; trust its
     character ($(number "$d3" C .sure.playing %s)), not single notes. D, reversed alone, is the same sound as the take: $(number "$d3" D .loudness_lu) LU.
4 Bridge volume at 5 (hum-4-knobs-rolled-down; level / clarity, both in dB re knob 10)
$(knob_table "$1")
   A against B: with the tone on the output side the volume at 5 stays clearer. With independent volumes (C, D) the level
     stays up and it grows dull sooner as the knob comes down, tone on the output or not: that is their price.
   E to H, volume and tone at 5: $(number "$d4" E .loudness_lu), $(number "$d4" F .loudness_lu), $(number "$d4" G .loudness_lu), $(number "$d4" H .loudness_lu) LU.
5 One volume at zero in the middle (hum-5-volume-at-zero)
   Ordinary: neck at 0 $(number "$d5" B .level_db %+.0f) dB, bridge at 0 $(number "$d5" C .level_db %+.0f) dB: either one mutes the guitar. Independent: $(number "$d5" E .level_db %+.0f) and $(number "$d5" F .level_db %+.0f) dB:
     the other pickup plays on.
6 The finished guitar (hum-6-the-finished-guitar)
   A to F at 10 sound as above ($(number "$d6" A .loudness_lu) LU in series, $(number "$d6" B .loudness_lu) in parallel). G, parallel at 5: $(number "$d6" G .loudness_lu) LU;
     H, both in parallel with the neck at 0: $(number "$d6" H .loudness_lu) LU, where the ordinary wiring went silent.
7 Against true single coils (hum-7-true-single-coils)
   A, B, C: single coils at the bridge, neck, both: resonance $(number "$d7" A .peak_hz %.0f) Hz at the bridge and hum $(hum_below "$d7" A) dB below the playing;
     C, both, $(hum_below "$d7" C) dB. D, this guitar in parallel: $(number "$d7" D .peak_hz %.0f) Hz and $(hum_below "$d7" D) dB. Close in brightness, without the hum.

The plugin (VST3, LV2) and the standalone app: scripts/install plugin && cmake --preset release -DCOLDIRON_PLUGIN=ON && cmake --build build
WORDS
}
