/**
 * Which version a program says it is.
 *
 * @module
 */

/**
 * Asks a program for its version.
 *
 * @param program Its name.
 * @param args What makes it say so.
 * @returns The first number with dots that it says; undefined if it is not
 * installed, fails or says none.
 */
export async function versionOf(
  program: string,
  ...args: readonly string[]
): Promise<string | undefined> {
  try {
    const { success, stdout, stderr } = await new Deno.Command(program, {
      args: [...args],
      stdin: "null",
      stdout: "piped",
      stderr: "piped",
    }).output();
    const said = new TextDecoder().decode(stdout) +
      new TextDecoder().decode(stderr);
    return success ? /\d+(\.\d+)+/.exec(said)?.[0] : undefined;
  } catch {
    return undefined;
  }
}
