import { crc32, inflateRawSync } from 'node:zlib';

export interface ArchiveEntry {
  readonly path: string;
  readonly data: Buffer;
}

export type ArchiveReading =
  | { readonly ok: true; readonly entries: readonly ArchiveEntry[] }
  | { readonly ok: false; readonly fault: 'not-an-archive' | 'broken' | 'encrypted' | 'too-large' };

/** Signatures and places of the fields: PKWARE, APPNOTE.TXT 6.3, sections 4.3.7 (local header) and 4.3.9 (descriptor). */
const LOCAL_HEADER = 0x04034b50;
const CENTRAL_HEADER = 0x02014b50;
const DESCRIPTOR = 0x08074b50;
const LOCAL_HEADER_BYTES = 30;
/** Sizes that stand in a longer field elsewhere. */
const ELSEWHERE = 0xffffffff;
/** A descriptor with and without its signature, with sizes of four and of eight bytes. */
const DESCRIPTOR_BYTES = [16, 24, 12, 20] as const;
const STORED = 0;
const DEFLATED = 8;

/**
 * Opens a zip archive in memory, entry after entry from its beginning, and never unpacks more than `mostBytes` in all:
 * what an archive says about its own size is not believed. Anything out of order is a fault, not an exception.
 */
export function openArchive(archive: Buffer, mostBytes: number): ArchiveReading {
  if (archive.length < LOCAL_HEADER_BYTES || archive.readUInt32LE(0) !== LOCAL_HEADER)
    return { ok: false, fault: 'not-an-archive' };
  const entries: ArchiveEntry[] = [];
  let unpacked = 0;
  let at = 0;
  while (signatureAt(archive, at) === LOCAL_HEADER) {
    if (at + LOCAL_HEADER_BYTES > archive.length) return { ok: false, fault: 'broken' };
    const flags = archive.readUInt16LE(at + 6);
    if ((flags & 1) !== 0) return { ok: false, fault: 'encrypted' };
    const nameEnd = at + LOCAL_HEADER_BYTES + archive.readUInt16LE(at + 26);
    const start = nameEnd + archive.readUInt16LE(at + 28);
    const packed = unpack(
      archive.subarray(start),
      archive.readUInt16LE(at + 8),
      sizeIn(archive.readUInt32LE(at + 18), flags),
      mostBytes - unpacked,
    );
    if (typeof packed === 'string') return { ok: false, fault: packed };
    unpacked += packed.data.length;
    const behind = readDescriptor(archive, start + packed.bytes, flags);
    if ((behind.checksum ?? archive.readUInt32LE(at + 14)) !== crc32(packed.data))
      return { ok: false, fault: 'broken' };
    const path = archive.toString('utf8', at + LOCAL_HEADER_BYTES, nameEnd);
    if (!path.endsWith('/')) entries.push({ path, data: packed.data });
    at = behind.next;
  }
  return signatureAt(archive, at) === CENTRAL_HEADER ? { ok: true, entries } : { ok: false, fault: 'broken' };
}

/** Null when the header leaves the size open: it then follows the data, bit 3 of the flags. */
function sizeIn(size: number, flags: number): number | null {
  return size === ELSEWHERE || (size === 0 && (flags & 8) !== 0) ? null : size;
}

function unpack(
  rest: Buffer,
  method: number,
  size: number | null,
  mostBytes: number,
): { readonly data: Buffer; readonly bytes: number } | 'broken' | 'too-large' {
  if (size !== null && size > rest.length) return 'broken';
  if (method === STORED) {
    if (size === null) return 'broken';
    return size > mostBytes ? 'too-large' : { data: rest.subarray(0, size), bytes: size };
  }
  if (method !== DEFLATED) return 'broken';
  try {
    // With `info` the answer says how much of the input was used, which the types do not know.
    const { buffer, engine } = inflateRawSync(size === null ? rest : rest.subarray(0, size), {
      maxOutputLength: Math.max(mostBytes, 1),
      info: true,
    }) as unknown as { readonly buffer: Buffer; readonly engine: { readonly bytesWritten: number } };
    return { data: buffer, bytes: size ?? engine.bytesWritten };
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE' ? 'too-large' : 'broken';
  }
}

/** Where the next header begins, and the checksum of the data where a descriptor behind them gives it. */
function readDescriptor(
  archive: Buffer,
  at: number,
  flags: number,
): { readonly next: number; readonly checksum: number | null } {
  if ((flags & 8) === 0) return { next: at, checksum: null };
  const signed = signatureAt(archive, at) === DESCRIPTOR;
  const lengths = signed ? DESCRIPTOR_BYTES : DESCRIPTOR_BYTES.slice(2);
  const length = lengths.find((bytes) =>
    [LOCAL_HEADER, CENTRAL_HEADER].includes(signatureAt(archive, at + bytes)),
  );
  return length === undefined
    ? { next: at, checksum: null }
    : { next: at + length, checksum: archive.readUInt32LE(at + (signed ? 4 : 0)) };
}

function signatureAt(archive: Buffer, at: number): number {
  return at + 4 <= archive.length ? archive.readUInt32LE(at) : 0;
}
