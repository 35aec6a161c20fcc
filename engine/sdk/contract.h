/* The contract between Puteal and a plugin: plain C, one exported symbol, append-only structs that carry
 * their size.
 *
 * Ownership: everything a plugin hands over is static and lives as long as the library. Everything the host
 * hands to a call lives until the call returns. No exception and no allocation crosses the border. Threads:
 * every call may come from any thread, several at once; functions are pure and do no input or output. All
 * text is UTF-8 and ends with NUL; an absent text is NULL or "". */
#ifndef PUTEAL_CONTRACT_H
#define PUTEAL_CONTRACT_H

#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

#define PUTEAL_CONTRACT 1u

/* What kind of value a parameter takes or a function gives. */
enum {
    PUTEAL_QUANTITY = 0,
    PUTEAL_YES_NO = 1,
    PUTEAL_CHOICE = 2,
    PUTEAL_WORDS = 3,
    PUTEAL_DATE = 4 /* whole days since 1970-01-01; a program that does not know it refuses the function */
};

/* Flags of a parameter. */
enum {
    PUTEAL_RANGE = 1u,          /* a range of cells; `items`, `count` are set */
    PUTEAL_MAY_BE_MISSING = 2u, /* a blank cell is passed on with PUTEAL_MISSING set */
    PUTEAL_MAY_BE_BOUNDED =
        4u, /* a reading such as <0.05 mg/L is passed on with PUTEAL_BELOW or PUTEAL_ABOVE set */
    PUTEAL_HAS_DEFAULT = 8u, /* may be left out; `fallback` is used */
    PUTEAL_REPEATS = 16u     /* last parameter only: one or more arguments of this form */
};

/* Flags of an argument in a call. */
enum { PUTEAL_MISSING = 1u, PUTEAL_BELOW = 2u, PUTEAL_ABOVE = 4u };

typedef struct puteal_argument {
    uint32_t size;
    uint32_t flags;
    double number;       /* in the parameter's unit; choice: index in its list; yes/no: 1 or 0; date: days */
    const double *items; /* range parameters: numbers in the parameter's unit; NaN for a blank cell */
    size_t count;
    const char *label; /* how the sheet calls it: the item's words or the argument's text */
    const char *shown; /* the value as the sheet shows it, with unit; "" for a range */
} puteal_argument;

/* What a function gives back. The callbacks copy their text before they return. */
typedef struct puteal_reply {
    uint32_t size;
    uint32_t refused; /* set by `refuse` */
    double number; /* in the result's unit; choice: index in the result's list; yes/no: 1 or 0; date: days */
    void *host;
    /* No number: the words say why and what to do; argument counts from 1, 0 = none of them in particular. */
    void (*refuse)(struct puteal_reply *reply, uint32_t argument, const char *words);
    /* A number, but the reader must know this. `key` is one of the function's declared cautions. */
    void (*caution)(struct puteal_reply *reply, const char *key, const char *words);
    /* Why this result; readable as why(cell). */
    void (*reason)(struct puteal_reply *reply, const char *words);
} puteal_reply;

typedef void (*puteal_call)(const puteal_argument *arguments, size_t count, puteal_reply *reply);

typedef struct puteal_parameter {
    uint32_t size;
    uint32_t kind;
    uint32_t flags;
    const char *name; /* lower_snake_case */
    const char
        *unit;           /* as typed after a number: "mg/L as Fe"; "" = pure number; "'u" = any unit, the same
                            wherever    'u stands; "mg/L as 'ox" = the substance of the choice parameter named ox */
    const char *meaning; /* one line for help */
    double hard_low, hard_high;   /* refused outside; use -HUGE_VAL, HUGE_VAL for none */
    double usual_low, usual_high; /* caution outside */
    double fallback; /* with PUTEAL_HAS_DEFAULT, in the parameter's unit (choice: index; date: days) */
    const char *fallback_mark;            /* source mark of the default: "S", "H", "T", "R", "A" */
    const char *const *choices;           /* choice: NULL-terminated, best first where there is an order */
    const char *const *choice_substances; /* same order: the substance word a choice stands for, or NULL */
} puteal_parameter;

/* A worked example or a refusal example: runs through the real formula path. */
typedef struct puteal_example {
    uint32_t size;
    const char *formula;  /* "compensated_hardness(10 gpg, 1 mg/L as Fe)" */
    const char *expected; /* typed quantity, yes/no or word ("15 gpg"); refusal: the whole message */
    double tolerance;     /* relative; 0 for exact words */
    const char *origin;   /* "published", "computed", "common practice", "memory" */
    const char *source;   /* key of a source of the plugin */
} puteal_example;

typedef struct puteal_source {
    uint32_t size;
    const char *key;   /* "usgs_phreeqc", unique in the plugin */
    const char *mark;  /* one letter: S standard, H handbook, T trade practice, R recalled and unconfirmed, W
                          worked out */
    const char *words; /* author, title, year, place */
} puteal_source;

/* A caution a function may give, for its help. */
typedef struct puteal_caution {
    uint32_t size;
    const char *key;
    const char *when; /* "iron above 5 mg/L" */
} puteal_caution;

typedef struct puteal_function {
    uint32_t size;
    const char *name; /* the field's standard term, lower_snake_case */
    const char *title;
    const char *purpose; /* one or two sentences */
    const puteal_parameter *parameters;
    size_t parameter_count;
    uint32_t result_kind;
    const char *result_unit; /* as for a parameter */
    const char *result_meaning;
    const char *const *result_choices;
    const char *relation;       /* the formula as text, for the calculation */
    const char *const *sources; /* keys, NULL-terminated */
    const puteal_example *examples;
    size_t example_count;
    const puteal_example *refusals;
    size_t refusal_count;
    const puteal_caution *cautions;
    size_t caution_count;
    const char *safety; /* usual caution for people, "" where none */
    puteal_call call;
} puteal_function;

typedef struct puteal_plugin {
    uint32_t size;
    uint32_t contract; /* PUTEAL_CONTRACT */
    const char *id;    /* lower_snake_case; the word after `uses` in a workbook */
    const char *title;
    uint32_t major, minor;
    const puteal_source *sources;
    size_t source_count;
    const puteal_function *functions;
    size_t function_count;
} puteal_plugin;

/* The one exported symbol and its name. */
#define PUTEAL_PLUGIN_ENTRY "puteal_plugin_entry"
typedef const puteal_plugin *(*puteal_plugin_entry_type)(void);

#ifdef __cplusplus
}
#endif

#endif
