/* No plugin: a library that a plugin here needs. */
extern double rate_of_elsewhere(void);

__attribute__((visibility("default"))) double rate_of_elsewhere(void) {
    return 2;
}
