import { describe, expect, it } from 'vitest';
import { parseDocumentBytes } from '../../../server/exchange/document/parse-document-bytes.ts';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

function message(bytes: Uint8Array): string {
  const parsed = parseDocumentBytes(bytes);
  if (parsed.ok) throw new Error('it was read');
  expect(parsed.problem.at).toEqual({ table: 'document', id: null, field: null });
  expect(parsed.problem.wayOut).not.toBe('');
  return parsed.problem.message;
}

describe('the bytes of a document', () => {
  it('are JSON in UTF-8, with or without a byte order mark', () => {
    expect(parseDocumentBytes(utf8('{"a":"23⅝"}'))).toEqual({ ok: true, json: { a: '23⅝' } });
    expect(parseDocumentBytes(utf8('\uFEFF{"a":1}'))).toEqual({ ok: true, json: { a: 1 } });
  });

  it('are refused in another encoding', () => {
    // "Maß" in Latin-1, and a text in UTF-16
    expect(message(Uint8Array.from([0x22, 0x4d, 0x61, 0xdf, 0x22]))).toBe('The file is not UTF-8 text.');
    expect(message(Uint8Array.from([0xff, 0xfe, 0x7b, 0x00]))).toBe('The file is not UTF-8 text.');
  });

  it('are refused when there are none', () => {
    expect(message(utf8(''))).toBe('The file is empty.');
    expect(message(utf8(' \n'))).toBe('The file is empty.');
  });

  it('are refused with line and column where the engine knows them', () => {
    expect(message(utf8('{\n  "a": 1,\n}'))).toMatch(/^The file is not JSON: .+ in line 3, column 1\.$/);
    expect(message(utf8('{"a" 1}'))).toMatch(/ in line 1, column 6\.$/);
  });

  it('are refused with the text nearby where it does not', () => {
    expect(message(utf8('{"a": NaN}'))).toMatch(/NaN/);
    expect(message(utf8('[1,\n2,,]'))).toMatch(/2,,/);
  });
});
