// Windows-1252 where it differs from Latin-1 (WHATWG Encoding Standard, index-windows-1252). Node 20's own decoder of that name gives Latin-1.
const CP1252 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** Bytes to text: UTF-16 and UTF-8 by their byte-order mark, else UTF-8, else (bytes that are no UTF-8) Windows-1252. */
export function decodeText(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const latin = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
    return latin.replace(/[\u0080-\u009f]/g, (char) => CP1252[char.charCodeAt(0) - 0x80]);
  }
}

/** Whether the bytes open with the mark of UTF-16, in which zero bytes are ordinary. */
export function isUtf16(bytes: Uint8Array): boolean {
  return (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
}
