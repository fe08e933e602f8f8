// Reads a DXF file with dxf-parser and prints as JSON the unit, the layers and how
// many entities of each kind stand on each layer.
"use strict";

const fs = require("fs");
const DxfParser = require("dxf-parser").default ?? require("dxf-parser");

const file = new DxfParser().parseSync(fs.readFileSync(process.argv[2], "utf8"));
const counts = {};
for (const entity of file.entities) {
  const key = `${entity.layer} ${entity.type}`;
  counts[key] = (counts[key] ?? 0) + 1;
}
console.log(
  JSON.stringify({
    version: file.header.$ACADVER,
    units: file.header.$INSUNITS,
    layers: Object.keys(file.tables.layer.layers),
    counts,
  }),
);
