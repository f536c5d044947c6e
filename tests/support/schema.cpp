#include "tests/support/schema.hpp"

#include "tests/support/run_program.hpp"

namespace floatwright::testing {

std::string judged_by_schema(const std::string& schema, const std::string& document) {
  const ScratchFolder scratch;
  const auto file = scratch.path() / "document.json";
  write_text(file, document);
  const auto judged = run_program({"/usr/bin/python3", "-c",
                                   "import json,sys,jsonschema\n"
                                   "schema=json.load(open(sys.argv[1]))\n"
                                   "jsonschema.Draft202012Validator.check_schema(schema)\n"
                                   "errors=list(jsonschema.Draft202012Validator(schema).iter_errors(json.load(open(sys.argv[2]))))\n"
                                   "print('\\n'.join(f'{e.json_path}: {e.message[:200]}' for e in errors[:10]) or 'valid',end='')",
                                   FLOATWRIGHT_SOURCE_DIR "/config/schemas/" + schema + ".schema.json", file.string()});
  return judged.exit_code == 0 ? judged.out : judged.err + "(needs the package python3-jsonschema)";
}

}  // namespace floatwright::testing
