/**
 * The colours of every figure: the roles of all pictures, as classes.
 *
 * @module
 */
import { type Role, ROLES } from "../display/colour_roles.ts";

export { type Role, ROLES };

/** The colours of series, in the order in which they get them. */
export const SERIES: readonly Role[] = ["first", "second", "third", "ink"];

/** The colour of series number `index`, from 0; after four they repeat. */
export function seriesRole(index: number): Role {
  return SERIES[index % SERIES.length];
}

/** The colour of a role as a mark option; the serialiser turns it into a class. */
export function ink(role: Role): string {
  return `var(--${role})`;
}

const TOKEN = /^var\(--([a-zA-Z0-9]+)\)$/;

/** The role that a `fill` or `stroke` names, if it names one. */
export function roleOf(value: string): Role | undefined {
  if (value === "currentColor") return "ink";
  const name = TOKEN.exec(value)?.[1];
  return name !== undefined && name in ROLES ? name as Role : undefined;
}

/** Where a figure's own id will stand. */
export const ID = "\uE000id\uE001";

/** Where the light colour of a role will stand. */
export function standIn(role: Role): string {
  return `\uE000${role}\uE001`;
}

/** Fills the stand-ins for colours, and finds which classes are in use. */
export function painted(svg: string): { text: string; classes: string[] } {
  const names = [...svg.matchAll(/ class="([^"]*)"/g)]
    .flatMap(([, list]) => list.split(" "))
    .filter((name) => /^[fs]-/.test(name) && name.slice(2) in ROLES);
  const text = svg.replace(
    /\uE000([a-zA-Z0-9]+)\uE001/g,
    (found, role) => role in ROLES ? ROLES[role as Role][0] : found,
  );
  return { text, classes: [...new Set(names)] };
}

/**
 * The style sheet of one figure, for the roles it uses.
 *
 * The attributes already carry the light colours, so that a program without
 * style sheets prints the figure right; a page overrides a role by setting
 * `--figure-ROLE`.
 *
 * @param id The id of the figure's root, which every rule is bound to.
 * @param classes Classes in use: `f-ROLE` for fills, `s-ROLE` for strokes.
 */
export function styleSheet(id: string, classes: Iterable<string>): string {
  const rules = (theme: 0 | 1) =>
    [...classes].sort().map((name) => {
      const role = name.slice(2) as Role;
      const property = name.startsWith("f-") ? "fill" : "stroke";
      return `#${id} .${name}{${property}:var(--figure-${role},${
        ROLES[role][theme]
      })}`;
    }).join("");
  return `${rules(0)}@media screen and (prefers-color-scheme:dark){${
    rules(1)
  }}`;
}
