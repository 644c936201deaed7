import { describe, expect, it } from 'vitest';
import { readCatalogue } from '../../../db/catalogue/read-catalogue.ts';
import { writeCsv } from '../../../server/exchange/export/write-csv.ts';
import { type ImportAnswers, previewImport } from '../../../server/exchange/import/preview-import.ts';
import { readTextCells } from '../../../server/exchange/part-list/read-cells.ts';
import type { UnitSystem } from '../../../server/planning/project-input.ts';
import { plannedDocument } from '../export/planned-document.ts';

/** Lists as people write them. Headings and row shapes as met in published plans, handbooks and shop listings. */

const { products } = readCatalogue();

function preview(text: string, units: UnitSystem = 'metric', answers: ImportAnswers = {}) {
  return previewImport(readTextCells(text), answers, { units, products, recipes: [] });
}

const asked = (text: string, units: UnitSystem = 'metric'): readonly string[] =>
  preview(text, units).questions.map(({ kind }) => kind);

describe('a heading', () => {
  // Written out, not taken from the program's own list of words.
  const headings: readonly (readonly [string, string])[] = [
    ...['Piece', 'Part name', 'Code letter', 'Part'].map((heading) => [heading, 'name'] as const),
    ...['Quantity', 'Number of each', 'Qty', 'Pcs', 'No.', 'Off', 'Count'].map(
      (heading) => [heading, 'quantity'] as const,
    ),
    ...['Length', 'L', 'Len', 'Long'].map((heading) => [heading, 'length'] as const),
    ...['Width', 'W', 'Wid'].map((heading) => [heading, 'width'] as const),
    ...['Thickness', 'T', 'Thk'].map((heading) => [heading, 'thickness'] as const),
    ...['Dimensions', 'Net', 'Finished', 'Finished size'].map((heading) => [heading, 'size'] as const),
    ...['Material', 'Mat', 'Stock'].map((heading) => [heading, 'material'] as const),
    ...['Grain', 'Dir'].map((heading) => [heading, 'grain'] as const),
    ...['Edge', 'Band', 'EB'].map((heading) => [heading, 'edges'] as const),
    ['E1', 'edgeFront'],
    ['E2', 'edgeBack'],
    ['E3', 'edgeLeft'],
    ['E4', 'edgeRight'],
    ...['Finish', 'Coats'].map((heading) => [heading, 'finish'] as const),
    ...['Notes', 'Comments', 'Remarks'].map((heading) => [heading, 'note'] as const),
    ...['Diameter', 'Dia.', 'Ø'].map((heading) => [heading, 'diameter'] as const),
    ...['Radius', 'Corner radius', 'Corners'].map((heading) => [heading, 'radius'] as const),
    ['Corner front left', 'cornerFrontLeft'],
    ['Shape', 'shape'],
  ];
  it.each(headings)('«%s» is the %s', (heading, field) => {
    // Beside two columns that make the row a heading in any case.
    const others = ['Section', 'Memo'].map((other) => (field === 'note' ? 'Section' : other));
    expect(preview(`${others[0]}\tGrain direction\t${heading}\na\tb\tc`).columns[2]?.field).toBe(
      field === 'grain' ? 'ignore' : field,
    );
    expect(preview(`${heading}\t${others[0]}\tHeight\na\tb\tc`).columns[0]?.field).toBe(field);
  });

  it.each(['D', 'Depth', 'H', 'Height'])(
    '«%s» is asked about: which way it lies is nowhere said',
    (heading) => {
      expect(asked(`Part\tQty\tLength\t${heading}\nSide\t2\t600\t300`)).toContain('axis');
    },
  );
});

describe('the order of the sizes', () => {
  it.each(['600 x 300', '300 x 600', '600 x 300 x 18'])(
    'of %s in one cell is asked once, never guessed',
    (size) => {
      const kinds = asked(`Part\tQty\tSize\nSide\t2\t${size}\nTop\t1\t${size}`);
      expect(kinds.filter((kind) => kind === 'size-order')).toHaveLength(1);
    },
  );

  it('is taken from the answer for every row at once', () => {
    const { rows } = preview('Part\tQty\tSize\nSide\t2\t300 x 600\nTop\t1\t280 x 700', 'metric', {
      sizeOrder: 'width-length',
    });
    expect(rows.map(({ length, width }) => [length.text, width.text])).toEqual([
      ['600 mm', '300 mm'],
      ['700 mm', '280 mm'],
    ]);
  });
});

describe('a row', () => {
  it('with letter key, count in brackets, thickness and role before the size keeps all of it', () => {
    const [row] = preview(
      'PIECE B (12) 3/4” shelf plates – 8-1/2” x 8”\nPIECE C (2) top – 40” x 8”',
      'us',
    ).rows;
    expect(row?.quantity.text).toBe('12');
    expect(row?.name.text).toContain('shelf plates');
    expect([row?.length.text, row?.width.text]).toEqual(['8-1/2”', '8”']);
  });

  it('in a sentence gives its count in words', () => {
    const { rows } = preview('five strips 2 x 60\nten strips 2 x 90', 'us');
    expect(rows.map(({ quantity }) => quantity.text)).toEqual(['5', '10']);
  });

  it('over several lines, material last, becomes one part', () => {
    const { rows } = preview(
      'Side panel\n2 pcs 11¼” x 59¼”\n3/4 birch\nTop\n1 pcs 12” x 40”\n3/4 birch',
      'us',
    );
    expect(rows).toHaveLength(2);
    expect(rows[0]?.quantity.text).toBe('2');
  });

  it('with the quantity first and a hyphen behind it is not a subtraction, and is marked', () => {
    const [row] = preview('24 - 14 inches long, by 3/4 x 3/4 inch square\n2 pcs side 600 x 300', 'us').rows;
    const states = [row?.name.state, row?.length.state, row?.quantity.state];
    expect(states.some((state) => state === 'doubt' || state === 'refused')).toBe(true);
    expect(row?.length.text).not.toContain('10');
  });

  it('of label and value on lines of their own is not taken for parts in silence', () => {
    const { rows } = preview('Width: 22mm\nLength: 25m\nThickness: 1.0mm');
    expect(
      rows.every(({ length, width, name }) =>
        [length, width, name].some(({ state }) => state === 'refused' || state === 'doubt'),
      ),
    ).toBe(true);
  });
});

describe('a round part', () => {
  it.each([
    ['Part\tQty\tDiameter\nTop\t1\t600', '600 mm'],
    ['Part\tQty\tDia (in)\nTop\t1\t23 5/8', '23 5/8 in'],
    ['Part\tQty\tLength\tWidth\nTop\t1\tØ 600\t', '600 mm'],
    ['Part\tQty\tSize\nTop\t1\t600 mm dia.', '600 mm'],
    ['Part\tQty\tLength\tWidth\tShape\nTop\t1\t600\t\tround', '600 mm'],
  ])('in %j is as wide as it is long', (text, size) => {
    const [row] = preview(text).rows;
    expect([row?.shape.text, row?.length.text, row?.width.text]).toEqual(['round', size, size]);
    expect(row?.length.state).toBe('read');
  });

  it('does not make its neighbours round, and is marked where a length contradicts it', () => {
    const { rows } = preview('Part\tLength\tWidth\tDia\nSide\t600\t300\t\nTop\t600\t300\t550');
    expect(rows.map(({ shape }) => [shape.text, shape.state])).toEqual([
      ['rectangle', 'empty'],
      ['round', 'doubt'],
    ]);
    expect(rows[1]?.width.text).toBe('550 mm');
  });

  it('of a shape nobody knows is a rectangle, and marked', () => {
    const [row] = preview('Part\tLength\tWidth\tShape\nTop\t600\t300\tkidney').rows;
    expect(row?.shape).toMatchObject({ text: 'rectangle', state: 'doubt' });
    expect(row?.shape.reason).toContain('kidney');
  });
});

describe('corner radii', () => {
  it('of the whole part are those of four corners; one of its own comes first; nothing and 0 are square', () => {
    const [one, two, three] = preview(
      'Part\tL\tW\tRadius (mm)\tCorner front left\nA\t600\t300\tR25\t\nB\t600\t300\t25\t40 mm\nC\t600\t300\t0\t',
    ).rows;
    const radii = (row: typeof one) => row && Object.values(row.corners).map(({ text }) => text);
    expect(radii(one)).toEqual(['25 mm', '25 mm', '25 mm', '25 mm']);
    expect(radii(two)).toEqual(['40 mm', '25 mm', '25 mm', '25 mm']);
    expect(radii(three)).toEqual(['', '', '', '']);
  });

  it('that cannot be read are kept as they stand and marked', () => {
    const [row] = preview('Part\tL\tW\tRadius\nA\t600\t300\t21 13/1').rows;
    expect(row?.corners.backRight).toMatchObject({ text: '21 13/1', state: 'refused' });
  });

  it('and round shapes come back from an exported list', () => {
    const project = plannedDocument({
      settings: { name: 'x', units: 'metric', currency: 'EUR' },
      parts: [
        {
          name: 'Disc',
          quantity: '2',
          length: '400',
          width: '400',
          shape: 'round',
          materialId: 'birch-ply-18',
        },
        {
          name: 'Top',
          quantity: '1',
          length: '900',
          width: '300',
          radiusFrontLeft: '30',
          radiusBackRight: '12,5 mm',
        },
      ],
    });
    const [disc, top] = preview(writeCsv(project.table('parts'))).rows;
    expect([disc?.shape.text, disc?.length.text, disc?.width.text]).toEqual(['round', '400 mm', '400 mm']);
    expect(top?.shape.text).toBe('rectangle');
    expect(top && Object.values(top.corners).map(({ text }) => text)).toEqual(['30 mm', '', '', '12.5 mm']);
  });
});
