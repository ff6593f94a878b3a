/** Text in the encodings that files arrive in. */

/** Text as UTF-16, with or without its mark. */
export function utf16(
  text: string,
  order: "little" | "big",
  marked: boolean,
): Uint8Array {
  const all = (marked ? "\ufeff" : "") + text;
  const bytes = new Uint8Array(2 * all.length);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < all.length; i++) {
    view.setUint16(2 * i, all.charCodeAt(i), order === "little");
  }
  return bytes;
}

/** Text as UTF-32 with its mark. */
export function utf32(text: string, order: "little" | "big"): Uint8Array {
  const all = [...`\ufeff${text}`];
  const bytes = new Uint8Array(4 * all.length);
  const view = new DataView(bytes.buffer);
  all.forEach((letter, i) =>
    view.setUint32(4 * i, letter.codePointAt(0)!, order === "little")
  );
  return bytes;
}

/** Text in an encoding of one byte for a letter; the letters it must hold. */
export function singleByte(
  text: string,
  encoding: "windows-1252" | "macintosh",
): Uint8Array {
  const decoder = new TextDecoder(encoding);
  const byteOf = new Map(
    Array.from({ length: 256 }, (_, byte) => [
      decoder.decode(new Uint8Array([byte])),
      byte,
    ]),
  );
  return Uint8Array.from(text, (letter) => {
    const byte = byteOf.get(letter);
    if (byte === undefined) throw new RangeError(`no ${letter} in ${encoding}`);
    return byte;
  });
}
