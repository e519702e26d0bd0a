#include "board/Chain.hpp"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <system_error>

#include "board/SourceText.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

/// Puts `over` on top of `under`: its keys win, tables are merged key by key, lists of tables are replaced whole.
Node merged(Node under, Node over) {
  for (Entry& entry : over.entries) {
    Entry* below = under.find(entry.key);
    if (below == nullptr) {
      under.entries.push_back(std::move(entry));
      continue;
    }
    const bool tables = below->node.type == Node::Type::table && entry.node.type == Node::Type::table;
    entry.node = tables ? merged(std::move(below->node), std::move(entry.node)) : std::move(entry.node);
    *below = std::move(entry);
  }
  under.spot = over.spot;
  under.level = over.level;
  return under;
}

std::string same_file_key(const fs::path& path) {
  std::error_code error;
  const fs::path canonical = fs::weakly_canonical(path, error);
  return (error ? path.lexically_normal() : canonical).string();
}

/// The units that a file names; nothing when it names none. A misspelt name ("inches") is reported later on; here it is
/// taken as it was meant, so that not every length is reported with it.
std::optional<Units> named_units(const Node& root) {
  const Entry* entry = root.find("units");
  const auto* text = entry == nullptr ? nullptr : std::get_if<std::string>(&entry->node.value);
  if (text == nullptr) return std::nullopt;
  return text->starts_with("in") || text->starts_with("In") || text->starts_with("IN") || *text == "\"" ? Units::inch
                                                                                                        : Units::mm;
}

class Builder {
 public:
  explicit Builder(Outside outside) : outside_(outside) {}

  Chain chain;

  /// The tree of one file and its bases.
  Node tree(std::string_view whole_text, const std::string& name, const std::string& folder) {
    const std::string_view text = without_byte_order_mark(whole_text);
    const int level = static_cast<int>(chain.files.size());
    chain.files.push_back({name, folder, Units::mm});
    seen_.push_back(same_file_key(fs::path(folder) / fs::path(name).filename()));
    Node root;
    root.level = level;
    if (auto problem = look_over(text, name)) {
      fail(level, std::move(*problem));
      return root;
    }
    auto parsed = parse_toml(text, name, level);
    if (auto* problem = std::get_if<Problem>(&parsed)) {
      fail(level, std::move(*problem));
      return root;
    }
    root = std::move(std::get<Node>(parsed));
    return on_base(std::move(root), level);
  }

 private:
  void fail(int level, Problem problem) {
    chain.problems.push_back(std::move(problem));
    chain.whole = false;
    if (level == 0) chain.readable = false;
  }

  Node on_base(Node root, int level) {
    const auto own_units = named_units(root);
    const Entry* entry = root.find("base");
    const auto* base = entry == nullptr ? nullptr : std::get_if<std::string>(&entry->node.value);
    if (base != nullptr && !base->empty()) {
      const TextPosition spot = entry->node.spot;
      Node under = base_tree(*base, spot, level);
      std::erase_if(under.entries, [](const Entry& other) { return other.key == "base"; });
      root = merged(std::move(under), std::move(root));
    }
    const auto next = static_cast<std::size_t>(level) + 1;
    const Units inherited = next < chain.files.size() ? chain.files[next].units : Units::mm;
    chain.files[static_cast<std::size_t>(level)].units = own_units.value_or(inherited);
    return root;
  }

  Node base_tree(const std::string& base, TextPosition spot, int level) {
    const ChainFile here = chain.files[static_cast<std::size_t>(level)];
    const auto refuse = [&](FaultCode code, std::string message, std::string hint) {
      fail(level + 1, {code, here.name, spot.line, spot.column, "base", std::move(message), std::move(hint)});
      return Node();
    };
    const auto place = input_path({"base", here.folder, base, chain.files.front().folder}, outside_);
    if (const auto* fault = std::get_if<Fault>(&place)) return refuse(fault->code, fault->message, fault->hint);
    const std::string& path = std::get<std::string>(place);
    if (std::ranges::find(seen_, same_file_key(path)) != seen_.end()) {
      return refuse(FaultCode::bases_too_deep, "the bases go round in a circle: \"" + base + "\" stands on this file",
                    "take `base` out of one of them");
    }
    if (level + 1 > deepest_base) {
      return refuse(FaultCode::bases_too_deep,
                    "bases stand on bases more than " + std::to_string(deepest_base) + " deep",
                    "join some of the files");
    }
    auto text = fetch_text(path, path);
    if (auto* problem = std::get_if<Problem>(&text)) {
      return refuse(problem->code, "the base \"" + base + "\" cannot be read: " + problem->message, problem->hint);
    }
    return tree(std::get<std::string>(text), path, fs::path(path).parent_path().string());
  }

  Outside outside_;
  std::vector<std::string> seen_;
};

}  // namespace

Chain read_chain(std::string_view text, const std::string& file_name, const std::string& folder, Outside outside) {
  Builder builder(outside);
  Node root = builder.tree(text, file_name, folder);
  builder.chain.root = std::move(root);
  return std::move(builder.chain);
}

}  // namespace sagitta
