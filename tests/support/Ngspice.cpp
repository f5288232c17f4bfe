#include "support/Ngspice.h"

#include <ngspice/sharedspice.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <numbers>
#include <stdexcept>

namespace coldiron::support
{
namespace
{
std::string number (double value)
{
    char text[40];
    std::snprintf (text, sizeof text, "%.17g", value);
    return text;
}

/** The one simulator of the process. */
class Simulator
{
public:
    static Simulator& instance()
    {
        static Simulator simulator;
        return simulator;
    }

    void command (const std::string& text)
    {
        auto copy = text;
        if (ngSpice_Command (copy.data()) != 0)
            fail (text);
    }

    vector_info& vector (const std::string& name)
    {
        auto copy = name;
        auto* info = ngGet_Vec_Info (copy.data());
        if (info == nullptr || info->v_length < 1)
            fail ("no vector " + name);
        return *info;
    }

    [[noreturn]] void fail (const std::string& what) const { throw std::runtime_error ("ngspice: " + what + "\n" + log); }

    /** Lets `external` sources ask for their voltages; null ends it. */
    void giveSources (const std::map<std::string, Ngspice::Waveform>* given)
    {
        sources = given;
        ngSpice_Init_Sync (voltage, nullptr, nullptr, nullptr, this); // others in the process may have asked for it since
    }

    /** A circuit as long as this lives. */
    struct Circuit
    {
        Circuit (const Ngspice::Lines& lines)
        {
            auto& simulator = instance();
            simulator.log.clear();
            std::vector<std::string> all { "* circuit" };
            all.insert (all.end(), lines.begin(), lines.end());
            all.push_back (".end");
            std::vector<char*> pointers;
            for (auto& line : all)
                pointers.push_back (line.data());
            pointers.push_back (nullptr);
            if (ngSpice_Circ (pointers.data()) != 0)
                simulator.fail ("the netlist was refused");
        }

        ~Circuit()
        {
            for (const char* last : { "destroy all", "remcirc" })
            {
                std::string copy (last);
                ngSpice_Command (copy.data());
            }
        }
    };

private:
    const std::map<std::string, Ngspice::Waveform>* sources = nullptr;
    std::string log; // what it printed since the last circuit

    Simulator() { ngSpice_Init (print, nullptr, exit, nullptr, nullptr, nullptr, this); }

    static int print (char* text, int, void* self)
    {
        if (std::strncmp (text, "stdout *", 8) != 0)
            static_cast<Simulator*> (self)->log += std::string (text) + "\n";
        return 0;
    }

    static int exit (int, bool, bool, int, void*)
    {
        std::fputs ("ngspice asked to leave\n", stderr);
        std::abort();
    }

    static int voltage (double* volts, double seconds, char* name, int, void* self)
    {
        const auto* sources = static_cast<Simulator*> (self)->sources;
        std::string lower (name);
        std::transform (lower.begin(), lower.end(), lower.begin(), [] (unsigned char c) { return (char)std::tolower (c); });
        const auto found =
            sources != nullptr ? sources->find (lower) : std::map<std::string, Ngspice::Waveform>::const_iterator();
        *volts = sources != nullptr && found != sources->end() ? found->second (seconds) : 0.0;
        return 0;
    }
};

/** Adds what the current plot holds to the answer. */
void collect (Ngspice::Ac& answer, const Ngspice::Names& vectors)
{
    auto& simulator = Simulator::instance();
    const auto& scale = simulator.vector ("frequency");
    for (int i = 0; i < scale.v_length; ++i)
        answer.hz.push_back (scale.v_compdata != nullptr ? scale.v_compdata[i].cx_real : scale.v_realdata[i]);

    for (size_t v = 0; v < vectors.size(); ++v)
    {
        const auto& info = simulator.vector (vectors[v]);
        if (info.v_compdata == nullptr)
            simulator.fail (vectors[v] + " is not complex");
        for (int i = 0; i < info.v_length; ++i)
            answer.values[v].emplace_back (info.v_compdata[i].cx_real, info.v_compdata[i].cx_imag);
    }
}

Ngspice::Ac sweep (const Ngspice::Lines& lines, const Ngspice::Names& vectors, const std::string& range)
{
    const Simulator::Circuit circuit (lines);
    Ngspice::Ac answer;
    answer.values.resize (vectors.size());
    Simulator::instance().command ("ac " + range);
    collect (answer, vectors);
    return answer;
}
}

Ngspice::Ac Ngspice::ac (const Lines& lines, const Names& vectors, const std::vector<double>& hz)
{
    const Simulator::Circuit circuit (lines);
    Ac answer;
    answer.values.resize (vectors.size());
    for (const auto f : hz)
    {
        Simulator::instance().command ("ac lin 1 " + number (f) + " " + number (f));
        collect (answer, vectors);
        Simulator::instance().command ("destroy all");
    }
    return answer;
}

Ngspice::Ac Ngspice::acDecades (const Lines& lines, const Names& vectors, int points, double fromHz, double toHz)
{
    return sweep (lines, vectors, "dec " + std::to_string (points) + " " + number (fromHz) + " " + number (toHz));
}

Ngspice::Ac Ngspice::acLinear (const Lines& lines, const Names& vectors, int points, double fromHz, double toHz)
{
    return sweep (lines, vectors, "lin " + std::to_string (points) + " " + number (fromHz) + " " + number (toHz));
}

Ngspice::Transient Ngspice::transient (const Lines& lines, const Names& vectors, const std::map<std::string, Waveform>& sources,
                                       double seconds, double step)
{
    auto& simulator = Simulator::instance();
    auto all = lines;
    // A linear circuit needs no shorter steps than the longest allowed: trtol keeps the error estimate out of it.
    all.push_back (".options method=trap trtol=1e9 reltol=1e-6 abstol=1e-18 vntol=1e-12 chgtol=1e-24");
    auto saved = std::string (".save");
    for (const auto& name : vectors)
        saved += " " + (name.find ('#') != std::string::npos ? name : "v(" + name + ")");
    all.push_back (saved);

    const Simulator::Circuit circuit (all);
    simulator.giveSources (&sources);
    try
    {
        simulator.command ("tran " + number (step) + " " + number (seconds) + " 0 " + number (step) + " uic");
    }
    catch (...)
    {
        simulator.giveSources (nullptr);
        throw;
    }
    simulator.giveSources (nullptr);

    Transient answer;
    const auto& time = simulator.vector ("time");
    answer.seconds.assign (time.v_realdata, time.v_realdata + time.v_length);
    if (answer.seconds.back() < seconds * (1.0 - 1e-9))
        simulator.fail ("the transient stopped early");
    for (const auto& name : vectors)
    {
        const auto& info = simulator.vector (name);
        answer.values.emplace_back (info.v_realdata, info.v_realdata + info.v_length);
    }
    return answer;
}

std::vector<double> Ngspice::Transient::at (size_t vector, double rate, size_t frames) const
{
    const auto& y = values.at (vector);
    const auto count = seconds.size();
    if (count < 4)
        throw std::runtime_error ("too few steps to read between");

    std::vector<double> result (frames);
    size_t next = 0;
    for (size_t k = 0; k < frames; ++k)
    {
        const auto t = (double)k / rate;
        while (next + 1 < count && seconds[next] < t)
            ++next;
        const auto first = std::clamp<size_t> (next, 2, count - 2) - 2;
        for (size_t i = first; i < first + 4; ++i)
        {
            auto weight = 1.0;
            for (size_t j = first; j < first + 4; ++j)
                if (j != i)
                    weight *= (t - seconds[j]) / (seconds[i] - seconds[j]);
            result[k] += weight * y[i];
        }
    }
    return result;
}

Ngspice::Waveform Ngspice::bandLimited (std::vector<double> samples, double rate)
{
    return [samples = std::move (samples), rate] (double seconds)
    {
        constexpr int reach = 32;
        const auto place = seconds * rate;
        const auto nearest = (long)std::lround (place);
        const auto offset = place - (double)nearest;
        const auto sine = std::sin (std::numbers::pi * offset) / std::numbers::pi;
        auto sum = 0.0;

        for (auto i = -reach; i <= reach; ++i)
        {
            const auto index = nearest + i;
            if (index < 0 || index >= (long)samples.size())
                continue;
            const auto x = offset - i;
            const auto sinc = std::abs (x) < 1e-12 ? 1.0 : (i % 2 == 0 ? sine : -sine) / x;
            const auto u = x / (reach + 1);
            const auto window = 0.42 + 0.5 * std::cos (std::numbers::pi * u) + 0.08 * std::cos (2.0 * std::numbers::pi * u);
            sum += samples[(size_t)index] * sinc * window;
        }
        return sum;
    };
}
}
