import { crc32, deflateRawSync } from 'node:zlib';

export interface ZipOptions {
  /** Sizes and checksum behind the data instead of in the header, as writers of streams do. */
  readonly streamed?: boolean;
  readonly stored?: boolean;
  readonly flags?: number;
  /** The size the header claims. */
  readonly claimedSize?: number;
}

/** A zip archive of the given files, for tests: what a real writer makes, or something crooked. PKWARE APPNOTE 4.3. */
export function zipArchive(
  files: Readonly<Record<string, string | Buffer>>,
  options: ZipOptions = {},
): Buffer {
  const { streamed = false, stored = false, flags = 0, claimedSize } = options;
  const parts: Buffer[] = [];
  const central: Buffer[] = [];
  let at = 0;
  for (const [path, content] of Object.entries(files)) {
    const data = Buffer.from(content);
    const packed = stored ? data : deflateRawSync(data);
    const name = Buffer.from(path);
    const fields = Buffer.alloc(26);
    fields.writeUInt16LE(20, 0);
    fields.writeUInt16LE(flags | (streamed ? 8 : 0), 2);
    fields.writeUInt16LE(stored ? 0 : 8, 4);
    if (!streamed) {
      fields.writeUInt32LE(crc32(data), 10);
      fields.writeUInt32LE(packed.length, 14);
      fields.writeUInt32LE(claimedSize ?? data.length, 18);
    }
    fields.writeUInt16LE(name.length, 22);
    const header = Buffer.concat([Buffer.from('PK\u0003\u0004'), fields, name]);
    const descriptor = Buffer.alloc(streamed ? 16 : 0);
    if (streamed) {
      descriptor.write('PK\u0007\u0008');
      descriptor.writeUInt32LE(crc32(data), 4);
      descriptor.writeUInt32LE(packed.length, 8);
      descriptor.writeUInt32LE(data.length, 12);
    }
    const entry = Buffer.alloc(46);
    entry.write('PK\u0001\u0002');
    fields.copy(entry, 6, 0, 26);
    entry.writeUInt32LE(crc32(data), 16);
    entry.writeUInt32LE(packed.length, 20);
    entry.writeUInt32LE(data.length, 24);
    entry.writeUInt32LE(at, 42);
    central.push(Buffer.concat([entry, name]));
    parts.push(header, packed, descriptor);
    at += header.length + packed.length + descriptor.length;
  }
  const end = Buffer.alloc(22);
  end.write('PK\u0005\u0006');
  end.writeUInt16LE(central.length, 8);
  end.writeUInt16LE(central.length, 10);
  end.writeUInt32LE(
    central.reduce((sum, entry) => sum + entry.length, 0),
    12,
  );
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...parts, ...central, end]);
}

/** The files of the smallest workbook: one sheet with the given XML between its rows' brackets. */
export function workbookFiles(rows: string): Record<string, string> {
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  return {
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets><sheet name="A" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${relations}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    'xl/worksheets/sheet1.xml': `<worksheet xmlns="${main}"><sheetData>${rows}</sheetData></worksheet>`,
  };
}
