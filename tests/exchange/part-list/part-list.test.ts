import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { guessMapping } from '../../../server/exchange/part-list/guess-mapping.ts';
import { HEADING_WORDS } from '../../../server/exchange/part-list/heading-words.ts';
import { type ImportChoices, previewPartList } from '../../../server/exchange/part-list/preview-part-list.ts';
import { readTextCells, readWorkbookCells } from '../../../server/exchange/part-list/read-cells.ts';
import { joinSplitLines, readLooseLine } from '../../../server/exchange/part-list/read-loose-line.ts';
import { splitHeading } from '../../../server/exchange/part-list/split-heading.ts';
import type { Product } from '../../../server/planning/product.ts';

function product(id: string, kind: Product['kind'], shortName: string): Product {
  return {
    id,
    kind,
    name: shortName,
    shortName,
    unit: kind === 'banding' ? 'm' : 'pcs',
    choices: {},
    figures: {},
    recoat: [],
    recoatEvidence: null,
    packs: [],
    retired: false,
    origin: 'shipped',
    note: null,
  };
}

const products = [
  product('birch-ply-18', 'sheet', 'birch 18'),
  product('birch-tape-22', 'banding', 'birch tape 22'),
];

function preview(text: string, choices: Partial<ImportChoices> = {}) {
  const table = readTextCells(text);
  const guess = guessMapping(table);
  const rows = previewPartList(table, {
    units: 'metric',
    headingRow: guess.headingRow,
    columns: guess.columns,
    sizeOrder: 'length-width',
    bareUnit: null,
    bandingId: '',
    materialId: '',
    recipeId: '',
    products,
    recipes: [{ id: '7', name: 'Clear satin' }],
    ...choices,
  });
  const asked = guess.questions.map(({ text: words }) => words).join(' ');
  return { table, guess, rows, asked };
}

describe('splitting a list into cells', () => {
  it.each([
    ['tabs', 'Part\tQty\tL\tW\nSide\t2\t600\t300', '\t'],
    ['semicolons, with decimal commas', 'Part;Qty;L;W\nSide;2;600,5;300', ';'],
    ['commas', 'Part,Qty,L,W\nSide,2,600,300', ','],
    ['bars', 'Part|Qty|L|W\nSide|2|600|300', '|'],
    ['no delimiter at all', '4 pcs side 600 x 300\n2 pcs top 700 x 300', 'lines'],
  ])('splits at %s', (_name, text, split) => {
    expect(readTextCells(text).split).toBe(split);
  });

  it('takes the separator that gives the most cells, when others stand in most lines as well', () => {
    const table = readTextCells('Part,Qty,L,W,Note\nSide,2,600,300,dado; glue\nTop,1,700,300,bevel; sand');
    expect(table.split).toBe(',');
    expect(readTextCells('Part;L;W\nSide;600,5;300,5\nTop;700,5;300,5').split).toBe(';');
  });

  it('keeps quoted delimiters, quotes and line breaks inside a cell (RFC 4180 section 2)', () => {
    const table = readTextCells('name,qty,note\n"shelf, ""low""",2,"two\nlines"\ntop,1,x');
    expect(table.rows[1]).toEqual(['shelf, "low"', '2', 'two\nlines']);
  });

  it('leaves out blank rows and says which source row each row is', () => {
    const table = readTextCells('Part,Qty\n\nSide,2\n,\nTop,1\n');
    expect(table.lines).toEqual([1, 3, 5]);
  });

  it('reads the first sheet of a workbook', async () => {
    const workbook = await writeXlsxFile([
      [{ value: 'Part' }, { value: 'Length (mm)' }],
      [{ value: 'Side' }, { value: 600.25, type: Number }],
    ]).toBuffer();
    expect((await readWorkbookCells(workbook)).rows).toEqual([
      ['Part', 'Length (mm)'],
      ['Side', '600.25'],
    ]);
  });
});

describe('guessing what the columns are', () => {
  it('knows every heading word of its list, in capitals and with punctuation', () => {
    for (const [field, words] of Object.entries(HEADING_WORDS)) {
      for (const word of words) {
        const table = readTextCells(`${word.toUpperCase()}:\tname\tqty\n1\t2\t3`);
        const guess = guessMapping(table);
        expect(guess.headingRow, word).toBe(0);
        expect(guess.columns[0]?.field, word).toBe(field);
      }
    }
  });

  it.each([
    ['Length (mm)', 'length', 'mm'],
    ['W [in]', 'w', 'in'],
    ['Thk, mm', 'thk', 'mm'],
    ['Length in mm', 'length', 'mm'],
    ['L/mm', 'l', 'mm'],
    ['No.', 'no', null],
    ['L (constructor)', 'l (constructor)', null],
    ['part_name', 'part name', null],
  ])('takes the unit out of the heading %s', (heading, word, unit) => {
    expect(splitHeading(heading)).toEqual({ word, unit });
  });

  it('asks which way a depth or a height lies instead of assuming it', () => {
    const { guess, asked } = preview('Part;Qty;Length;Depth\nSide;2;600;300');
    expect(guess.columns[3]?.field).toBe('width');
    expect(asked).toContain('across the grain');
    expect(preview('Part;Qty;Width;Height\nSide;2;600;300').asked).toContain('along the grain');
    expect(preview('Part;Qty;L;W;Height\nSide;2;600;300;18').asked).toContain('a third size');
  });

  it('asks for the order where sizes stand together, and for headings where there are none', () => {
    expect(preview('Part,Qty,Size\nSide,2,600 x 300').asked).toContain('which comes first');
    expect(preview('4 pcs side 600 x 300').asked).toContain('which comes first');
    expect(preview('Side,2,600,300\nTop,1,700,300').asked).toContain('no headings');
    expect(preview('Part,Qty\nSide,2\nTop,1').asked).toContain('choose them');
  });

  it('finds a decimal comma per column, and only where no cell has a point', () => {
    const { guess } = preview('Part;L;W\nSide;600,5;300.5\nTop;700;12,5');
    expect(guess.columns.map((column) => column.decimalComma)).toEqual([false, true, false]);
  });

  it('finds a heading row below a title', () => {
    const { guess, rows } = preview('Window seat\t\t\t\nPart\tQty\tL\tW\nSide\t2\t600\t300');
    expect(guess.headingRow).toBe(1);
    expect(rows.map((row) => [row.line, row.name.text])).toEqual([[3, 'Side']]);
  });
});

describe('previewing the rows', () => {
  it('gives bare numbers the unit of their heading, whatever the project counts in', () => {
    const [row] = preview('Part;Qty;Length (mm);W [in]\nSide;2;600;11 3/4', { units: 'us' }).rows;
    expect(row?.length).toEqual({ text: '600 mm', state: 'read', reason: null });
    expect(row?.width.text).toMatch(/^11 3\/4/);
    expect(row?.width.state).toBe('read');
  });

  it('carries an unreadable size over as it stands and says why', () => {
    const [row] = preview('Part;Qty;L;W\nSide;2;21 13/1;1,220').rows;
    expect(row?.length.state).toBe('refused');
    expect(row?.length.text).toBe('21 13/1');
    expect(row?.length.reason).toBeTruthy();
    expect(row?.width.state).toBe('refused');
  });

  it('reads three decimals behind a comma with the rest of the column, but marks them as doubtful', () => {
    const { rows } = preview('Part;L;W\nSide;12,5;300\nTop;1,220;300');
    expect(rows[0]?.length).toMatchObject({ text: '12.5 mm', state: 'read' });
    expect(rows[1]?.length).toMatchObject({ text: '1.220 mm', state: 'doubt' });
  });

  it('marks millimetres that look like thousands with a point, and leaves inches and longer ones alone', () => {
    const cell = (text: string, heading = 'L', units: 'metric' | 'us' = 'metric') =>
      preview(`Part;${heading};W\nSide;${text};300`, { units }).rows[0]?.length;
    expect(cell('1.800')).toMatchObject({ text: '1.800 mm', state: 'doubt' });
    expect(cell('1.800', 'L (mm)', 'us')).toMatchObject({ state: 'doubt' });
    expect(cell('600.075')).toMatchObject({ state: 'read' });
    expect(cell('1.800 m')).toMatchObject({ state: 'read' });
    expect(cell('1.875', 'L', 'us')).toMatchObject({ state: 'read' });
    expect(cell('1.875', 'L (in)')).toMatchObject({ state: 'read' });
  });

  it.each([
    ['4 pcs', '4'],
    ['(12)', '12'],
    ['3 off', '3'],
    ['x2', '2'],
  ])('reads the quantity %s', (text, quantity) => {
    expect(preview(`Part;Qty;L;W\nSide;${text};600;300`).rows[0]?.quantity).toMatchObject({
      text: quantity,
      state: 'read',
    });
  });

  it('takes a missing quantity as one, and says so', () => {
    expect(preview('Part;L;W\nSide;600;300').rows[0]?.quantity).toMatchObject({ text: '1', state: 'doubt' });
  });

  it('takes a count out of the name only where there is no column for it', () => {
    expect(preview('Part;L;W\nShelf (4);600;300').rows[0]?.quantity.text).toBe('4');
    expect(preview('Part;Qty;L;W\nShelf (4);2;600;300').rows[0]).toMatchObject({
      quantity: { text: '2' },
      name: { text: 'Shelf (4)' },
    });
  });

  it('reads sizes in one cell in the order chosen, and leaves a third one out in the open', () => {
    const text = 'Part,Qty,Size\nSide,2,600 x 300 x 18';
    expect(preview(text).rows[0]).toMatchObject({
      length: { text: '600 mm', state: 'doubt' },
      width: { text: '300 mm' },
    });
    expect(preview(text, { sizeOrder: 'width-length' }).rows[0]).toMatchObject({
      length: { text: '300 mm' },
      width: { text: '600 mm' },
    });
  });

  it('matches materials and bandings by their names, and asks about unknown ones', () => {
    const [known, unknown] = preview(
      'Part;L;W;Material;Front\nSide;600;300;Birch 18;birch tape 22\nTop;600;300;oak;yes',
    ).rows;
    expect(known?.material).toMatchObject({ text: 'birch-ply-18', state: 'read' });
    expect(known?.edges.front).toMatchObject({ text: 'birch-tape-22', state: 'read' });
    expect(unknown?.material.state).toBe('doubt');
    expect(unknown?.edges.front).toMatchObject({ text: 'bare', state: 'doubt' });
  });

  it('matches finishes by their names, on one face or on both', () => {
    const text =
      'Part;L;W;Finish;Back face\nSide;600;300;clear SATIN;none\nTop;600;300;;\nDoor;600;300;lacquer;';
    const faces = (choices = {}) =>
      preview(text, choices).rows.map(({ showFace, backFace }) => [
        showFace.text,
        backFace.text,
        backFace.state,
      ]);
    expect(faces()).toEqual([
      ['7', '', 'read'],
      ['', '', 'empty'],
      ['', '', 'doubt'],
    ]);
    expect(faces({ recipeId: '7' })).toEqual([
      ['7', '', 'read'],
      ['7', '7', 'read'],
      ['7', '7', 'doubt'],
    ]);
  });

  it('bands ticked edges with the banding chosen for the import', () => {
    const [row] = preview('Part;L;W;Edges\nSide;600;300;front, left', { bandingId: 'birch-tape-22' }).rows;
    expect(row && Object.values(row.edges).map((cell) => cell.text)).toEqual([
      'birch-tape-22',
      'hidden',
      'birch-tape-22',
      'hidden',
    ]);
  });

  it('never throws, whatever is pasted', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => {
        preview(text);
      }),
      { numRuns: 500 },
    );
  });
});

describe('reading a list written as lines', () => {
  // Row shapes met in published plans: letter key with a bracketed count, count before the size, count words.
  it.each([
    ['PIECE B (12) 3/4” shelf plates – 8-1/2” x 8”', 'PIECE B 3/4” shelf plates', '12', '8-1/2” x 8”'],
    ['4 pcs side 600 x 300', 'side', '4', '600 x 300'],
    ['3 off rail 12 x 36', 'rail', '3', '12 x 36'],
    ['five strips 2 x 60', 'strips', '5', '2 x 60'],
    ['2 sides 11¼” x 59¼”', 'sides', '2', '11¼” x 59¼”'],
    ['Shelf 2 900 x 300 mm', 'Shelf 2', null, '900 x 300 mm'],
  ])('takes apart %s', (line, name, quantity, size) => {
    expect(readLooseLine(line)).toEqual({ name, quantity, size });
  });

  it('marks a line whose name still holds a size, such as a hyphen after the quantity', () => {
    const { rows } = preview('24 - 14 inches long, by 3/4 x 3/4 inch square\n2 pcs side 600 x 300');
    expect(rows[0]?.name.state).toBe('doubt');
  });

  it('joins a name, its size and its material standing on lines of their own', () => {
    expect(
      joinSplitLines(['Side panel', '2 pcs 600 x 300', '3/4 birch', 'Top', '700 x 300'], [1, 2, 3, 4, 5]),
    ).toEqual([
      { text: 'Side panel 2 pcs 600 x 300 3/4 birch', line: 1 },
      { text: 'Top 700 x 300', line: 4 },
    ]);
  });
});
