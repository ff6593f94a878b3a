const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** A message of JSON-RPC 2.0, of either direction. */
export interface RpcMessage {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly message: string };
}

/** One message with the header that language servers use. */
export function encodeRpc(message: RpcMessage): Uint8Array {
  const body = encoder.encode(JSON.stringify({ jsonrpc: "2.0", ...message }));
  const head = encoder.encode(`Content-Length: ${body.length}\r\n\r\n`);
  const whole = new Uint8Array(head.length + body.length);
  whole.set(head);
  whole.set(body, head.length);
  return whole;
}

/** Reads messages from a stream of bytes cut anywhere. */
export async function* decodeRpc(
  stream: AsyncIterable<Uint8Array>,
): AsyncGenerator<RpcMessage> {
  let bytes = new Uint8Array(0);
  let wanted = -1;
  for await (const chunk of stream) {
    const joined = new Uint8Array(bytes.length + chunk.length);
    joined.set(bytes);
    joined.set(chunk, bytes.length);
    bytes = joined;
    for (;;) {
      if (wanted < 0) {
        const end = headEnd(bytes);
        if (end < 0) break;
        const head = decoder.decode(bytes.subarray(0, end));
        wanted = Number(/content-length:\s*(\d+)/i.exec(head)?.[1]);
        bytes = bytes.slice(end + 4);
      }
      if (bytes.length < wanted) break;
      yield JSON.parse(decoder.decode(bytes.subarray(0, wanted)));
      bytes = bytes.slice(wanted);
      wanted = -1;
    }
  }
}

function headEnd(bytes: Uint8Array): number {
  for (let at = 0; at + 3 < bytes.length; at++) {
    if (bytes[at] === 13 && bytes[at + 2] === 13 && bytes[at + 3] === 10) {
      return at;
    }
  }
  return -1;
}
