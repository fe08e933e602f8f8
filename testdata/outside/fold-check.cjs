// Reads a FOLD file with two independent npm packages and prints what they find
// about each frame: "fold" builds the faces from the edges and folds the paper
// flat; rabbit-ear checks the theorems of Kawasaki and Maekawa at every vertex
// and folds the paper flat as well.
const fs = require("fs");
const FOLD = require("fold");
const ear = require("rabbit-ear");

const copy = (value) => JSON.parse(JSON.stringify(value));
const file = JSON.parse(fs.readFileSync(process.argv[2], "utf8"));
const frames = [file, ...(file.file_frames || [])];

const result = frames.map((frame) => {
  const sheet = { vertices_coords: frame.vertices_coords, edges_vertices: frame.edges_vertices };
  const byFold = copy(sheet);
  FOLD.convert.edges_vertices_to_faces_vertices(byFold);
  const paper = copy(frame);
  FOLD.convert.faces_vertices_to_faces_edges(paper);
  const closureError = FOLD.convert.flatFoldedGeometry(paper);

  const graph = ear.origami(copy(frame));
  graph.populate();
  return {
    faces: byFold.faces_vertices.length,
    kawasaki: ear.singleVertex.validateKawasaki(graph),
    maekawa: ear.singleVertex.validateMaekawa(graph),
    closureError,
    foldedByFold: paper.vertices_flatFoldCoords,
    foldedByRabbitEar: ear.graph.makeVerticesCoordsFlatFolded(graph),
  };
});
console.log(JSON.stringify(result));
