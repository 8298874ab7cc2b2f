/* A host of the first release, built with the header as it was released and never again with another: loads a plugin,
 * believes its sizes and strides, evaluates a few rows and prints all it got, to the last bit. Whatever the plugin's
 * own header has grown since, this must go on working.
 *
 *   old_host FILE.so
 */
#include <dlfcn.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <flutebook/plugin.h>

enum { ROWS = 5, PLIES = 3, STEPS = 4, PITCH = 8, COLUMNS = 64, MOST = 32 };

static double columns[COLUMNS][STEPS * PITCH] __attribute__((aligned(64)));
static int taken;

static double* column(double value) {
    if (taken == COLUMNS) exit(2);
    for (int i = 0; i < STEPS * PITCH; ++i) columns[taken][i] = value;
    return columns[taken++];
}

/* Element i of a list, as much of it as this host knows. */
static void element(const flutebook_span* span, uint32_t i, void* known, size_t size) {
    memset(known, 0, size);
    memcpy(known, (const char*)span->at + (size_t)i * span->stride, size < span->stride ? size : span->stride);
}

/* Numbers that differ from row to row and step to step, inside the range. */
static double* numbers(double low, double high) {
    double* result = column(0);
    const double width = high - low > 1000 ? 1000 : high - low;
    for (int i = 0; i < STEPS * PITCH; ++i) result[i] = low + width * ((i * 37 + 11) % 101) / 101.0;
    return result;
}

static void print_names(const char* kind, const flutebook_span* span, double** into, int are_given) {
    for (uint32_t i = 0; i < span->count && i < MOST; ++i) {
        flutebook_name name;
        element(span, i, &name, sizeof name);
        printf("%s %s [%s] axis %u from %a to %a: %s\n", kind, name.name, name.unit, name.axis, name.low, name.high,
               name.meaning);
        into[i] = are_given ? numbers(name.low, name.high) : column(NAN);
    }
}

static void print_column(const char* name, const double* at) {
    printf("%s", name);
    for (int step = 0; step < STEPS; ++step)
        for (int row = 0; row < ROWS; ++row) printf(" %a", at[step * PITCH + row]);
    printf("\n");
}

int main(int count, char** words) {
    void* library = count == 2 ? dlopen(words[1], RTLD_NOW | RTLD_LOCAL) : NULL;
    const flutebook_model* exported = library ? (const flutebook_model*)dlsym(library, "flutebook_plugin") : NULL;
    if (!exported || exported->magic != FLUTEBOOK_MAGIC || exported->major != FLUTEBOOK_MAJOR) return 1;
    flutebook_model model;
    memset(&model, 0, sizeof model);
    memcpy(&model, exported, sizeof model < exported->size ? sizeof model : exported->size);
    fprintf(stderr, "%u bytes, names %u apart\n", model.size, model.needs.stride);
    printf("%s %s %s\n", model.id, model.version, model.title);

    double *needs[MOST], *settings[MOST], *provides[MOST], *quantities[MOST], *rates[MOST], *losses[MOST];
    uint32_t refused[ROWS] = {0};
    print_names("needs", &model.needs, needs, 1);
    print_names("provides", &model.provides, provides, 0);
    for (uint32_t i = 0; i < model.settings.count && i < MOST; ++i) {
        flutebook_setting setting;
        element(&model.settings, i, &setting, sizeof setting);
        printf("setting %s [%s] by %u from %a to %a%s: %s\n", setting.name, setting.unit, setting.varies_by,
               setting.low, setting.high, setting.required ? ", required" : "", setting.meaning);
        settings[i] = numbers(setting.low, setting.high);
    }
    for (uint32_t i = 0; i < model.lines.count && i < MOST; ++i) {
        flutebook_line line;
        element(&model.lines, i, &line, sizeof line);
        printf("line %s [%s] axis %u class %u behaviour %u: %s\n", line.name, line.unit, line.axis, line.cost_class,
               line.behaviour, line.title);
        quantities[i] = column(0);
        rates[i] = column(0);
    }
    for (uint32_t i = 0; i < model.losses.count && i < MOST; ++i) losses[i] = column(0);

    const flutebook_block block = {
        sizeof block, ROWS,       PLIES, STEPS,  PITCH,  (const double* const*)needs, (const double* const*)settings,
        provides,     quantities, rates, losses, refused};
    printf("evaluate gives %u\n", model.evaluate(&block));
    for (uint32_t i = 0; i < model.lines.count && i < MOST; ++i) {
        print_column("quantities", quantities[i]);
        print_column("rates", rates[i]);
    }
    for (uint32_t i = 0; i < model.provides.count && i < MOST; ++i) print_column("provides", provides[i]);
    return 0;
}
