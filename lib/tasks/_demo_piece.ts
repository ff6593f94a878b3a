import type { ContactSurface } from "../geometry/contact_surface.ts";
import type { SessionScatter } from "../geometry/simulate_session.ts";

/** A place of a demo's plan: a part of the half diameter or of the reach. */
export interface DemoPlace {
  readonly zone: string;
  readonly fraction: number;
  readonly of: "half diameter" | "reach";
}

/** A departure from the sphere, and how the truth file words it. */
export interface DemoDeparture {
  readonly kind: string;
  readonly sizes: Readonly<Record<string, number>>;
  readonly shape: ContactSurface;
}

/** The ring as the bench file states it and as it truly is, in mm. */
export interface DemoRing {
  readonly id: string;
  readonly statedRadius: number;
  readonly trueRadius: number;
  readonly ballRadius: number;
  /** Caliper figures over the balls, in inches, in place of the radius. */
  readonly outsideInches?: readonly [number, number, number];
}

/** One evening at the bench. */
export interface DemoSession {
  readonly id: string;
  readonly date: string;
  readonly grade: string;
  readonly operator: string;
  readonly diameters: readonly number[];
  readonly airCelsius: number;
}

/** One line of the work log, in the order of its columns. */
export type DemoWork = readonly [
  date: string,
  grade: string,
  abrasive: string,
  minutes: number,
  wets: number,
  position: string,
  stroke: string,
  session: string,
  thicknessCentre: string,
  thicknessEdge: string,
  pits: string,
  note: string,
];

/** An invented piece of glass, its truth, and how it was measured. */
export interface DemoPiece {
  readonly folder: string;
  readonly seed: number;
  readonly name: string;
  readonly note: string;
  readonly unit: "mm" | "in";
  readonly diameter: number;
  readonly bevel: number;
  readonly margin: number;
  readonly thickness: number;
  readonly glass: string;
  readonly targetRadius: number;
  readonly targetTolerance: number;
  readonly sagTolerance: number;
  readonly startingRadius?: number;
  readonly trueRadius: number;
  readonly departures: readonly DemoDeparture[];
  readonly ring: DemoRing;
  readonly foot: "foot out" | "feet out";
  /** Display step in mm. */
  readonly step: number;
  readonly scatter: SessionScatter;
  readonly places: readonly DemoPlace[];
  readonly sessions: readonly DemoSession[];
  readonly layout: "tidy" | "sheets";
  readonly work: readonly DemoWork[];
}
