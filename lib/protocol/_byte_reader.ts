/** The part of a connection that is read. */
export interface ByteSource {
  read(into: Uint8Array): Promise<number | null>;
}

const CHUNK = 64 * 1024;
const FIRST_GROWTH = 1024 * 1024;

/** The peer closed the connection in the middle of a frame. */
export class CutOff extends Error {
  override name = "CutOff";
}

/**
 * Reads exact numbers of bytes from a connection that delivers them in pieces
 * of any size, down to one byte.
 *
 * A long frame's memory grows as its bytes arrive, so a header that only
 * claims a huge length costs nothing.
 */
export class ByteReader {
  #source: ByteSource;
  #buffer = new Uint8Array(CHUNK);
  #start = 0;
  #end = 0;

  constructor(source: ByteSource) {
    this.#source = source;
  }

  /** Gives `count` bytes, or null if the connection ended before the first. */
  async exactly(count: number): Promise<Uint8Array | null> {
    while (this.#end - this.#start < count && count <= CHUNK) {
      if (!(await this.#fill())) {
        if (this.#end === this.#start) return null;
        throw new CutOff("the connection ended inside a frame");
      }
    }
    if (count <= CHUNK) {
      const bytes = this.#buffer.slice(this.#start, this.#start + count);
      this.#start += count;
      return bytes;
    }
    return await this.#long(count);
  }

  async #fill(): Promise<boolean> {
    if (this.#start > 0) {
      this.#buffer.copyWithin(0, this.#start, this.#end);
      this.#end -= this.#start;
      this.#start = 0;
    }
    const got = await this.#source.read(this.#buffer.subarray(this.#end));
    if (got === null) return false;
    this.#end += got;
    return true;
  }

  async #long(count: number): Promise<Uint8Array> {
    let bytes = new Uint8Array(Math.min(count, FIRST_GROWTH));
    let filled = this.#end - this.#start;
    bytes.set(this.#buffer.subarray(this.#start, this.#end));
    this.#start = this.#end = 0;
    while (filled < count) {
      if (filled === bytes.length) {
        const wider = new Uint8Array(Math.min(count, bytes.length * 2));
        wider.set(bytes);
        bytes = wider;
      }
      const got = await this.#source.read(bytes.subarray(filled));
      if (got === null) throw new CutOff("the connection ended inside a frame");
      filled += got;
    }
    return bytes;
  }
}
