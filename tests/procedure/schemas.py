"""The shipped files keep the JSON Schemas for editors (assets/schemas), which keep JSON Schema draft 7 themselves.

   schemas.py TOP_FOLDER
"""

import copy
import json
import sys
import tomllib
from pathlib import Path

from jsonschema import Draft7Validator

top = Path(sys.argv[1])
schemas = {kind: json.loads((top / f"assets/schemas/{kind}.schema.json").read_text())
           for kind in ("flow", "scenario", "aircraft")}


def kind_of(file):
    if file.name == "aircraft.toml":
        return "aircraft"
    return "scenario" if file.parent.name == "scenarios" else "flow"


failed, checked = [], {kind: 0 for kind in schemas}
for schema in schemas.values():
    Draft7Validator.check_schema(schema)
files = [file for pattern in ("*/*.toml", "*/scenarios/*.toml") for file in sorted((top / "procedures").glob(pattern))
         if file.name not in ("practice.toml", "ground.toml")]
for file in files:
    kind = kind_of(file)
    checked[kind] += 1
    document = tomllib.loads(file.read_text())
    validator = Draft7Validator(schemas[kind])
    failed += [f"{file}: {error.json_path}: {error.message}" for error in validator.iter_errors(document)]
    for key in schemas[kind]["required"]:
        lacking = copy.deepcopy(document)
        del lacking[key]
        if validator.is_valid(lacking):
            failed.append(f"{file}: keeps the schema without its '{key}'")
    if validator.is_valid(document | {"another": 1}):
        failed.append(f"{file}: keeps the schema with a key that nobody knows")
print("\n".join(failed) or f"checked {checked}")
sys.exit(bool(failed) or min(checked.values()) == 0)
