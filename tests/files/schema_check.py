"""Checks the schema of the prescription file with an independent validator (python3-jsonschema):
it accepts every demo prescription and refuses each of them once something is spoilt."""
import copy
import json
import pathlib
import sys

import jsonschema

schema_file, folder = sys.argv[1:]
schema = json.loads(pathlib.Path(schema_file).read_text(encoding="utf-8"))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)

spoilers = {
    "unknown field": lambda p: p.update({"colour": "blue"}),
    "no arch": lambda p: p.pop("arch"),
    "another format": lambda p: p.update({"format": "other"}),
    "bare number": lambda p: p["clasps"][0]["undercut"].update({"depth": 0.25}),
    "another unit": lambda p: p["clasps"][0]["undercut"].update({"depth": "0.010 in"}),
    "no such tooth": lambda p: p["clasps"][0].update({"tooth": "99"}),
    "no such kind": lambda p: p["clasps"][0].update({"kind": "magic"}),
    "tooth missing from a clasp": lambda p: p["clasps"][0].pop("tooth"),
}

files = sorted(pathlib.Path(folder).glob("*.json"))
assert len(files) >= 8, f"only {len(files)} prescriptions in {folder}"
checks = 0
for file in files:
    prescription = json.loads(file.read_text(encoding="utf-8"))
    validator.validate(prescription)
    for name, spoil in spoilers.items():
        spoilt = copy.deepcopy(prescription)
        spoil(spoilt)
        assert not validator.is_valid(spoilt), f"{file.name}: accepted with {name}"
        checks += 1
print(f"{len(files)} prescriptions accepted, {checks} spoilt ones refused")
