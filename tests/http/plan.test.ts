import { describe, expect, it } from 'vitest';
import type { ProjectState } from '../../server/http/contract.ts';
import { isFigure, stripWorkings } from '../../server/http/strip-workings.ts';
import { workingAt } from '../../server/http/working-at.ts';
import type { Figure } from '../../server/planning/figure.ts';
import type { Plan } from '../../server/planning/plan-output.ts';
import { openApp } from './open-app.ts';
import { document } from './small-document.ts';

/** Paths of all figures of a plan, made the way the contract describes them. */
function paths(place: unknown, path: string): [string, Figure][] {
  if (isFigure(place)) return [[path, place]];
  if (typeof place !== 'object' || place === null) return [];
  const steps = Array.isArray(place)
    ? place.map((item: { id?: string }) => [item?.id, item] as const)
    : Object.entries(place);
  return steps.flatMap(([step, item]) =>
    step === undefined ? [] : paths(item, path === '' ? step : `${path}/${encodeURIComponent(step)}`),
  );
}

describe('the plan', () => {
  it('is answered with bare numbers, and with workings when asked', async () => {
    const app = openApp();
    const state = await app.importSmall();
    const path = `/api/projects/${state.id}/plan`;
    expect((await app.send('get', path)).body).toEqual(state.plan);
    const full = (await app.send('get', `${path}?workings=1`)).body as Plan;
    expect(stripWorkings(full)).toEqual(state.plan);
    expect(isFigure(full.parts[0]?.cutLengthMm)).toBe(true);
    await app.refused(app.send('get', `${path}?workings=yes`), 400, 'bad-request');
    await app.refused(app.send('get', `${path}?colour=red`), 400, 'bad-request');
    await app.refused(app.send('get', '/api/projects/4711/plan'), 404, 'not-found');
  });

  it('opens every figure of a demo by its path', async () => {
    const app = openApp();
    const { projects } = (await app.send('get', '/api/projects')).body as { projects: { id: string }[] };
    const path = `/api/projects/${projects[0]?.id}`;
    const full = (await app.send('get', `${path}/plan?workings=1`)).body as Plan;
    const figures = paths(full, '');
    expect(figures.length).toBeGreaterThan(100);
    for (const [at, figure] of figures) expect([at, workingAt(full, at)]).toEqual([at, figure]);
    for (const [at, figure] of figures.filter((_, index) => index % 50 === 0)) {
      const answer = await app.send('get', `${path}/working?at=${encodeURIComponent(at)}`);
      expect(answer.body).toEqual({ at, figure });
    }
  });

  it('opens a strip over a corner, whose plus sign an address may turn into a space', async () => {
    const app = openApp();
    const { id, rows } = await app.importSmall();
    const part = rows.parts[0]?.id;
    await app.send('patch', `/api/projects/${id}/parts/${part}`, {
      revision: 1,
      edgeLeft: 'birch-veneer-22',
      radiusFrontRight: '',
    });
    const at = `parts/${part}/strips/left+front/stripMm`;
    const path = `/api/projects/${id}/working?at=`;
    const encoded = (await app.send('get', path + encodeURIComponent(at))).body as { figure: Figure };
    // 1200 and 400 mm, less the radius of 30 mm where they meet, plus its quarter circle, plus 25 mm at both ends.
    expect(encoded.figure.value).toBeCloseTo(1200 + 400 - 2 * 30 + (Math.PI * 30) / 2 + 2 * 25, 6);
    expect((await app.send('get', path + at)).body.figure).toEqual(encoded.figure);
  });

  it('links the inputs of its workings to figures that are there', async () => {
    const app = openApp();
    const { projects } = (await app.send('get', '/api/projects')).body as { projects: { id: string }[] };
    expect(projects.length).toBeGreaterThan(0);
    for (const { id } of projects) {
      const full = (await app.send('get', `/api/projects/${id}/plan?workings=1`)).body as Plan;
      const links = paths(full, '').flatMap(([at, figure]) =>
        figure.working.inputs.flatMap((input) =>
          input.from === undefined ? [] : [`${input.from} from ${at}`],
        ),
      );
      const broken = links.filter((link) => workingAt(full, link.split(' from ')[0] ?? '') === undefined);
      expect(broken).toEqual([]);
    }
  });

  it('has no working where there is no figure', async () => {
    const app = openApp();
    const { id } = await app.importSmall();
    const nothing = [
      'parts',
      'parts/1',
      'parts/x/cutLengthMm',
      'totals/parts/value',
      'constructor',
      '__proto__/x',
      'problems',
      'buy/netMinor/working/rule',
      '%',
      '/',
    ];
    for (const at of nothing) {
      const answer = app.send('get', `/api/projects/${id}/working?at=${encodeURIComponent(at)}`);
      await app.refused(answer, 404, 'not-found');
    }
    await app.refused(app.send('get', `/api/projects/${id}/working`), 400, 'bad-request');
    await app.refused(app.send('get', `/api/projects/${id}/working?at=a&at=b`), 400, 'bad-request');
  });

  it('of a document is made without storing anything', async () => {
    const app = openApp();
    const state = await app.importSmall();
    const before = (await app.send('get', '/api/projects')).body as object;
    const full = (await app.send('post', '/api/plan', document)).body as Plan;
    expect(full.parts.map((part) => part.id)).toEqual(['seat', 'leg', 'shelf']);
    expect(full.parts.map((part) => part.cutLengthMm.value)).toEqual(
      state.plan.parts.map((part) => part.cutLengthMm),
    );
    expect((await app.send('get', '/api/projects')).body).toEqual(before);
    expect(
      (await app.refused(app.send('post', '/api/plan', { format: 'x' }), 400, 'bad-request')).field,
    ).toBe('format');
    await app.refused(app.send('post', '/api/plan', []), 400, 'bad-request');
  });

  it('follows a change of the catalogue', async () => {
    const app = openApp();
    const state = await app.importSmall();
    const product = { kind: 'sheet', name: 'Test ply', shortName: 'test ply' };
    const { id } = (await app.send('post', '/api/products', product)).body as { id: string };
    const part = state.rows.parts[0]?.id;
    const path = `/api/projects/${state.id}`;
    await app.send('patch', `${path}/parts/${part}`, { revision: 1, materialId: id });
    const thickness = async () =>
      ((await app.send('get', path)).body as ProjectState).plan.parts.find((one) => one.id === part)
        ?.thicknessMm;
    expect(await thickness()).toBe(null);
    const evidence = { basis: 'user', source: '', readOn: null };
    const figure = { low: null, typical: 11.9, high: null, unit: 'mm', ...evidence };
    await app.send('patch', `/api/products/${id}`, { figures: { thicknessActual: figure } });
    expect(await thickness()).toBe(11.9);
  });
});
