#include "folder/Manifest.hpp"

#include <nlohmann/json.hpp>

namespace sagitta {
namespace {

using Json = nlohmann::ordered_json;

template <typename T>
Json maybe(const std::optional<T>& value) {
  return value ? Json(*value) : Json();
}

Json body_json(const ManifestBody& body) {
  return {{"name", body.name},
          {"material", body.material},
          {"volume", body.volume},
          {"area", body.area},
          {"bbox", Json::array({body.low, body.high})}};
}

Json file_json(const ManifestFile& file) {
  Json bodies = Json::array();
  for (const ManifestBody& body : file.bodies) bodies.push_back(body_json(body));
  return {{"file", file.file},
          {"stage", file.stage},
          {"kind", file.kind},
          {"bytes", file.bytes},
          {"sha256", file.sha256},
          {"bodies", bodies},
          {"deviation", maybe(file.deviation)},
          {"triangles", maybe(file.triangles)}};
}

}  // namespace

std::string manifest_text(const Manifest& manifest) {
  Json files = Json::array();
  for (const ManifestFile& file : manifest.files) files.push_back(file_json(file));
  Json json = {{"format", manifest_format},
               {"program", manifest_program},
               {"version", manifest.version},
               {"board", manifest.board},
               {"options", Json::parse(manifest.options)},
               {"findings", Json::parse(manifest.findings)},
               {"files", files}};
  if (!manifest.serial.empty()) json["serial"] = manifest.serial;
  return json.dump(2) + "\n";
}

}  // namespace sagitta
