# Completion of floatwright for bash; installed as floatwright in the directory of bash's completions.
# It reads river.json for the ids of gauges and spots and never runs the program.

_floatwright_directory() {
  local i directory=${FLOATWRIGHT_CONFIG:-${XDG_CONFIG_HOME:-$HOME/.config}/floatwright}
  for ((i = 1; i < COMP_CWORD; i++)); do
    [[ ${COMP_WORDS[i]} == --config ]] || continue
    directory=${COMP_WORDS[i + 1]}
    [[ $directory == '=' ]] && directory=${COMP_WORDS[i + 2]}
  done
  printf '%s\n' "${directory/#\~/$HOME}"
}

# Each entry of the list $1 ("spots") that begins with its id, as the examples write it.
_floatwright_ids() {
  local river
  river=$(_floatwright_directory)/river.json
  [[ -r $river ]] || return 0
  sed -n '/"'"$1"'"[[:space:]]*:/,/^[[:space:]]*\],\{0,1\}[[:space:]]*$/s/.*{[[:space:]]*"id"[[:space:]]*:[[:space:]]*"\([^"]*\)".*/\1/p' "$river"
}

# Words of a list with commas: what stands before the last comma is kept.
_floatwright_list() {
  local before=
  [[ $cur == *,* ]] && before=${cur%,*},
  mapfile -t COMPREPLY < <(compgen -P "$before" -W "$1" -- "${cur##*,}")
}

_floatwright_words() { mapfile -t COMPREPLY < <(compgen -W "$1" -- "$cur"); }

_floatwright_files() {  # -d: directories only, -f: all
  mapfile -t COMPREPLY < <(compgen "$1" -- "$cur")
  compopt -o filenames 2>/dev/null || true  # not while sourced by hand
}

_floatwright_value() {  # of the option $1 in the command $2; false where the option takes none
  case $1 in
    --config | --out | --dir) _floatwright_files -d ;;
    --boats | --case) _floatwright_files -f ;;
    --payload) if [[ $2 == start || $2 == season || $2 == tune ]]; then _floatwright_files -d; else _floatwright_files -f; fi ;;
    --as)
      case $2 in
        plan) _floatwright_list 'plan sheet mail ashore json calendar map' ;;
        'show readings') _floatwright_words 'csv json' ;;
        'show river') _floatwright_words 'text json geojson svg' ;;
        'show skill' | log | tune) _floatwright_words 'text json' ;;
        season) _floatwright_words 'text json svg png' ;;
        sink) _floatwright_list 'text json pdf svg png' ;;
      esac ;;
    --at) _floatwright_words "$(_floatwright_ids spots)" ;;
    --date) if [[ $2 == log ]]; then _floatwright_words 'today yesterday'; else _floatwright_words 'today tomorrow'; fi ;;
    --bottom) _floatwright_words 'Y N' ;;
    --paper) _floatwright_words 'letter a4' ;;
    --units) _floatwright_words 'us metric' ;;
    --service) _floatwright_words 'ea-flood ea-hydrology foen hubeau nve nwps nws-weather usgs-legacy usgs-rdb usgs-water-data usgs-waterml1 waterml2 wsc-datamart wsc-geomet wsc-realtime' ;;
    --method) _floatwright_words 'swing strip indicator tight_line dry' ;;
    --platform) _floatwright_words 'drifting held anchored wading' ;;
    --bed) _floatwright_words 'sand gravel cobble boulder wood' ;;
    --now | --since | --line | --tip | --leader | --fly | --shot | --rod | --depth | --speed | --mean | --thread | --profile) ;;
    --temperature | --technique | --cast | --count | --where | --hour | --water | --retract | --strip | --layer | --lake) ;;
    *) return 1 ;;
  esac
}

_floatwright() {
  local cur=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command=
  COMPREPLY=()
  if [[ $cur == '=' ]]; then
    cur=
  elif [[ $before == '=' ]]; then
    before=${COMP_WORDS[COMP_CWORD - 2]}
  fi
  ((COMP_CWORD > 1)) && command=${COMP_WORDS[1]}
  [[ $command == show ]] && ((COMP_CWORD > 2)) && command="show ${COMP_WORDS[2]}"
  _floatwright_value "$before" "$command" && return
  case $command in
    '') _floatwright_words 'start plan check fetch sink season show log tune --help --version' ;;
    start) _floatwright_words '--dir --payload --now --help' ;;
    plan) _floatwright_words '--config --date --now --offline --as --at --boats --paper --send --units --out --quiet --verbose --help' ;;
    check) _floatwright_words '--config --mail --help' ;;
    fetch) _floatwright_words '--config --since --now --quiet --verbose --help' ;;
    sink) _floatwright_words '--line --tip --leader --fly --shot --rod --depth --speed --mean --thread --profile --bed --temperature --method --platform --technique --cast --count --strip --compare --still --layer --lake --case --as --paper --config --units --out --quiet --verbose --help' ;;
    season) _floatwright_words '--config --since --payload --now --as --units --out --quiet --verbose --help' ;;
    show) _floatwright_words 'readings river skill --help' ;;
    'show river') _floatwright_words '--config --date --now --offline --as --units --out --quiet --verbose --help' ;;
    'show skill') _floatwright_words '--config --as --units --help' ;;
    log)
      if [[ $cur == -* ]]; then
        _floatwright_words '--config --date --now --where --hour --depth --speed --bottom --fly --rod --count --water --retract --show --as --units --quiet --help'
      else
        _floatwright_files -f
      fi ;;
    tune)
      if [[ $cur == -* ]]; then
        _floatwright_words '--config --payload --now --as --units --out --quiet --help'
      else
        _floatwright_words 'geometry routing forecast'
      fi ;;
    'show readings')
      if [[ $cur == -* ]]; then
        _floatwright_words '--config --since --now --units --payload --service --as --help'
      else
        _floatwright_words "$(_floatwright_ids gauges)"
      fi ;;
  esac
}

complete -F _floatwright floatwright
