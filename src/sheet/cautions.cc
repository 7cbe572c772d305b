#include <algorithm>

#include "sheet/words.h"

namespace wellproof {

std::vector<Caution> const& standing_cautions() {
  static std::vector<Caution> const cautions{
      {"mains",
       "The drive is fed with mains voltage that kills. Before a cover comes off, open the disconnect, lock and "
       "tag it, and prove the terminals dead with a meter that was tried on a live source just before."},
      {"stored_charge",
       "A drive's capacitors stay charged after power is off. Wait as long as the drive's own label says, then measure "
       "across its direct-current link before touching anything inside."},
      {"pressure",
       "Tank, pipe and fittings hold pressure with the pump off. Drain to nothing before opening anything. "
       "Fit a relief valve that can pass the pump's flow below the weakest part's rating, with nothing "
       "that can be shut between it and the pump."},
      {"water_safety",
       "Opening a well or a line can bring germs into drinking water. Disinfect the well and the line "
       "after the work, flush, and have the water tested before anyone drinks it."},
      {"licence",
       "Local code, the utility and the health authority decide, not this sheet. Electrical and well work "
       "belong to people licensed for it where it is done."},
      {"on_site",
       "The figures rest on a model of this site and on the assumptions listed. Measure pressure, speed, "
       "current and water level on site, and compare, before the settings are left to work alone."},
  };
  return cautions;
}

std::vector<Caution> all_cautions(Derived const& derived) {
  std::vector<Caution> all = standing_cautions();
  for (auto const& caution : derived.cautions) {
    // What a site's figures say of the same matter stands in place of the general words.
    auto const known =
        std::find_if(all.begin(), all.end(), [&](Caution const& standing) { return standing.key == caution.key; });
    if (known == all.end()) {
      all.push_back(caution);
    } else {
      known->says = caution.says;
    }
  }
  return all;
}

}  // namespace wellproof
