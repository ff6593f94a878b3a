/**
 * The known name that a mistyped one most likely means.
 *
 * @module
 */
export { closestName } from "./closest_name.ts";
