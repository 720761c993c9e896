#!/bin/bash
# Builds the image without a container engine's service, starts it as a careful school would, and asks it one cell.
# As root; needs Debian's packages buildah podman runc mmdebstrap curl. Everything lies in a temporary folder that
# is removed at the end. PYTHON_IMAGE names another base image; without it one is made from Debian's packages.
set -euo pipefail
clone=$(cd "$(dirname "$0")/.." && pwd)
folder=$(mktemp -d "${TMPDIR:-/tmp}/ionwright-image.XXXXXX")
name=ionwright-check-$$
image=localhost/ionwright:check
base=${PYTHON_IMAGE:-localhost/base-python:check}
# not its complaints that there is no systemd to time the health check: it is run by hand below
podman=(podman --log-level fatal)

export BUILDAH_ISOLATION=chroot CONTAINERS_CONF=$folder/containers.conf CONTAINERS_STORAGE_CONF=$folder/storage.conf
cat > "$CONTAINERS_CONF" <<'CONF'
[containers]
default_ulimits = ["nofile=4096:4096", "nproc=4096:4096"]
[engine]
runtime = "runc"
cgroup_manager = "cgroupfs"
events_logger = "file"
CONF
cat > "$CONTAINERS_STORAGE_CONF" <<CONF
[storage]
driver = "overlay"
graphroot = "$folder/storage"
runroot = "$folder/run"
CONF

clean_up() {
    local code=$?
    if [ "$code" -ne 0 ]; then podman logs "$name" 2>&1 | tail -n 40 || true; fi
    podman rm --force --time 3 "$name" >/dev/null 2>&1 || true
    # a build that broke off leaves its working container mounted
    buildah rm --all >/dev/null 2>&1 || true
    awk -v under="$folder/" 'index($2, under) == 1 {print $2}' /proc/mounts | sort -r | while read -r mounted; do
        umount "$mounted" || true
    done
    rm -rf --one-file-system "$folder" || true
    if [ "$code" -eq 0 ]; then echo "image: all checks passed"; else echo "image: FAILED (exit $code)"; fi
}
trap clean_up EXIT

step() {  # step NAME SECONDS COMMAND...: run it within the time, and say how long it took
    local what=$1 limit=$2 start
    shift 2
    start=$(date +%s%N)
    timeout --kill-after 10 "$limit" "$@" || { echo "image: $what failed"; return 1; }
    echo "image: $what ($((($(date +%s%N) - start) / 1000000)) ms)"
}

make_base() {
    mmdebstrap --quiet --variant=minbase --include=python3,python3-venv,ca-certificates bookworm "$folder/base.tar" \
        2> "$folder/base.log" || { tail -n 20 "$folder/base.log"; return 1; }
    podman import --quiet "$folder/base.tar" "$base" > /dev/null
    rm "$folder/base.tar"
}
export -f make_base
export folder base

secret=()
if [ -n "${PIP_CERT:-}" ]; then secret=(--secret "id=ca,src=$PIP_CERT"); fi

[ -n "${PYTHON_IMAGE:-}" ] || step "base image from Debian's packages" 300 bash -euc make_base
step "build" 600 buildah bud --quiet --layers --network host --format docker "${secret[@]}" \
    --build-arg "PYTHON_IMAGE=$base" --file "$clone/docker/Dockerfile" --tag "$image" "$clone"

# the image's own HEALTHCHECK, run by hand: there may be no timer for it here
hardened=(--read-only --tmpfs /tmp:size=16m --cap-drop all --security-opt no-new-privileges
          --health-interval disable --memory 512m --pids-limit 64)

# without a word from the operator the image must not listen beyond itself
refused=0
timeout 60 "${podman[@]}" run --rm --name "$name" --network none "${hardened[@]}" "$image" 2> "$folder/refusal" || refused=$?
if [ "$refused" -ne 2 ] || ! grep -q "does not listen on 0.0.0.0" "$folder/refusal"; then
    cat "$folder/refusal"
    echo "image: expected the refusal with exit code 2, got $refused"
    exit 1
fi
echo "image: refuses to listen without IONWRIGHT_BEHIND"

# as compose.yaml starts it, but with no network at all: the service needs none
step "start" 60 "${podman[@]}" run --detach --name "$name" --network none "${hardened[@]}" \
    --env IONWRIGHT_BEHIND=container "$image"

health() { timeout 10 "${podman[@]}" healthcheck run "$name" > /dev/null 2>&1; }
for _ in $(seq 60); do
    if health; then break; fi
    sleep 0.5
done
health || { echo "image: not healthy in its time"; exit 1; }
echo "image: healthy"

step "confinement" 30 "${podman[@]}" exec "$name" python3 -c '
import os, pathlib
status = dict(line.split(":", 1) for line in pathlib.Path("/proc/1/status").read_text().splitlines())
assert os.getuid() == 10001, os.getuid()
assert int(status["CapEff"], 16) == 0, status["CapEff"]
assert status["NoNewPrivs"].strip() == "1", status["NoNewPrivs"]
for place in ("/", "/opt/venv"):
    try:
        pathlib.Path(place, "written").touch()
    except OSError:
        continue
    raise AssertionError(f"{place} can be written to")
'

step "one cell" 30 "${podman[@]}" exec "$name" python3 -c '
import json, urllib.request
bracket = {"electrolyte": "NiSO4", "concentration": "0.25 mol/dm3", "cathode": "steel", "anode": "nickel",
           "curriculum": "gcse"}
request = urllib.request.Request("http://127.0.0.1:9648/v1/predictions", json.dumps(bracket).encode(),
                                 {"Content-Type": "application/json"})
with urllib.request.urlopen(request, timeout=10) as answer:
    prediction = json.load(answer)
found = [prediction[electrode]["half_equation"]["ascii"] for electrode in ("cathode", "anode")]
print("image: cathode", found[0], "| anode", found[1])
assert found == ["Ni^2+ + 2e- -> Ni", "Ni -> Ni^2+ + 2e-"], found
'

step "stop" 30 "${podman[@]}" stop --time 10 "$name"
code=$(podman inspect "$name" --format '{{.State.ExitCode}}')
[ "$code" -eq 0 ] || { echo "image: ended with exit code $code after SIGTERM"; exit 1; }
