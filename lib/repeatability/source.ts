/**
 * Where scatter between readings comes from.
 *
 * @module
 */

/**
 * A source of scatter that a study can vary on purpose.
 *
 * `session`: from one session to the next. `operator`: from person to person.
 * `zeroing`: from one act of zeroing to the next, common to its readings.
 * `zone × zeroing`: what a zeroing does to one zone and not to the others.
 * `diameter`: from diameter to diameter, off centre only. `rotation`: from
 * one direction of the feet to another.
 */
export type VariedSource =
  | "session"
  | "operator"
  | "zeroing"
  | "zone × zeroing"
  | "diameter"
  | "rotation";

/**
 * Any source of scatter: those a study varies, `repeat` (lifting the gauge and
 * setting it down again) and `drift` (the zero creeping within a set).
 */
export type ScatterSource = VariedSource | "repeat" | "drift";

/**
 * How the scatter of diameters falls on the zones off centre: the same in
 * every zone (`common`), independent in each (`by zone`), or independent at
 * the two ends of a diameter (`by end`), which also covers ends that differ in
 * sign.
 */
export type DiameterScatter = "common" | "by zone" | "by end";

/** What the caller knows about the readings. */
export interface DesignOptions {
  /** Pattern of the diameters; `by end` where both ends were read, else `common`. */
  readonly diameters?: DiameterScatter;
  /**
   * Whether the work was worked on between sessions. `untouched` (the
   * default) takes sessions as looks at one surface and their scatter as the
   * gauge's; `worked` gives every session a surface of its own.
   */
  readonly work?: "untouched" | "worked";
}

/**
 * Why a source is not in a design: `not recorded`, `one level`, `centre only`
 * (diameters), `one zone` (zone × zeroing), `worked` (sessions are surfaces of
 * their own), `in the zones` (what it would shift, the zones' own means take
 * up).
 */
export type AbsentReason =
  | "not recorded"
  | "one level"
  | "centre only"
  | "one zone"
  | "worked"
  | "in the zones";
