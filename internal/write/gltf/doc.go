// Package gltf writes a [scene.Scene] as glTF 2.0 in its binary form (GLB).
//
// In: meshes, materials and objects in millimetres, Z up. Out: one file in
// metres, Y up, as the format asks: (x, y, z) becomes (x, z, −y)/1000. Points are
// float32. The same scene gives the same bytes.
//
// Each object is a node with its address, mark and name as extras; readers may
// change names, extras they keep. Equal solids share their data. A mesh is one
// primitive of triangles, with the addresses of its faces as extras
// {"faces": [["face.top", first triangle, count], …]}, and one of lines for its
// edges. Meshes without normals are flat.
//
// The package knows scenes and nothing else.
package gltf
