/**
 * The version of the library, as it stands in every file of results.
 *
 * @module
 */

/** The version, as in `deno.json`. */
export const VERSION = "0.1.0";
