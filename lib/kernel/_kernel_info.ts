import { type JsonObject, PROTOCOL_VERSION } from "../protocol/message.ts";

/** Who the kernel is, for `kernel_info_reply`. */
export function kernelInfo(version: string): JsonObject {
  return {
    status: "ok",
    protocol_version: PROTOCOL_VERSION,
    implementation: "sagbook",
    implementation_version: version,
    language_info: {
      name: "typescript",
      version: Deno.version.typescript,
      mimetype: "text/x.typescript",
      file_extension: ".ts",
      pygments_lexer: "typescript",
      codemirror_mode: "typescript",
      nbconvert_exporter: "script",
    },
    banner:
      `sagbook ${version}: TypeScript ${Deno.version.typescript} on Deno ${Deno.version.deno}, checked before it runs`,
    help_links: [
      { text: "Deno manual", url: "https://docs.deno.com/" },
      {
        text: "TypeScript handbook",
        url: "https://www.typescriptlang.org/docs/",
      },
    ],
  };
}
