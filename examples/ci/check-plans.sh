#!/bin/sh
# Checks every plan below a folder, saves what was found as SARIF beside a copy of the report, and exits with the worst
# answer of all: 3 a fault of the program, 2 a plan that could not be read, 1 something that fails, 0 nothing that fails.
#
#   sh check-plans.sh [FOLDER] [OUT]
#
# FOLDER   where to look for files called plan.yaml or *.plan.yaml (default: .)
# OUT      where the reports go (default: plan-reports)
# SIGHTRAIL  the command, if it is not on the path:  SIGHTRAIL="npx sightrail" sh check-plans.sh

set -u

folder=${1:-.}
out=${2:-plan-reports}
command=${SIGHTRAIL:-sightrail}
worst=0
list=$(mktemp) || exit 3
trap 'rm -f "$list"' EXIT

mkdir -p "$out" || exit 3
find "$folder" -type d \( -name node_modules -o -name .git \) -prune -o \
  -type f \( -name plan.yaml -o -name '*.plan.yaml' \) -print | sort > "$list"

if [ ! -s "$list" ]; then
  echo "no plan found below $folder" >&2
  exit 2
fi

while IFS= read -r plan; do
  # examples/heather-garth/plan.yaml becomes examples__heather-garth__plan
  name=$(printf '%s' "${plan#./}" | sed -e 's|^/*||' -e 's|\.yaml$||' -e 's|/|__|g')
  # $command is left unquoted on purpose: it may be two words, such as "npx sightrail".
  $command check "$plan" --save "$out/$name.sarif" --save "$out/$name.txt" > /dev/null
  code=$?
  case $code in
    0) words="nothing fails" ;;
    1) words="something fails, or a danger is not shown to be met" ;;
    2) words="could not be read as it was meant" ;;
    *) words="the program failed" ; code=3 ;;
  esac
  echo "$code  $plan: $words"
  [ "$code" -gt "$worst" ] && worst=$code
done < "$list"

exit "$worst"
