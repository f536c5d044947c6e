// Linked into sanitizer builds only. pango 1.50 keeps the font patterns that it asked of fontconfig to the end of the
// process. The sanitizer can't unwind through that library (no frame pointers), so the module is named; valgrind, which
// can, counts nine blocks a run, all made by FcFontRenderPrepare and FcFontSetMatch for pango, none by this program.
extern "C" const char* __lsan_default_suppressions();
extern "C" const char* __lsan_default_suppressions() { return "leak:libfontconfig\n"; }
extern "C" const char* __lsan_default_options();
extern "C" const char* __lsan_default_options() { return "print_suppressions=0"; }
