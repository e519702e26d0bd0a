#include "cad/ThreeMfFile.hpp"

#include <Model/COM/NMR_DLLInterfaces.h>
#include <gtest/gtest.h>

#include "export/CommandLine.hpp"
#include "input/PreparedFile.hpp"
#include "mesh/Mesh.hpp"

namespace sagitta {
namespace {

Mesh mesh_of(const std::string& preset, Stage stage) {
  const PreparedBoard ready = std::get<PreparedBoard>(prepare(test::preset_path(preset).string()));
  return make_mesh(lift(ready.plan(stage)));
}

/// The rules of the 3MF core specification 1.4.0, read with Python's own zip and XML: the package's parts and types,
/// the unit, closed and consistently turned triangles, the positive octant. Prints a line for each object.
constexpr const char* reader = R"(
import sys, zipfile, xml.etree.ElementTree as tree
core = '{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}'
package = zipfile.ZipFile(sys.argv[1])
assert package.testzip() is None
assert all(part.date_time == (2000, 1, 1, 0, 0, 0) for part in package.infolist()), 'the hour, or no date at all'
types = package.read('[Content_Types].xml').decode()
assert 'application/vnd.ms-package.3dmanufacturing-3dmodel+xml' in types
links = tree.fromstring(package.read('_rels/.rels'))
start = [l for l in links if l.get('Type') == 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel']
assert len(start) == 1 and start[0].get('Target') == '/3D/3dmodel.model'
model = tree.fromstring(package.read('3D/3dmodel.model'))
assert model.tag == core + 'model' and model.get('unit') == 'millimeter'
bases = {(g.get('id'), str(i)): b for g in model.iter(core + 'basematerials') for i, b in enumerate(g)}
items = {i.get('objectid'): i for i in model.iter(core + 'item')}
for thing in model.iter(core + 'object'):
    points = [tuple(float(v.get(k)) for k in 'xyz') for v in thing.iter(core + 'vertex')]
    faces = [tuple(int(t.get(k)) for k in ('v1', 'v2', 'v3')) for t in thing.iter(core + 'triangle')]
    assert len(faces) >= 4 and len(set(points)) == len(points)
    edges = [(f[i], f[(i + 1) % 3]) for f in faces for i in range(3)]
    assert len(set(edges)) == len(edges), 'an edge is used twice the same way'
    assert all((b, a) in set(edges) for a, b in edges[:50]) and {(b, a) for a, b in edges} == set(edges)
    volume = 0
    for f in faces:
        (ax, ay, az), (bx, by, bz), (cx, cy, cz) = (points[i] for i in f)
        volume += ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)
    move = [float(x) for x in items[thing.get('id')].get('transform').split()]
    assert move[:9] == [1, 0, 0, 0, 1, 0, 0, 0, 1]
    assert all(min(p[k] for p in points) + move[9 + k] >= -1e-5 for k in range(3)), 'outside the positive octant'
    base = bases[thing.get('pid'), thing.get('pindex')]
    print(thing.get('name'), base.get('name'), base.get('displaycolor'), len(faces), '%.6f' % (volume / 6))
)";

std::string read_by_rules(const std::string& bytes) {
  const test::ScratchFolder scratch;
  test::write_file(scratch / "a.3mf", bytes);
  test::write_file(scratch / "read.py", reader);
  const test::Outcome read =
      test::shell("/usr/bin/python3 '" + (scratch / "read.py").string() + "' '" + (scratch / "a.3mf").string() + "'");
  EXPECT_EQ(read.code, 0) << read.err;
  return read.out;
}

TEST(ThreeMfFile, KeepsTheRulesOfTheSpecification) {
  for (const char* preset : {"heron-six", "tern-inch-left"}) {
    const Mesh mesh = mesh_of(preset, Stage::board);
    std::istringstream line(read_by_rules(three_mf_bytes("a board", {{"board", "ebony", "#2b221e", mesh}})));
    std::string name, material, colour;
    std::size_t triangles = 0;
    double found = 0;
    line >> name >> material >> colour >> triangles >> found;
    EXPECT_EQ(name, "board");
    EXPECT_EQ(material, "ebony");
    EXPECT_EQ(colour, "#2B221EFF") << "opaque";
    EXPECT_EQ(triangles, mesh.triangles.size());
    // Coordinates carry six decimals, a thousandth of a micrometre: far under the area times that.
    EXPECT_NEAR(found / volume(mesh), 1, 1e-6);
  }
}

TEST(ThreeMfFile, HoldsSeveralBodies) {
  const Mesh blank = mesh_of("reed-tenor", Stage::blank), board = mesh_of("reed-tenor", Stage::board);
  const std::string read =
      read_by_rules(three_mf_bytes("two", {{"blank", "ebony", "#2b221e", blank}, {"board", "bone", "#f0e8d8", board}}));
  std::istringstream line(read);
  std::string name, material, colour;
  double triangles = 0, found = 0;
  line >> name >> material >> colour >> triangles >> found;
  EXPECT_EQ(name + " " + material + " " + colour, "blank ebony #2B221EFF");
  EXPECT_NEAR(found, 340 * 65 * 5.5, 0.01) << "the preset's blank; corners are 32-bit floats";
  EXPECT_NE(read.find("\nboard bone #F0E8D8FF "), std::string::npos) << read;
}

TEST(ThreeMfFile, IsReadWithoutAWarningByTheFormatsOwnLibrary) {
  std::string bytes =
      three_mf_bytes("a board", {{"board", "ebony", "#2b221e", mesh_of("curlew-seven-fan", Stage::board)}});
  NMR::PLib3MFModel* model = nullptr;
  NMR::PLib3MFModelReader* strict = nullptr;
  ASSERT_EQ(NMR::lib3mf_createmodel(&model), 0);
  ASSERT_EQ(NMR::lib3mf_model_queryreader(model, "3mf", &strict), 0);
  ASSERT_EQ(NMR::lib3mf_reader_setstrictmodeactive(strict, true), 0);
  EXPECT_EQ(NMR::lib3mf_reader_readfrombuffer(strict, reinterpret_cast<BYTE*>(bytes.data()), bytes.size()), 0);
  DWORD warnings = 1;
  EXPECT_EQ(NMR::lib3mf_reader_getwarningcount(strict, &warnings), 0);
  EXPECT_EQ(warnings, 0U);
  NMR::lib3mf_release(strict);
  NMR::lib3mf_release(model);
}

TEST(ThreeMfFile, GivesTheSameBytesEveryTime) {
  const Mesh mesh = mesh_of("reed-tenor", Stage::board);
  EXPECT_EQ(three_mf_bytes("a", {{"board", "ebony", "#2b221e", mesh}}),
            three_mf_bytes("a", {{"board", "ebony", "#2b221e", mesh}}));
}

}  // namespace
}  // namespace sagitta
