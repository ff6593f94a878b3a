import { join } from "node:path";

/** Path of one of the hard inputs. */
export function casePath(name: string): string {
  return join(import.meta.dirname!, "..", "cases", name);
}
