import type { LegacyHighs } from 'highs';
import type { SupplierQuestion } from './supplier-question.ts';

/**
 * The same question by another way: mixed-integer programmes for a general-purpose solver (HiGHS). First the least cost of
 * each line at each supplier, whole packs that cover the need; then one programme with a number for every pack and a yes or
 * no for every line at every supplier, every supplier ordered from, and every threshold reached. No line may cost more than its
 * packs cost at least there: nothing is bought beyond the need to reach a threshold.
 */
export function suppliersByHighs(
  highs: LegacyHighs,
  { lines, terms }: SupplierQuestion,
): { readonly costs: readonly (readonly (number | null)[])[]; readonly totalMinor: number } {
  const columns = lines.flatMap(({ packs }, line) =>
    packs.flatMap((own, supplier) =>
      own.map((pack, at) => ({ line, supplier, pack, name: `n${line}_${supplier}_${at}` })),
    ),
  );
  const pairs = lines.flatMap(({ packs }, line) =>
    packs.flatMap((own, supplier) => (own.length > 0 ? [{ line, supplier }] : [])),
  );
  const of = (line: number, supplier: number) =>
    columns.filter((column) => column.line === line && column.supplier === supplier);
  const sum = (terms: readonly (readonly [number, string])[]): string =>
    terms.map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`).join(' ');
  const covers = (line: number, supplier: number) =>
    sum(of(line, supplier).map(({ pack, name }) => [pack.sizeMl, name]));
  const priced = (line: number, supplier: number) =>
    of(line, supplier).map(({ pack, name }) => [pack.priceMinor, name] as const);

  const packsAlone = solve(
    sum(columns.map(({ pack, name }) => [pack.priceMinor, name])),
    pairs.map(({ line, supplier }) => `${covers(line, supplier)} >= ${lines[line]?.needMl}`),
    columns.map(({ name }) => name),
    [],
  );
  const costs = lines.map((_, line) =>
    terms.map((_terms, supplier) =>
      of(line, supplier).length === 0
        ? null
        : of(line, supplier).reduce(
            (total, { pack, name }) => total + pack.priceMinor * Math.round(packsAlone.value(name)),
            0,
          ),
    ),
  );

  const rows: string[] = [];
  for (const { line, supplier } of pairs) {
    const taken = `y${line}_${supplier}`;
    rows.push(`${covers(line, supplier)} - ${lines[line]?.needMl} ${taken} >= 0`);
    rows.push(`${sum(priced(line, supplier))} - ${costs[line]?.[supplier]} ${taken} <= 0`);
    rows.push(`z${supplier} - ${taken} >= 0`);
  }
  for (const [line] of lines.entries())
    rows.push(
      `${sum(pairs.filter((pair) => pair.line === line).map(({ supplier }) => [1, `y${line}_${supplier}`]))} = 1`,
    );
  const charges: (readonly [number, string])[] = [];
  const asked = terms.map((_, supplier) => pairs.some((pair) => pair.supplier === supplier));
  for (const [at, { deliveryMinor, freeFromMinor, minimumMinor, surchargeMinor }] of terms.entries()) {
    if (!asked[at]) continue;
    const goods = columns
      .filter(({ supplier }) => supplier === at)
      .map(({ pack, name }) => [pack.priceMinor, name] as const);
    charges.push([deliveryMinor + (minimumMinor === null ? 0 : surchargeMinor), `z${at}`]);
    for (const [name, threshold, saved] of [
      ['f', freeFromMinor, deliveryMinor],
      ['m', minimumMinor, surchargeMinor],
    ] as const) {
      if (threshold === null) continue;
      charges.push([-saved, `${name}${at}`]);
      rows.push(`${sum(goods)} - ${threshold} ${name}${at} >= 0`);
      rows.push(`z${at} - ${name}${at} >= 0`);
    }
  }
  const yesNo = [
    ...pairs.map(({ line, supplier }) => `y${line}_${supplier}`),
    ...terms.flatMap(({ freeFromMinor, minimumMinor }, at) =>
      asked[at]
        ? [
            `z${at}`,
            ...(freeFromMinor === null ? [] : [`f${at}`]),
            ...(minimumMinor === null ? [] : [`m${at}`]),
          ]
        : [],
    ),
  ];
  const joint = solve(
    sum([...columns.map(({ pack, name }) => [pack.priceMinor, name] as const), ...charges]),
    rows,
    columns.map(({ name }) => name),
    yesNo,
  );
  return { costs, totalMinor: Math.round(joint.objective) };

  function solve(
    objective: string,
    constraints: readonly string[],
    whole: readonly string[],
    yes: readonly string[],
  ) {
    const model = `Minimize\n cost: ${objective}\nSubject To\n ${constraints.map((row, at) => `r${at}: ${row}`).join('\n ')}\nGeneral\n ${whole.join(' ')}\n${yes.length === 0 ? '' : `Binary\n ${yes.join(' ')}\n`}End\n`;
    const solved = highs.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.5, output_flag: false });
    if (solved.Status !== 'Optimal') throw new Error(`HiGHS says ${solved.Status}`);
    const values = solved.Columns as Readonly<Record<string, { readonly Primal?: number }>>;
    return { objective: solved.ObjectiveValue, value: (name: string): number => values[name]?.Primal ?? 0 };
  }
}
