import type { PartPlan, RecipePlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import type { Product, ProductKind } from '../product.ts';
import type { ProjectInput, UsageRule } from '../project-input.ts';
import { chosenProduct } from './chosen-product.ts';
import { MAX_AMOUNT } from './constants.ts';
import type { ProductDemand } from './product-demand.ts';
import { type Reading, readFigure } from './read-figure.ts';
import { type RuleBase, ruleBases } from './rule-bases.ts';

/** Sheets, boards and banding are bought by cutting plan, not by rate. */
const RULE_KINDS = [
  'finish',
  'thinner',
  'abrasive',
  'glue',
  'filler',
  'hardware',
  'consumable',
] as const satisfies readonly ProductKind[];

/**
 * What do the usage rules need: rags per square metre, glue per metre of band, filler per part?
 *
 * need = base x rate
 *
 * @returns one demand per usable rule, in the product's unit, and a problem for each rule that cannot be used. A rule
 *   without a rate takes the product's own (use per area, use per metre, or one piece per area per piece).
 *
 * Source: definition of a rate; the product's rate carries its own evidence.
 * Example: 12 m2 finished at 0.5 rags per m2: 6 rags.
 */
export function ruleDemands(
  input: ProjectInput,
  plan: { readonly parts: readonly PartPlan[]; readonly recipes: readonly RecipePlan[] },
  products: ReadonlyMap<string, Product>,
): { readonly demands: readonly ProductDemand[]; readonly problems: readonly Problem[] } {
  if (input.rules.length === 0) return { demands: [], problems: [] };
  const bases = ruleBases(plan);
  const read = input.rules.map((rule) => readRule(rule, bases[rule.per], products));
  return {
    demands: read.flatMap(({ demand }) => demand),
    problems: read.flatMap(({ problems }) => problems),
  };
}

function readRule(
  rule: UsageRule,
  base: RuleBase,
  products: ReadonlyMap<string, Product>,
): { readonly demand: readonly ProductDemand[]; readonly problems: readonly Problem[] } {
  const { id, productId } = rule;
  const { product, problems } = chosenProduct({
    products,
    id: productId,
    kinds: RULE_KINDS,
    place: { table: 'rules', id, field: 'productId' },
    user: 'A usage rule',
  });
  if (product === null) return { demand: [], problems };
  const invalid = rule.rate !== null && !(rule.rate >= 0 && rule.rate <= MAX_AMOUNT);
  const rate: Reading = invalid
    ? { value: null, source: 'entered in the rule', notes: [] }
    : rule.rate === null
      ? catalogueRate(product, rule.per)
      : { value: rule.rate, source: 'entered in the rule', notes: [] };
  const need = base.value === null || rate.value === null ? null : base.value * rate.value;
  return {
    demand: [
      {
        productId,
        name: `${base.name}: ${base.value ?? 'unknown'} x ${rate.value ?? 'unknown'} ${product.unit} (${rate.source})`,
        need,
        atCoverage: { low: need, typical: need, high: need },
        from: base.from,
        notes: base.notes,
      },
    ],
    problems: [
      ...problems,
      ...(invalid ? [rateInvalid(rule, product)] : rate.value === null ? [rateMissing(rule, product)] : []),
    ],
  };
}

function catalogueRate(product: Product, per: UsageRule['per']): Reading {
  if (per === 'banding-metre') return readFigure(product, 'usePerMetre');
  if (per === 'part' || per === 'project')
    return { value: null, source: 'a catalogue has no such rate', notes: [] };
  const perArea = readFigure(product, 'usePerArea');
  if (perArea.value !== null) return perArea;
  const perPiece = readFigure(product, 'areaPerPiece');
  return perPiece.value === null ? perArea : { ...perPiece, value: 1 / perPiece.value };
}

function rateMissing({ id, per }: UsageRule, product: Product): Problem {
  return {
    code: 'usage-rate-missing',
    severity: 'error',
    at: { table: 'rules', id, field: 'rate' },
    message: `The rule for "${product.name}" has no rate per ${per.replace('-', ' ')}, and neither has the product.`,
    wayOut: `Enter how much is used per ${per.replace('-', ' ')}, in ${product.unit}.`,
  };
}

function rateInvalid({ id, rate }: UsageRule, product: Product): Problem {
  return {
    code: 'usage-rate-invalid',
    severity: 'error',
    at: { table: 'rules', id, field: 'rate' },
    message: `The rule for "${product.name}" has a rate of ${rate}, which is not from 0 to ${MAX_AMOUNT}.`,
    wayOut: "Enter how much is used, or clear it to take the product's own rate.",
  };
}
