// What the quote desk's address asks beside its enquiry, read as the options of `quote` are.
#pragma once

#include "host/beside/asked.hpp"
#include "host/pages/desk_state.hpp"
#include "host/web/fields.hpp"

namespace flutebook::web {

inline constexpr beside::Names beside_names{pages::beside_query::with,    pages::beside_query::boards,
                                            pages::beside_query::margins, pages::beside_query::prices,
                                            pages::beside_query::rank,    pages::beside_query::ect,
                                            pages::beside_query::bct,     pages::beside_query::corrugator,
                                            pages::beside_query::roll,    pages::beside_query::ups};

/// Throws InputError (request) with everything that is wrong, also with what cannot stand together.
[[nodiscard]] beside::Asked asked_beside(const Fields& query);

}  // namespace flutebook::web
