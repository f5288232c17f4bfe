#include "files/JsonText.h"

#include "files/Json.h"

namespace coldiron
{
std::string quotedJson (const std::string& text)
{
    Json json;
    json.kind = Json::Kind::text;
    json.text = text;
    return json.dump();
}
}
