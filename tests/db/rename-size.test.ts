import { describe, expect, it } from 'vitest';
import type { Change } from '../../db/change.ts';
import { readUndoMenu } from '../../db/edits.repository.ts';
import { readProject } from '../../db/read-project.ts';
import { Refusal } from '../../db/refusal.ts';
import { type OpenProject, openProject } from './open-project.ts';

/** The small project with calculations in every cell that can hold one. */
function opened() {
  const project = openProject();
  const [depth = ''] = project.ids('sizes');
  const [seat = ''] = project.ids('parts');
  const values = {
    quantity: '=depth',
    length: '=depth',
    width: '=2*depth',
    radiusFrontLeft: '=depth',
    radiusFrontRight: 'depth',
    note: '=depth',
  };
  project.change(
    { op: 'update', table: 'parts', id: seat, values },
    { op: 'insert', table: 'sizes', values: { name: 'half', value: '=depth' } },
  );
  return { project, depth, seat };
}

const rename = (id: string, name: string): Change => ({ op: 'update', table: 'sizes', id, values: { name } });
const rowsOf = (project: OpenProject) => readProject(project.db, project.id).rows;

describe('a named size given another name', () => {
  it('is renamed in every calculation and nowhere else, as one edit that undo takes back whole', () => {
    const { project, depth } = opened();
    const before = project.dump();
    const { changed } = project.change(rename(depth, 'tiefe'));
    const { parts, sizes } = rowsOf(project);
    expect(parts[0]).toMatchObject({
      quantity: '=tiefe',
      length: '=tiefe',
      width: '=2*tiefe',
      radiusFrontLeft: '=tiefe',
      radiusFrontRight: 'depth',
      note: '=depth',
    });
    expect(sizes.map(({ name, value }) => [name, value])).toEqual([
      ['tiefe', sizes[0]?.value],
      ['half', '=tiefe'],
    ]);
    // The second part of the small project uses the size as well.
    expect(changed.parts?.map(({ length }) => length)).toEqual(['=tiefe', '=tiefe + 20']);
    expect(readUndoMenu(project.db, project.id).undoLabel).toBe(
      'rename named size “depth” to “tiefe” in 6 calculations',
    );
    const after = project.dump();
    project.undo();
    expect(project.dump()).toEqual(before);
    project.redo();
    expect(project.dump()).toEqual(after);
  });

  it('is renamed before the rest of its row and the steps that follow are written', () => {
    const { project, depth, seat } = opened();
    project.change(
      { op: 'update', table: 'sizes', id: depth, values: { name: 'tiefe', value: '500' } },
      { op: 'update', table: 'parts', id: seat, values: { width: '=tiefe' } },
      rename(depth, 'deep'),
    );
    const { parts, sizes } = rowsOf(project);
    expect([parts[0]?.width, parts[1]?.length, sizes[0]?.value]).toEqual(['=deep', '=deep + 20', '500 mm']);
  });

  it('only draws along what means it where two sizes have the name', () => {
    const { project, depth } = opened();
    const { inserted } = project.change({
      op: 'insert',
      table: 'sizes',
      tempId: 'second',
      values: { name: 'depth', value: '7' },
    });
    project.change(rename(inserted.second ?? '', 'depth_2'));
    expect(rowsOf(project).parts[0]?.length).toBe('=depth');
    expect(readUndoMenu(project.db, project.id).undoLabel).toBe('rename named size “depth” to “depth_2”');
    project.change(rename(depth, 'tiefe'));
    expect(rowsOf(project).parts[0]?.length).toBe('=tiefe');
  });

  it('is not written at all where the name is taken or a calculation would become too long', () => {
    const { project, depth } = opened();
    const before = project.dump();
    const refused = (name: string): Refusal => {
      try {
        project.change({ op: 'settings', values: { kerfMm: 4 } }, rename(depth, name));
      } catch (error) {
        if (error instanceof Refusal) return error;
        throw error;
      }
      throw new Error('the rename was not refused');
    };
    expect(refused('taken')).toMatchObject({ code: 'name-taken', field: 'changes.1.values.name' });
    expect(refused('d'.repeat(500))).toMatchObject({ code: 'bad-request', field: 'changes.1.values.name' });
    expect(project.dump()).toEqual(before);
  });

  it('makes no edit when it is called what it was called', () => {
    const { project, depth } = opened();
    const revision = project.revision();
    expect(project.change(rename(depth, 'depth')).revision).toBe(revision);
  });
});
