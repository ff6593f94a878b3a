/**
 * The key of a zeroing: its label means nothing without its session, nor where
 * another person has zeroed since and takes it up again.
 *
 * @module
 */

import type { Fault } from "./_line_faults.ts";

const LARGEST = 50_000;

interface Labelled {
  readonly key: string;
  readonly operator: string | undefined;
}

/** A zeroing, and whether its label had been another's before. */
export interface ZeroingKey {
  /** Unique over all sessions. */
  readonly key: string;
  /** The person whose zeroing of the same label ended before; once for each. */
  readonly before?: string;
}

/**
 * Makes a function from session, label and operator to a unique key.
 *
 * One label in two sessions names two zeroings. So it does where it comes back
 * after another zeroing and another person reads: zero is pressed once. Two who
 * read in turns under one zero share it.
 *
 * The keys of the session at hand are remembered, for its lines stand
 * together; a session that comes back gets equal keys anew.
 */
export function zeroingKeys(): (
  session: string,
  label: string,
  operator: string | undefined,
) => ZeroingKey {
  const first = new Map<string, Labelled>();
  const later = new Map<string, ZeroingKey>();
  let current: string | undefined;
  let last: string | undefined;
  let lastOperator: string | undefined;
  let lastKey: ZeroingKey = { key: "" };
  const find = (session: string, label: string, operator?: string) => {
    const known = first.get(label);
    if (known === undefined) {
      if (first.size >= LARGEST) first.clear();
      const key = `${session} / ${label}`;
      first.set(label, { key, operator });
      return { key };
    }
    const isOther = operator !== undefined && known.operator !== undefined &&
      operator !== known.operator;
    if (!isOther) return { key: known.key };
    const who = `${label}\u0000${operator}`;
    const seen = later.get(who);
    if (seen !== undefined) return seen;
    const key = label === last ? known.key : `${known.key}, ${operator}`;
    if (later.size >= LARGEST) later.clear();
    later.set(who, { key });
    return label === last ? { key } : { key, before: known.operator };
  };
  return (session, label, operator) => {
    const isNew = session !== current;
    if (isNew) {
      first.clear();
      later.clear();
      last = undefined;
      current = session;
    }
    if (!isNew && label === last && operator === lastOperator) {
      return lastKey.before === undefined
        ? lastKey
        : lastKey = { key: lastKey.key };
    }
    const found = find(session, label, operator);
    last = label;
    lastOperator = operator;
    return lastKey = found;
  };
}

/** Of a label that names two zeroings of one session. */
export function labelOfTwo(
  label: string,
  operator: string | undefined,
  before: string,
): Fault {
  return {
    code: "zeroing-of-two",
    message:
      `zeroing ${label} of ${operator} comes after another zeroing than zeroing ${label} of ${before}, and was taken for one of its own`,
    mend:
      "nothing, if each pressed zero; if both read under one zero, put its lines together",
  };
}
