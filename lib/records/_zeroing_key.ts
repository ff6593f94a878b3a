/**
 * The key of a zeroing: its label means nothing without its session.
 *
 * @module
 */

const LARGEST = 50_000;

/**
 * Makes a function from session and label to a key unique over all sessions.
 *
 * The keys of the session at hand are remembered, for its lines stand
 * together; a session that comes back gets equal keys anew.
 */
export function zeroingKeys(): (session: string, label: string) => string {
  const known = new Map<string, string>();
  let current: string | undefined;
  return (session, label) => {
    if (session !== current) {
      known.clear();
      current = session;
    }
    let key = known.get(label);
    if (key === undefined) {
      if (known.size >= LARGEST) known.clear();
      known.set(label, key = `${session} / ${label}`);
    }
    return key;
  };
}
