"""Reads a CSV file with Python's csv module, strictly, and prints its rows as JSON.

The separator of cells and the encoding may follow the name of the file.
"""

import csv
import json
import sys

path, separator, encoding = (sys.argv[1:] + [",", "utf-8"])[:3]
with open(path, encoding=encoding, newline="") as file:
    rows = list(csv.reader(file, strict=True, delimiter=separator))
json.dump(rows, sys.stdout)
