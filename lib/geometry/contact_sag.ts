/**
 * The sag a gauge shows by exact contact, for work of a declared form.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { ContactGauge } from "./contact_gauge.ts";
import { type ContactPlace, contactReading } from "./contact_reading.ts";
import type { ContactSurface } from "./contact_surface.ts";
import type { SurfaceForm } from "./feet.ts";

/**
 * Finds the sag that a gauge shows on a surface, by exact contact.
 *
 * @param surface Height towards the gauge and slopes, in mm.
 * @param form The declared form: it says which way the gauge counts up.
 * @param gauge Feet and probe, in mm.
 * @param place Where and how turned.
 * @returns The sag in mm, against the same gauge on a flat.
 * @throws {RangeError} If the gauge cannot rest there.
 *
 * @example A convex sphere
 * ```ts
 * import { conicSurface, contactSag, insideOut, ringGauge } from "sagbook/geometry/mod.ts";
 * import { ok } from "node:assert/strict";
 *
 * const dome = insideOut(conicSurface(2497.75, 0));
 * const place = { x: 30, y: 0, footDegrees: 0 };
 * const sag = contactSag(dome, "convex", ringGauge(50, 2.5), place);
 * ok(Math.abs(sag - 0.5) < 1e-12);
 * ```
 */
export function contactSag(
  surface: ContactSurface,
  form: SurfaceForm,
  gauge: ContactGauge,
  place: ContactPlace,
): Millimetres {
  const { travel } = contactReading(surface, gauge, place);
  return millimetres(form === "concave" ? travel : -travel);
}
