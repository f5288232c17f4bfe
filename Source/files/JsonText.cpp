#include "files/JsonText.h"

#include "files/Json.h"

namespace coldiron
{
std::string quotedJson (const std::string& text) { return Json (text).dump(); }
}
