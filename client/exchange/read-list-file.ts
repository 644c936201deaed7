/** What a chosen, dropped or pasted source turned out to be; its name proves nothing. */
export type ListSource =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'workbook'; readonly base64: string }
  | { readonly kind: 'project'; readonly document: object }
  | { readonly kind: 'refused'; readonly message: string; readonly wayOut: string };

/** What the server takes in one request, bytes. */
const LARGEST_FILE_BYTES = 8_000_000;
/** In base64, as it travels, a workbook of this size still fits. */
const LARGEST_WORKBOOK_BYTES = 5_000_000;
/** First bytes of an archive, which a workbook is, and of an old or locked workbook, which the server explains. */
const WORKBOOK_STARTS = [
  [0x50, 0x4b, 0x03, 0x04],
  [0xd0, 0xcf, 0x11, 0xe0],
];

export async function readListFile(file: File): Promise<ListSource> {
  if (file.size > LARGEST_FILE_BYTES) return tooLarge(file, LARGEST_FILE_BYTES);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const isWorkbook = WORKBOOK_STARTS.some((start) => start.every((byte, index) => bytes[index] === byte));
  if (!isWorkbook) return readListText(decode(bytes));
  if (file.size > LARGEST_WORKBOOK_BYTES) return tooLarge(file, LARGEST_WORKBOOK_BYTES);
  return { kind: 'workbook', base64: base64Of(bytes) };
}

/** A project document is told from a list by what it says it is. */
export function readListText(text: string): ListSource {
  if (!/^\s*\{\s*"/.test(text)) return { kind: 'text', text };
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return {
      kind: 'refused',
      message: 'This looks like a JSON file, but it is damaged.',
      wayOut: 'Export the project again, or correct the file where a bracket, comma or quote is missing.',
    };
  }
  if ((json as { readonly format?: unknown }).format === 'plywright-project')
    return { kind: 'project', document: json as object };
  return {
    kind: 'refused',
    message: 'This JSON file is not a Plywright project.',
    wayOut: 'Choose a file that was exported as a project file, or a part list as CSV or XLSX.',
  };
}

/** Text as spreadsheets save it: UTF-8, UTF-16 with its mark, or the old Western code page. */
function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** Characters made into a text at a time; more would be more arguments than a call takes. */
const BLOCK = 32_768;

function base64Of(bytes: Uint8Array): string {
  let binary = '';
  for (let at = 0; at < bytes.length; at += BLOCK)
    binary += String.fromCharCode(...bytes.subarray(at, at + BLOCK));
  return btoa(binary);
}

function tooLarge(file: File, most: number): ListSource {
  const megabytes = (bytes: number): number => Math.ceil(bytes / 100_000) / 10;
  return {
    kind: 'refused',
    message: `“${file.name}” has ${megabytes(file.size)} MB; at most ${megabytes(most)} MB can be read.`,
    wayOut: 'Copy the rows of the part list alone and paste them here.',
  };
}
