import { describe, expect, it } from 'vitest';
import { type ImportColumn, setColumnField } from '../../../client/exchange/set-column.ts';

const columns = (...fields: ImportColumn['field'][]): ImportColumn[] =>
  fields.map((field) => ({ heading: field, field, unit: null, decimalComma: false }));
const fieldsAfter = (before: ImportColumn[], index: number, field: ImportColumn['field']): string[] =>
  setColumnField(before, index, field).map((column) => column.field);

describe('saying what a column is', () => {
  it('gives the column the field', () => {
    expect(fieldsAfter(columns('name', 'ignore'), 1, 'note')).toEqual(['name', 'note']);
  });

  it('takes the field from the column that had it', () => {
    expect(fieldsAfter(columns('name', 'note', 'ignore'), 2, 'note')).toEqual(['name', 'ignore', 'note']);
    expect(fieldsAfter(columns('length', 'ignore'), 1, 'length')).toEqual(['ignore', 'length']);
  });

  it('lets the length and the width change places', () => {
    expect(fieldsAfter(columns('length', 'width'), 1, 'length')).toEqual(['width', 'length']);
    expect(fieldsAfter(columns('width', 'note', 'length'), 0, 'length')).toEqual(['length', 'note', 'width']);
  });

  it('leaves any number of columns out', () => {
    expect(fieldsAfter(columns('name', 'ignore', 'note'), 0, 'ignore')).toEqual(['ignore', 'ignore', 'note']);
  });
});
