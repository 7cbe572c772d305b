// What {fmt} otherwise compiles anew in every file that formats; it was two thirds of the time that such a file takes.
// Made here, and not taken from the system's library, so that the WebAssembly module has the same.
#include <fmt/format-inl.h>

FMT_BEGIN_NAMESPACE
namespace detail {

template dragonbox::decimal_fp<float> dragonbox::to_decimal(float) noexcept;
template dragonbox::decimal_fp<double> dragonbox::to_decimal(double) noexcept;
template locale_ref::locale_ref(std::locale const&);
template std::locale locale_ref::get<std::locale>() const;
template thousands_sep_result<char> thousands_sep_impl(locale_ref);
template thousands_sep_result<wchar_t> thousands_sep_impl(locale_ref);
template char decimal_point_impl(locale_ref);
template wchar_t decimal_point_impl(locale_ref);

}  // namespace detail
FMT_END_NAMESPACE
