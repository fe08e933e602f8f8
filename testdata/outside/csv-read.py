"""Reads a CSV file with Python's csv module, strictly, and prints its rows as JSON."""

import csv
import json
import sys

with open(sys.argv[1], encoding="utf-8", newline="") as file:
    rows = list(csv.reader(file, strict=True))
json.dump(rows, sys.stdout)
