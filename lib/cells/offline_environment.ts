/**
 * Keeping the runtime itself off the network.
 *
 * @module
 */

/** An address of this machine at which no proxy listens. */
const NOWHERE = "http://127.0.0.1:9";

/**
 * Variables under which the runtime fetches no module and no package, though
 * code imports them: what is not in its cache is then missing.
 *
 * The runtime downloads packages, and its language server even asks for
 * addresses it only finds in a text, past all permissions; so every request is
 * sent to a proxy that is not there. Nothing is asked of a name server either.
 *
 * @returns Variables to add to the environment of a process.
 *
 * @see Deno manual, "Environment variables" (HTTP_PROXY, HTTPS_PROXY,
 * NO_PROXY).
 */
export function offlineEnvironment(): Record<string, string> {
  const names = ["HTTP_PROXY", "HTTPS_PROXY", "ALL_PROXY"];
  return Object.fromEntries([
    ...names.flatMap((name) => [
      [name, NOWHERE],
      [name.toLowerCase(), NOWHERE],
    ]),
    ["NO_PROXY", ""],
    ["no_proxy", ""],
  ]);
}
