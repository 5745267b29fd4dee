#!/usr/bin/env python3
"""Holds manuals/design-file.schema.json against what the reader takes, by a validator of other hands.

usage: schema_check.py DOOR

Every layout is in order by the schema. A hostile file that is plain TOML and wrong in its keys or sections alone is
refused by it; and what it refuses, the reader refuses too. DOOR is the program of tests/tools/door.cpp.
"""
import json
import subprocess
import sys
import tomllib
from datetime import date, datetime, time
from pathlib import Path

import jsonschema

PROJECT = Path(__file__).resolve().parents[2]
KEY_CODES = {"file.key", "file.section"}
FEWEST_OF_KEYS, FEWEST_REFUSED = 12, 40


def as_json(value):
    """TOML as JSON data: what TOML alone has becomes text."""
    if isinstance(value, dict):
        return {key: as_json(one) for key, one in value.items()}
    if isinstance(value, list):
        return [as_json(one) for one in value]
    return value.isoformat() if isinstance(value, (date, datetime, time)) else value


def data_of(text):
    """A file's data, or None where it is no TOML: the reader mends what this parser refuses."""
    try:
        return as_json(tomllib.loads(text))
    except tomllib.TOMLDecodeError:
        return None


def problems_of(door, texts):
    """What the reader says of each text; an answer has no problems."""
    requests = [json.dumps({"command": "check", "design": text}) for text in texts]
    out = subprocess.run([door], input="\n".join(requests) + "\n", capture_output=True, text=True, check=True).stdout
    return [json.loads(answer).get("problems", []) for answer in out.split("\0")[:-1]]


def main(door):
    validator = jsonschema.Draft7Validator(json.loads((PROJECT / "manuals/design-file.schema.json").read_text()))
    validator.check_schema(validator.schema)
    paths = sorted(PROJECT.glob("layouts/*.toml")) + sorted(PROJECT.glob("tests/*/*.toml"))
    texts = {path: path.read_text(encoding="utf-8", errors="replace") for path in paths}
    data = {path: data_of(text) for path, text in texts.items()}
    plain = [path for path in paths if data[path] is not None]
    said = dict(zip(plain, problems_of(door, [texts[path] for path in plain])))
    faults, right, refused, of_keys = [], 0, 0, 0
    for path in plain:
        name, errors = path.relative_to(PROJECT), list(validator.iter_errors(data[path]))
        only_keys = bool(said[path]) and {problem.get("code") for problem in said[path]} <= KEY_CODES
        right += not errors
        refused += bool(errors)
        of_keys += only_keys
        if errors and not said[path]:
            faults.append(f"{name}: the reader takes it, the schema does not: {errors[0].json_path} "
                          f"{errors[0].message}")
        if only_keys and not errors:
            faults.append(f"{name}: the schema takes it, the reader says: {said[path][0]['sentence']}")
    if of_keys < FEWEST_OF_KEYS:
        faults.append(f"only {of_keys} files are wrong in their keys alone: the codes may have changed")
    if refused < FEWEST_REFUSED:
        faults.append(f"only {refused} files are refused: wrong keys, sections, kinds of value and choices should be")
    print("\n".join(faults) or f"schema: {len(plain)} files, {right} in order and {refused} refused, {of_keys} of them "
          "for their keys alone; no refusal that the reader does not share")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
