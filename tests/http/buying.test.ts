import { describe, expect, it } from 'vitest';
import type { BuyingAnswer, ProjectSummary } from '../../server/http/contract.ts';
import { openApp } from './open-app.ts';

const CALENDAR = { restMs: 0, longestMs: 60_000 };

describe('the buy list of the demo projects', () => {
  it('names a supplier and whole packs for every line, and totals that are the sums of their lines', async () => {
    const app = openApp({ calendar: CALENDAR });
    const { projects } = (await app.send('get', '/api/projects')).body as { projects: ProjectSummary[] };
    expect(projects.length).toBeGreaterThan(0);
    for (const { id } of projects) {
      const buying = (await app.send('get', `/api/projects/${id}/buying`)).body as BuyingAnswer;
      expect(buying.lines.length).toBeGreaterThan(10);
      for (const line of buying.lines) {
        expect([line.id, line.toOrder.value === 0 || line.packs.length > 0]).toEqual([line.id, true]);
        expect([line.id, line.toOrder.value === 0 || line.supplierId !== null]).toEqual([line.id, true]);
      }
      for (const basket of buying.baskets) {
        const own = buying.lines.filter((line) => basket.lineIds.includes(line.id));
        expect(basket.goods.value).toBe(own.reduce((sum, { cost }) => sum + (cost.value ?? 0), 0));
      }
    }
  });
});
