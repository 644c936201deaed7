import { describe, expect, it } from 'vitest';
import { planSizes } from '../../../server/planning/dimensions/plan-sizes.ts';
import type { ProjectInput } from '../../../server/planning/project-input.ts';

type Row = readonly [name: string, value: string];

function sizes(rows: readonly Row[], units: 'metric' | 'us' = 'metric') {
  const input = {
    settings: { units },
    sizes: rows.map(([name, value], place) => ({ id: String(place + 1), name, value, note: '' })),
  } as unknown as ProjectInput;
  const plan = planSizes(input);
  return {
    ...plan,
    mm: plan.sizes.map(({ valueMm }) => valueMm.value),
    codes: plan.problems.map(({ code, at }) => `${at.table}/${at.id}/${at.field} ${code}`),
  };
}

describe('planSizes', () => {
  it('works sizes out in the order they depend on each other, and lists them in the order of the rows', () => {
    const plan = sizes([
      ['rail', '=seat_depth - 2*ply'],
      ['seat_depth', '450 mm'],
      ['double_ply', '=2*ply'],
      ['ply', '18'],
    ]);
    expect(plan.mm).toEqual([414, 450, 36, 18]); // 450 - 36; 2 x 18
    expect(plan.codes).toEqual([]);
    expect(plan.values.get('rail')).toBe(414);
    expect(plan.sizes[0]?.valueMm.working).toMatchObject({
      rule: '=seat_depth - 2*ply',
      inputs: [{ from: 'sizes/2/valueMm' }, { from: 'sizes/4/valueMm' }],
    });
  });

  it('lets capitals in a name differ', () => {
    expect(
      sizes([
        ['Ply', '18'],
        ['two', '=2*pLY'],
      ]).mm,
    ).toEqual([18, 36]);
  });

  it('allows zero and nothing below', () => {
    const plan = sizes([
      ['gap', '0'],
      ['less', '=gap - 1'],
      ['typed', '-2'],
    ]);
    expect(plan.mm).toEqual([0, null, null]);
    expect(plan.codes).toEqual([
      'sizes/2/value dimension-not-positive',
      'sizes/3/value dimension-not-positive',
    ]);
  });

  it('reports every size of a loop once, and nothing for a size that only hangs on one', () => {
    const plan = sizes([
      ['a', '=b + 1'],
      ['b', '=c + 1'],
      ['c', '=a + 1'],
      ['hanger', '=a + ply'],
      ['self', '=self'],
      ['ply', '18'],
    ]);
    expect(plan.mm).toEqual([null, null, null, null, null, 18]);
    expect(plan.codes).toEqual([
      'sizes/1/value expression-cycle',
      'sizes/2/value expression-cycle',
      'sizes/3/value expression-cycle',
      'sizes/5/value expression-cycle',
    ]);
    expect(plan.problems[0]?.message).toContain('a uses b uses c uses a');
  });

  it('reports an unreadable size once; what uses it is unknown without a fault', () => {
    const plan = sizes([
      ['ply', '1,220'],
      ['two', '=2*ply'],
      ['four', '=2*two'],
    ]);
    expect(plan.mm).toEqual([null, null, null]);
    expect(plan.codes).toEqual(['sizes/1/value dimension-ambiguous']);
    expect(plan.sizes[2]?.valueMm.working.notes?.join()).toContain('two');
  });

  it('reports unknown names, names that cannot be used and names used twice', () => {
    const plan = sizes([
      ['a', '=nowhere'],
      ['seat depth', '450'],
      ['mm', '1'],
      ['round', '1'],
      ['ply', '18'],
      ['PLY', '19'],
      ['', '5'],
      ['9', '5'],
    ]);
    expect(plan.codes).toEqual([
      'sizes/2/name expression-invalid',
      'sizes/3/name expression-invalid',
      'sizes/4/name expression-invalid',
      'sizes/6/name expression-invalid',
      'sizes/7/name expression-invalid',
      'sizes/8/name expression-invalid',
      'sizes/1/value expression-unknown-name',
    ]);
    expect(plan.values.get('ply')).toBe(18);
    expect(plan.mm).toEqual([null, 450, 1, 1, 18, 19, 5, 5]);
  });

  it('takes bare numbers in the unit of the project', () => {
    expect(
      sizes(
        [
          ['a', '2'],
          ['b', '=a + 1'],
        ],
        'us',
      ).mm,
    ).toEqual([50.8, 76.2]); // 2 and 3 x 25.4
  });

  it('works out a chain of a thousand sizes in any order, and finds a loop of a thousand', () => {
    const chain: Row[] = [['s1000', '1 mm']];
    for (let place = 999; place >= 1; place--) chain.push([`s${place}`, `=s${place + 1} + 1 mm`]);
    expect(sizes(chain.reverse()).values.get('s1')).toBe(1000);
    const loop = chain.map(([name, value]): Row => (name === 's1000' ? [name, '=s1'] : [name, value]));
    const plan = sizes(loop);
    expect(plan.codes).toHaveLength(1000);
    expect(new Set(plan.problems.map(({ code }) => code))).toEqual(new Set(['expression-cycle']));
    expect(Math.max(...plan.problems.map(({ message }) => message.length))).toBeLessThan(300);
  });
});
