#!/usr/bin/env bash
# Installs everything and runs all checks: packages, lint, build, tests. The last lines are the test runner's.
set -euo pipefail
cd "$(dirname "$0")/.."

# Programs that only the tests need, each with the Debian package that brings it: they measure and validate
# the PDFs, and open the site in two real browsers.
needed=(pdftoppm:poppler-utils qpdf:qpdf chromium-headless-shell:chromium-headless-shell firefox-esr:firefox-esr)
# Prints the packages of those that are not there.
lacking() {
  for pair in "${needed[@]}"; do command -v "${pair%%:*}" >/dev/null || echo "${pair##*:}"; done
}
mapfile -t missing < <(lacking)
if ((${#missing[@]} > 0)) && [[ $(id -u) -eq 0 ]] && command -v apt-get >/dev/null; then
  apt-get update -qq || true
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null || true
fi
# A whole Chromium stands in for its shell, at twice the work.
if command -v chromium >/dev/null; then needed=("${needed[@]/#chromium-headless-shell:*/chromium:chromium}"); fi
mapfile -t missing < <(lacking)
if ((${#missing[@]} > 0)); then
  echo "The tests need these packages: ${missing[*]}" >&2
  echo "Install them, on Debian with: sudo apt-get install ${missing[*]}" >&2
  exit 1
fi

npm ci --no-audit --no-fund
npm run lint
npm run build
exec npx vitest run --config tests/vitest.config.ts "$@"
