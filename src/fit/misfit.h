#pragma once
// A reading that fits nothing, and what it would take for it to fit: the one quantity of the site that, beyond what the
// site says of it, brings the reading back without pushing others away.
#include <vector>

#include "fit/fit_site.h"
#include "fit/site_search.h"

namespace wellproof {

/// Fills in key, explained_by and says of each.
/// @param counted the values that were fitted; the misfits are not among them
void explain_misfits(Site const& sought, SiteSearch const& search, std::vector<bool> const& counted,
                     std::vector<Misfit>& misfits);

}  // namespace wellproof
