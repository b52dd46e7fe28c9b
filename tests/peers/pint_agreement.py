#!/usr/bin/env python3
"""Holds the workshop's unit table against pint's.

    pint_agreement.py PATH-TO-THE-convert-EXAMPLE [CASES]

The units are asked of the binary itself, so that a unit added there without a
partner here fails. Every pair of units that measure the same thing is tried
about equally often, with seeded random values over twelve powers of ten, and
temperatures both as points and as differences. Two figures agree within one
part in 10^12 (for points on a temperature scale, of the larger of figure and
zero shift). Exits with 1 on any disagreement.
"""

import random
import subprocess
import sys

import pint

SEED = 20_240_611
CASES = 10_000
AGREE_WITHIN = 1e-12

# Our spelling, and the same unit in pint's words.
PINT = {
    "N.m": "newton * meter",
    "cN.m": "centinewton * meter",
    "dN.m": "decinewton * meter",
    "daN.m": "decanewton * meter",
    "kN.m": "kilonewton * meter",
    "kgf.m": "kilogram_force * meter",
    "kgf.cm": "kilogram_force * centimeter",
    "lbf.ft": "pound_force * foot",
    "lbf.in": "pound_force * inch",
    "ozf.in": "ounce_force * inch",
    "N": "newton",
    "kN": "kilonewton",
    "daN": "decanewton",
    "kgf": "kilogram_force",
    "lbf": "pound_force",
    "ozf": "ounce_force",
    "Pa": "pascal",
    "kPa": "kilopascal",
    "MPa": "megapascal",
    "GPa": "gigapascal",
    "bar": "bar",
    "mbar": "millibar",
    "psi": "pound_force / inch ** 2",
    "ksi": "1000 * pound_force / inch ** 2",
    "N/mm2": "newton / millimeter ** 2",
    "kgf/cm2": "kilogram_force / centimeter ** 2",
    "mmHg": "millimeter_Hg",
    "inHg": "inch_Hg",
    "m": "meter",
    "cm": "centimeter",
    "mm": "millimeter",
    "µm": "micrometer",
    "in": "inch",
    "thou": "thou",
    "ft": "foot",
    "mm2": "millimeter ** 2",
    "cm2": "centimeter ** 2",
    "in2": "inch ** 2",
    "kg": "kilogram",
    "g": "gram",
    "t": "metric_ton",
    "lb": "pound",
    "oz": "ounce",
    "L": "liter",
    "cL": "centiliter",
    "dL": "deciliter",
    "mL": "milliliter",
    "cm3": "centimeter ** 3",
    "in3": "inch ** 3",
    "us-pint": "pint",
    "us-quart": "quart",
    "us-gallon": "gallon",
    "us-fl-oz": "fluid_ounce",
    "imp-pint": "imperial_pint",
    "imp-quart": "imperial_quart",
    "imp-gallon": "imperial_gallon",
    "imp-fl-oz": "imperial_fluid_ounce",
    "°C": "degree_Celsius",
    "°F": "degree_Fahrenheit",
    "K": "kelvin",
    "deg": "degree",
    "rad": "radian",
    "turn": "turn",
    "s": "second",
    "min": "minute",
    "h": "hour",
    "days": "day",
    "weeks": "week",
    "months": "month",
    "years": "year",
    "km": "kilometer",
    "mi": "mile",
    "%": "percent",
}

DIFFERENCE = {"°C": "delta_degree_Celsius", "°F": "delta_degree_Fahrenheit", "K": "kelvin"}


def units_of(binary):
    """What the binary measures, as a list of lists of spellings."""
    answer = subprocess.run([binary, "units"], capture_output=True, check=True, encoding="utf-8")
    groups = {}
    for line in answer.stdout.splitlines():
        spelling, dimension = line.rsplit(" ", 1)
        groups.setdefault(dimension, []).append(spelling)
    return groups


def all_pairs(groups):
    """Every pair to try: from, to, whether a difference, as a unit to pint."""
    pairs = []
    for dimension, spellings in groups.items():
        for a in spellings:
            for b in spellings:
                pairs.append((a, b, False))
                if dimension == "Temperature":
                    pairs.append((a, b, True))
    return pairs


def random_figure(generator, point):
    """A figure over twelve powers of ten; a point on a scale stays near the bench."""
    if point:
        return generator.uniform(-200.0, 1500.0)
    sign = generator.choice((1.0, 1.0, 1.0, -1.0))
    return sign * 10.0 ** generator.uniform(-6.0, 6.0)


def main():
    if len(sys.argv) not in (2, 3):
        print(__doc__.strip(), file=sys.stderr)
        return 2
    binary = sys.argv[1]
    wanted = int(sys.argv[2]) if len(sys.argv) == 3 else CASES
    groups = units_of(binary)
    strangers = [unit for units in groups.values() for unit in units if unit not in PINT]
    if strangers:
        print("no partner here for: " + ", ".join(strangers), file=sys.stderr)
        return 1

    registry = pint.UnitRegistry()
    pairs = all_pairs(groups)
    generator = random.Random(SEED)
    cases = []
    while len(cases) < wanted:
        generator.shuffle(pairs)
        cases.extend(
            (random_figure(generator, a in DIFFERENCE and not difference), a, b, difference)
            for a, b, difference in pairs[: wanted - len(cases)]
        )

    lines = "".join(
        f"{figure!r} {a} {b}{' difference' if difference else ''}\n"
        for figure, a, b, difference in cases
    )
    answer = subprocess.run([binary], input=lines, capture_output=True, check=True, encoding="utf-8")
    ours = answer.stdout.splitlines()
    if len(ours) != len(cases):
        print(f"{len(cases)} lines went in and {len(ours)} came out", file=sys.stderr)
        return 1

    passed = failed = 0
    units = {name: registry.parse_expression(expression) for name, expression in PINT.items() if name not in DIFFERENCE}
    for (figure, a, b, difference), line in zip(cases, ours):
        if a in DIFFERENCE:
            names = DIFFERENCE if difference else PINT
            theirs = registry.Quantity(figure, names[a]).to(names[b]).magnitude
            shift = 0.0 if difference else 500.0
        else:
            theirs = figure * (units[a] / units[b]).to("dimensionless").magnitude
            shift = 0.0
        try:
            own = float(line)
        except ValueError:
            own = float("nan")
        if abs(own - theirs) <= AGREE_WITHIN * max(abs(theirs), shift):
            passed += 1
        else:
            failed += 1
            if failed <= 20:
                kind = " (difference)" if difference else ""
                print(f"{figure!r} {a} to {b}{kind}: {line} here, {theirs!r} by pint")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
