"""Check a sealed job and its PDF without Witnessmark: Python's standard library and the openssl command, nothing else.

    python3 verify_outside.py JOB

JOB is the folder of the job: journal.jsonl, job.toml, media/ and report/. Prints what was checked and names everything that
does not match; ends with status 1 then. What is checked, in the order it is printed:

1. Each line of journal.jsonl: its SHA-256 without its own ``hash`` is that hash, and each line names the one before it on
   the same device.
2. The last seal: its heads are lines of the journal, its root is their SHA-256, its Ed25519 signature is good (openssl).
3. job.toml and report.json have the hashes that the seal names; each file of media/ has the hash it is named by, and each
   file that the journal names is there.
4. The PDF holds the very report.json, and whatever signatures it bears cover it (openssl cms; whose they are is not asked).
"""

import hashlib
import json
import re
import subprocess
import sys
import tempfile
import zlib
from pathlib import Path

NONE = "0" * 64
ED25519 = bytes.fromhex("302a300506032b6570032100")  # RFC 8410: what stands before the 32 bytes of the key


def canonical(value):
    """RFC 8785, for what a journal holds: text, whole numbers, lists and objects with plain keys."""
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":")).encode("utf-8")


def sha256(data):
    return hashlib.sha256(data).hexdigest()


def openssl(*words):
    return subprocess.run(["openssl", *words], capture_output=True, check=False).returncode == 0


def check_journal(lines, wrong):
    seen = {}
    for number, entry in enumerate(lines, 1):
        own = sha256(canonical({k: v for k, v in entry.items() if k != "hash"}))
        if own != entry.get("hash"):
            wrong.append(f"journal.jsonl line {number}: its content is not what its hash says")
        if {"device", "hash", "prev", "n"} <= set(entry):
            seen.setdefault(entry["device"], {})[entry["hash"]] = entry
    for device, chain in seen.items():
        for entry in chain.values():
            if entry["prev"] != NONE and entry["prev"] not in chain:
                wrong.append(f"{device}: the entry before number {entry['n']} is missing or another one")
    return seen


def check_seal(entry, seen, job, wrong):
    body = entry["body"]
    for head in body["heads"]:
        if head["hash"] not in seen.get(head["device"], {}):
            wrong.append(f"{head['device']}: entry {head['n']}, which the seal covers, is not in the journal")
    if sha256(canonical(body["heads"])) != body["root"]:
        wrong.append("the root of the seal is not that of its heads")
    message = canonical({"act": "sealed", "v": 1, "body": {k: v for k, v in body.items() if k != "signature"}})
    with tempfile.TemporaryDirectory() as folder:
        key, said, signature = (Path(folder) / name for name in ("key.der", "message", "signature"))
        key.write_bytes(ED25519 + bytes.fromhex(body["key"]))
        said.write_bytes(message)
        signature.write_bytes(bytes.fromhex(body["signature"]))
        if not openssl(
            "pkeyutl",
            "-verify",
            "-pubin",
            "-keyform",
            "DER",
            "-inkey",
            str(key),
            "-rawin",
            "-in",
            str(said),
            "-sigfile",
            str(signature),
        ):
            wrong.append("the signature of the seal is not good")
    if sha256((job / "job.toml").read_bytes()) != body["facts"]:
        wrong.append("job.toml is not the one that was sealed")
    return body.get("report")


def check_media(lines, job, wrong):
    kept = {path.name.split(".")[0]: path for path in (job / "media").rglob("*") if path.is_file()}
    for name, path in kept.items():
        if len(name) == 64 and sha256(path.read_bytes()) != name:
            wrong.append(f"media/{path.name}: its content is not what its name says")
    for entry in lines:
        for name in entry.get("media", []):
            if name not in kept:
                wrong.append(f"media: {name} is named by entry {entry['id']} and is not there")
    return len(kept)


def check_pdf(path, report, wrong):
    data = path.read_bytes()
    streams = re.findall(rb"stream\r?\n(.*?)\r?\nendstream", data, re.DOTALL)
    for stream in streams:
        try:
            found = zlib.decompressobj().decompress(stream)
        except zlib.error:
            found = stream
        if sha256(found) == report:
            break
    else:
        wrong.append(f"{path.name} does not hold the report.json that was sealed")
    count = 0
    for match in re.finditer(rb"/ByteRange\s*\[\s*(\d+)\s+(\d+)\s+(\d+)\s+(\d+)\s*\]", data):
        a, b, c, d = map(int, match.groups())
        signature = bytes.fromhex(data[a + b : c].strip(b"<>").decode("ascii"))
        with tempfile.TemporaryDirectory() as folder:
            cms, signed = Path(folder) / "cms.der", Path(folder) / "signed"
            cms.write_bytes(signature.rstrip(b"\0") if signature[:1] != b"\x30" else _der(signature))
            signed.write_bytes(data[a : a + b] + data[c : c + d])
            if not openssl(
                "cms",
                "-verify",
                "-binary",
                "-inform",
                "DER",
                "-in",
                str(cms),
                "-content",
                str(signed),
                "-noverify",
                "-out",
                "/dev/null",
            ):
                wrong.append(f"{path.name}: signature {count + 1} does not cover what the file holds")
        count += 1
    return count


def _der(data):
    """The first object of DER bytes; what fills the space after it is left out."""
    length, start = data[1], 2
    if length & 0x80:
        size = length & 0x7F
        length, start = int.from_bytes(data[2 : 2 + size], "big"), 2 + size
    return data[: start + length]


def main(folder):
    job, wrong = Path(folder), []
    lines = []
    for number, line in enumerate((job / "journal.jsonl").read_bytes().splitlines(), 1):
        try:
            lines.append(dict(json.loads(line)))
        except ValueError:
            wrong.append(f"journal.jsonl line {number} cannot be read")
    seen = check_journal(lines, wrong)
    print(f"{len(lines)} entries of {len(seen)} devices")
    seals = [entry for entry in lines if entry.get("act") == "sealed"]
    if not seals:
        wrong.append("there is no seal")
    else:
        last = max(seals, key=lambda entry: entry["body"]["edition"])
        report = check_seal(last, seen, job, wrong)
        print(f"seal of edition {last['body']['edition']}, key {last['body']['key'][:16]}")
        data = job / "report" / "report.json"
        if not data.is_file() or sha256(data.read_bytes()) != report:
            wrong.append("report.json is missing or not the one that was sealed")
        pdf = job / "report" / "report.pdf"
        if pdf.is_file():
            print(f"report.pdf with {check_pdf(pdf, report, wrong)} signatures")
    print(f"{check_media(lines, job, wrong)} files of media")
    for line in wrong:
        print(f"DOES NOT MATCH: {line}")
    print("Everything matches." if not wrong else f"{len(wrong)} do not match.")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1] if len(sys.argv) > 1 else "."))
