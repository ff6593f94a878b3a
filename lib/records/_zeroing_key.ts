/**
 * The key of a zeroing: its label means nothing without its session.
 *
 * @module
 */

const LARGEST = 50_000;

/** Makes a function from session and label to a key unique over all sessions. */
export function zeroingKeys(): (session: string, label: string) => string {
  const known = new Map<string, Map<string, string>>();
  return (session, label) => {
    let ofSession = known.get(session);
    if (ofSession === undefined) {
      if (known.size >= LARGEST) known.clear();
      known.set(session, ofSession = new Map());
    }
    let key = ofSession.get(label);
    if (key === undefined) {
      if (ofSession.size >= LARGEST) ofSession.clear();
      ofSession.set(label, key = `${session} / ${label}`);
    }
    return key;
  };
}
