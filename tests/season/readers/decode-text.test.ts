import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../src/season/readers/decode-text.ts';

const text = 'T °F;“MC”;12–13 €\n';

describe('the encoding of a file', () => {
  it('UTF-8 with and without its mark, UTF-16 both ways round', () => {
    expect(decodeText(Buffer.from(text))).toBe(text);
    expect(decodeText(Buffer.from(`\ufeff${text}`))).toBe(text);
    const little = Buffer.from(`\ufeff${text}`, 'utf16le');
    expect(decodeText(little)).toBe(text);
    expect(decodeText(Buffer.from(little).swap16())).toBe(text);
  });
  it('else Windows-1252 (bytes after the WHATWG Encoding Standard, index-windows-1252)', () => {
    const bytes = [
      0x54, 0x20, 0xb0, 0x46, 0x3b, 0x93, 0x4d, 0x43, 0x94, 0x3b, 0x31, 0x32, 0x96, 0x31, 0x33, 0x20, 0x80, 0x0a,
    ];
    expect(decodeText(Uint8Array.from(bytes))).toBe(text);
  });
});
