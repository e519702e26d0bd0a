#include "cad/ThreeMfFile.hpp"

#include <Model/COM/NMR_DLLInterfaces.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <memory>
#include <stdexcept>

#include "cad/ZipDate.hpp"
#include "text/ForeignText.hpp"
#include "text/Markup.hpp"

namespace sagitta {
namespace {

void demand(LIB3MFRESULT result, const char* what) {
  if (result != 0) throw std::runtime_error(std::string("the 3MF file could not be made: ") + what);
}

struct Release {
  void operator()(NMR::PLib3MFBase* held) const { NMR::lib3mf_release(held); }
};
template <class T>
using Held = std::unique_ptr<T, Release>;

/// A name that the library would else draw at random: fixed, one for each number.
std::string uuid(std::size_t number) {
  char text[40];
  std::snprintf(text, sizeof text, "5a617474-0000-4000-8000-%012zx", number);
  return text;
}

BYTE part(const std::string& colour, std::size_t at) {
  return static_cast<BYTE>(std::stoi(colour.substr(at, 2), nullptr, 16));
}

std::array<float, 3> low_corner(const std::vector<ThreeMfBody>& bodies) {
  std::array<float, 3> low{1e30F, 1e30F, 1e30F};
  for (const ThreeMfBody& body : bodies)
    for (const auto& point : body.mesh.points)
      for (std::size_t i = 0; i < 3; ++i) low[i] = std::min(low[i], point[i]);
  return low;
}

class Package {
 public:
  explicit Package(const std::string& title) {
    NMR::PLib3MFModel* model = nullptr;
    demand(NMR::lib3mf_createmodel(&model), "no model");
    model_.reset(model);
    demand(NMR::lib3mf_model_setbuilduuidutf8(model, uuid(0).c_str()), "its identity");
    demand(NMR::lib3mf_model_addmetadatautf8(model, "Title", markup_text(title).c_str()), "its title");
    NMR::PLib3MFModelBaseMaterial* materials = nullptr;
    demand(NMR::lib3mf_model_addbasematerialgroup(model, &materials), "no materials");
    materials_.reset(materials);
    demand(NMR::lib3mf_basematerial_getresourceid(materials, &materials_id_), "no materials");
  }

  void add(const ThreeMfBody& body, const std::array<float, 3>& low) {
    NMR::PLib3MFModelMeshObject* object = nullptr;
    demand(NMR::lib3mf_model_addmeshobject(model_.get(), &object), "no object");
    const Held<NMR::PLib3MFModelMeshObject> held(object);
    fill(object, body.mesh);
    demand(NMR::lib3mf_object_setnameutf8(object, visible_text(body.name).c_str()), "a name");
    demand(NMR::lib3mf_object_setuuidutf8(object, uuid(++count_).c_str()), "its identity");
    dress(object, body);
    NMR::MODELTRANSFORM place{};
    for (std::size_t i = 0; i < 3; ++i) {
      place.m_fFields[i][i] = 1;
      // Whole millimetres: the library writes a move with few digits.
      place.m_fFields[i][3] = low[i] < 0 ? std::ceil(-low[i]) : 0.0F;
    }
    NMR::PLib3MFModelBuildItem* item = nullptr;
    demand(NMR::lib3mf_model_addbuilditem(model_.get(), object, &place, &item), "no build item");
    const Held<NMR::PLib3MFModelBuildItem> kept(item);
    demand(NMR::lib3mf_builditem_setuuidutf8(item, uuid(++count_).c_str()), "its identity");
  }

  std::string bytes() const {
    NMR::PLib3MFModelWriter* writer = nullptr;
    demand(NMR::lib3mf_model_querywriter(model_.get(), "3mf", &writer), "no writer");
    const Held<NMR::PLib3MFModelWriter> held(writer);
    ULONG64 size = 0;
    demand(NMR::lib3mf_writer_getstreamsize(writer, &size), "its size");
    std::string bytes(size, '\0');
    demand(NMR::lib3mf_writer_writetobuffer(writer, reinterpret_cast<BYTE*>(bytes.data()), size), "its bytes");
    return bytes;
  }

 private:
  static void fill(NMR::PLib3MFModelMeshObject* object, const Mesh& mesh) {
    std::vector<NMR::MODELMESHVERTEX> points;
    std::vector<NMR::MODELMESHTRIANGLE> triangles;
    for (const auto& p : mesh.points) points.push_back({{p[0], p[1], p[2]}});
    for (const auto& t : mesh.triangles) triangles.push_back({{t[0], t[1], t[2]}});
    demand(NMR::lib3mf_meshobject_setgeometry(object, points.data(), static_cast<DWORD>(points.size()),
                                              triangles.data(), static_cast<DWORD>(triangles.size())),
           "its triangles");
  }

  void dress(NMR::PLib3MFModelMeshObject* object, const ThreeMfBody& body) {
    DWORD index = 0;
    const BYTE red = part(body.colour, 1), green = part(body.colour, 3), blue = part(body.colour, 5);
    demand(NMR::lib3mf_basematerial_addmaterialutf8(materials_.get(), visible_text(body.material).c_str(), red, green,
                                                    blue, &index),
           "a material");
    // The call without alpha writes 0 for it: nothing would be seen.
    demand(NMR::lib3mf_basematerial_setdisplaycolorrgba(materials_.get(), index, red, green, blue, 255), "a colour");
    NMR::PLib3MFDefaultPropertyHandler* properties = nullptr;
    demand(NMR::lib3mf_object_createdefaultpropertyhandler(object, &properties), "a material");
    const Held<NMR::PLib3MFDefaultPropertyHandler> held(properties);
    demand(NMR::lib3mf_defaultpropertyhandler_setbasematerial(properties, materials_id_, index), "a material");
  }

  Held<NMR::PLib3MFModel> model_;
  Held<NMR::PLib3MFModelBaseMaterial> materials_;
  DWORD materials_id_ = 0;
  std::size_t count_ = 0;
};

}  // namespace

std::string three_mf_bytes(const std::string& title, const std::vector<ThreeMfBody>& bodies) {
  Package package(title);
  const std::array<float, 3> low = low_corner(bodies);
  for (const ThreeMfBody& body : bodies) package.add(body, low);
  return with_fixed_date(package.bytes());
}

}  // namespace sagitta
