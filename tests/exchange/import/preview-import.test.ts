import { describe, expect, it, onTestFinished } from 'vitest';
import { readCatalogue } from '../../../db/catalogue/read-catalogue.ts';
import {
  AnswerMismatch,
  type ImportAnswers,
  type ImportPreview,
  previewImport,
} from '../../../server/exchange/import/preview-import.ts';
import { readTextCells } from '../../../server/exchange/part-list/read-cells.ts';
import type { UnitSystem } from '../../../server/planning/project-input.ts';

const { products } = readCatalogue();
let recipes: readonly { readonly id: string; readonly name: string }[] = [];

function preview(text: string, answers: ImportAnswers = {}, units: UnitSystem = 'metric'): ImportPreview {
  return previewImport(readTextCells(text), answers, { units, products, recipes });
}
const kinds = ({ questions }: ImportPreview): string[] => questions.map(({ kind }) => kind);
const column = (field: string, unit: string | null = null) => ({ field, unit, decimalComma: false }) as never;

const clear = 'Part;Qty;Length (mm);Width (mm);Material\nSide;2;600;300;birch 18\nTop;1;700;300;birch 18';

describe('previewing an import', () => {
  it('asks nothing about a list that says everything', () => {
    const read = preview(clear);
    expect(read.questions).toEqual([]);
    expect(read.counts.rows).toEqual({ read: 2, doubt: 0, refused: 0, empty: 0 });
    // Per row: name, quantity, two sizes, material, grain and four edges are clear; section, faces and note are empty.
    expect(read.counts.cells).toEqual({ read: 20, doubt: 0, refused: 0, empty: 18 });
    expect(read.sample[1]).toEqual({ line: 2, cells: ['Side', '2', '600', '300', 'birch 18'] });
  });

  it('counts a row by its worst cell', () => {
    const read = preview(`${clear}\nDoor;1;21 13/1;300;oak\nRail;;500;60;birch 18`);
    expect(read.counts.rows).toEqual({ read: 2, doubt: 1, refused: 1, empty: 0 });
  });

  it('asks for the unit only where plain numbers stand under a heading without one', () => {
    expect(kinds(preview('Part;Qty;L;W;Material\nSide;2;600;300;birch 18'))).toEqual(['unit']);
    expect(kinds(preview('Part;Qty;L;W;Material\nSide;2;600 mm;30 cm;birch 18'))).toEqual([]);
    expect(kinds(preview('Part;Qty;L;W;Material\nSide;2;23 5/8";12";birch 18'))).toEqual([]);
    const text = 'Part;Qty;L;W;Material\nSide;2;600;300;birch 18';
    expect(preview(text, {}, 'us').questions[0]?.text).toContain('inches');
    expect(preview(text, { bareUnit: 'mm' }, 'us').rows[0]?.length).toMatchObject({
      text: '600 mm',
      state: 'read',
    });
    expect(preview('4 pcs side 600 x 300').questions.map(({ kind }) => kind)).toContain('unit');
    expect(preview('4 pcs side 600 x 300 mm').questions.map(({ kind }) => kind)).not.toContain('unit');
  });

  it('asks for a material until every row has one, and still shows the answer given', () => {
    const text = 'Part;Qty;Length (mm);Width (mm)\nSide;2;600;300\nTop;1;700;300';
    expect(preview(text).questions).toMatchObject([
      { kind: 'material', text: expect.stringContaining('2 rows') },
    ]);
    const answered = preview(text, { materialId: 'birch-ply-18' });
    expect(kinds(answered)).toEqual(['material']);
    expect(answered.rows.map(({ material }) => material.text)).toEqual(['birch-ply-18', 'birch-ply-18']);
  });

  it('asks for a banding when edges are ticked or banded with something unknown', () => {
    const text =
      'Part;Qty;Length (mm);Width (mm);Material;Front;Back\nSide;2;600;300;birch 18;x;\nTop;1;700;300;birch 18;ABS 2;n/a';
    const asked = preview(text);
    expect(asked.questions).toMatchObject([{ kind: 'banding', text: expect.stringContaining('2 rows') }]);
    expect(asked.rows.map(({ edges }) => [edges.front.text, edges.front.state])).toEqual([
      ['bare', 'doubt'],
      ['hidden', 'doubt'],
    ]);
    const answered = preview(text, { bandingId: 'birch-veneer-22' });
    expect(answered.rows.map(({ edges }) => [edges.front.text, edges.front.state])).toEqual([
      ['birch-veneer-22', 'read'],
      ['birch-veneer-22', 'doubt'],
    ]);
    expect(answered.rows.every(({ edges }) => edges.back.text === 'hidden')).toBe(true);
  });

  it('asks for a finish when the project has any, and a face has none', () => {
    recipes = [{ id: '3', name: 'Clear' }];
    onTestFinished(() => {
      recipes = [];
    });
    expect(preview(clear).questions).toMatchObject([
      { kind: 'finish', text: expect.stringContaining('2 rows') },
    ]);
    expect(preview(clear, { recipeId: '3' }).rows[0]).toMatchObject({
      showFace: { text: '3', state: 'read' },
      backFace: { text: '3', state: 'read' },
    });
    const said =
      'Part;Qty;Length (mm);Width (mm);Material;Finish;Back face\nSide;2;600;300;birch 18;clear;none';
    expect(preview(said).questions).toEqual([]);
  });

  it('takes the columns as the user says they are, and asks no more', () => {
    const text = 'Side,2,600,300\nTop,1,700,300';
    expect(kinds(preview(text))).toContain('columns');
    const columns = [column('name'), column('quantity'), column('width', 'mm'), column('length', 'mm')];
    const read = preview(text, { columns, materialId: 'birch-ply-18' });
    expect(kinds(read)).toEqual(['material']);
    expect(read.rows[0]).toMatchObject({
      name: { text: 'Side' },
      length: { text: '300 mm' },
      width: { text: '600 mm' },
    });
  });

  it('takes another heading row, or none, and guesses the columns anew', () => {
    const text = 'Part;Qty\nName;Qty;L;W\nSide;2;600;300\nTop;1;700;300\nRail;1;800;60';
    expect(preview(text).headingRow).toBe(0);
    const second = preview(text, { headingRow: 1 });
    expect(second.columns.map(({ field }) => field)).toEqual(['name', 'quantity', 'length', 'width']);
    expect(second.rows.map(({ name }) => name.text)).toEqual(['Side', 'Top', 'Rail']);
    expect(preview(text, { headingRow: null }).rows).toHaveLength(5);
  });

  it('reads a column with a decimal comma when told to', () => {
    const text = 'Part;Qty;Length (mm);Width (mm);Material\nSide;2;1,220;300.5;birch 18';
    expect(preview(text).rows[0]?.length.state).toBe('refused');
    const columns = preview(text).columns.map((one, index) => ({ ...one, decimalComma: index === 2 }));
    expect(preview(text, { columns }).rows[0]?.length).toMatchObject({ text: '1.220 mm', state: 'doubt' });
  });

  it('refuses answers that are about another list', () => {
    expect(() => preview(clear, { headingRow: 3 })).toThrow(AnswerMismatch);
    expect(() => preview(clear, { columns: [column('name')] })).toThrow(
      'The list has 5 columns, but 1 are described.',
    );
    const twice = ['name', 'length', 'length', 'width', 'ignore'].map((field) => column(field));
    expect(() => preview(clear, { columns: twice })).toThrow('Two columns are both said to be the length.');
  });

  it('previews 20,000 rows within a few seconds', () => {
    const rows = Array.from(
      { length: 20_000 },
      (_, index) => `Side ${index};2;${600 + (index % 400)},5;300;oak;x`,
    );
    const start = performance.now();
    const read = preview(`Part;Qty;L;W;Material;Front\n${rows.join('\n')}`);
    expect(read.rows).toHaveLength(20_000);
    // Half a second on the machine this was written on.
    expect(performance.now() - start).toBeLessThan(10_000);
  });
});
