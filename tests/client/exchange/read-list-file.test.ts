import { describe, expect, it } from 'vitest';
import { readListFile, readListText } from '../../../client/exchange/read-list-file.ts';

const file = (bytes: Uint8Array<ArrayBuffer> | string, name = 'list.csv'): File => new File([bytes], name);

describe('telling what a file is by what is in it', () => {
  it('reads text as spreadsheets save it', async () => {
    // "Türe" in UTF-8, in UTF-16 with its mark in both orders, and in Windows-1252.
    const forms = [
      new Uint8Array([0x54, 0xc3, 0xbc, 0x72, 0x65]),
      new Uint8Array([0xff, 0xfe, 0x54, 0, 0xfc, 0, 0x72, 0, 0x65, 0]),
      new Uint8Array([0xfe, 0xff, 0, 0x54, 0, 0xfc, 0, 0x72, 0, 0x65]),
      new Uint8Array([0x54, 0xfc, 0x72, 0x65]),
    ];
    for (const bytes of forms)
      expect(await readListFile(file(bytes))).toEqual({ kind: 'text', text: 'Türe' });
  });

  it('takes a workbook for one under any name, and text for text', async () => {
    const bytes = Buffer.concat([Buffer.from('PK\u0003\u0004'), Buffer.alloc(100_000, 7)]);
    expect(await readListFile(file(bytes, 'list.csv'))).toEqual({
      kind: 'workbook',
      base64: bytes.toString('base64'),
    });
    expect(await readListFile(file('Part;Qty', 'list.xlsx'))).toMatchObject({ kind: 'text' });
    const old = Buffer.from('d0cf11e0a1b11ae1', 'hex');
    expect(await readListFile(file(old, 'list.xls'))).toMatchObject({ kind: 'workbook' });
  });

  it('tells a project file from a list, and from JSON that is something else', () => {
    const document = { format: 'plywright-project', version: 1, parts: [] };
    expect(readListText(JSON.stringify(document, null, 2))).toEqual({ kind: 'project', document });
    expect(readListText('{"format": "other"}')).toMatchObject({ kind: 'refused' });
    expect(readListText('{"format": "plywright-project", ')).toMatchObject({ kind: 'refused' });
    expect(readListText('{1} Side 600 x 300')).toMatchObject({ kind: 'text' });
  });

  it('refuses files that are too large before they are sent', async () => {
    const packed = Buffer.concat([Buffer.from('PK\u0003\u0004'), Buffer.alloc(5_000_000)]);
    expect(await readListFile(file(packed))).toMatchObject({
      kind: 'refused',
      message: expect.stringContaining('5.1 MB'),
    });
    expect(await readListFile(file(new Uint8Array(8_000_001)))).toMatchObject({ kind: 'refused' });
  });
});
