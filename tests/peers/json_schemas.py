"""What `fitwright` prints as JSON, held against the published schemas.

Usage: json_schemas.py FITWRIGHT PLAN-OR-FOLDER...

Every plan is put through `check`, `sheet`, `torques` and `kit` with `--as json`;
what they print must be valid by the schemas in `crates/sheet/schema/`, as the reference implementation
of JSON Schema for Python reads them.
"""

import json
import pathlib
import subprocess
import sys

import jsonschema

SCHEMAS = pathlib.Path(__file__).parents[2] / "crates" / "sheet" / "schema"


def validator(name):
    schema = json.loads((SCHEMAS / f"{name}.schema.json").read_text(encoding="utf-8"))
    kind = jsonschema.validators.validator_for(schema)
    kind.check_schema(schema)
    return kind(schema)


def plans(arguments):
    for argument in map(pathlib.Path, arguments):
        yield from sorted(argument.rglob("*.rebuild")) if argument.is_dir() else [argument]


def main(program, arguments):
    wrong = 0
    seen = 0
    validators = {name: validator(name) for name in ("check", "sheet", "torques", "kit")}
    for plan in plans(arguments):
        for name, by in validators.items():
            ran = subprocess.run([program, name, str(plan), "--as", "json"], capture_output=True, check=False)
            if ran.returncode == 2:
                # A plan made to be unreadable has nothing to print.
                continue
            seen += 1
            for error in by.iter_errors(json.loads(ran.stdout)):
                wrong += 1
                print(f"{plan}: {name}: {error.json_path}: {error.message}", file=sys.stderr)
    print(f"{seen} outputs held against the schemas, {wrong} faults")
    return 1 if wrong or not seen else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2:]))
