import { z } from 'zod';
import type { Figure, FigureUnit } from '../planning/figure.ts';
import type { CutNode, Plan } from '../planning/plan-output.ts';
import type { Problem, ProblemTable, Severity } from '../planning/problem.ts';
import type { EdgeName } from '../planning/project-input.ts';
import type { PlanView } from './contract.ts';
import { oneOf } from './one-of.ts';
import { costCategory, method, stepKind } from './schemas.ts';

/** What a plan looks like in an answer: once with every figure and its working, once with bare numbers. */

const unit = oneOf<FigureUnit>({
  mm: true,
  m: true,
  m2: true,
  L: true,
  g: true,
  min: true,
  'm2/L': true,
  'g/L': true,
  percent: true,
  ratio: true,
  pcs: true,
  C: true,
  um: true,
  m3: true,
  'm3/h': true,
  W: true,
  kWh: true,
  minor: true,
});

export const figureSchema = z
  .strictObject({
    value: z.number().nullable().meta({ description: 'Null when it is not known; the notes say why.' }),
    unit,
    working: z.strictObject({
      rule: z.string(),
      inputs: z.array(
        z.strictObject({
          name: z.string(),
          value: z.union([z.number(), z.string()]).nullable(),
          unit: z.union([unit, z.literal('')]),
          from: z.exactOptional(z.string()).meta({ description: 'Path of the figure this input is.' }),
          source: z.exactOptional(z.string()),
        }),
      ),
      notes: z.exactOptional(z.array(z.string())),
    }),
  })
  .meta({
    id: 'Figure',
    description: 'A computed number with its working.',
  }) satisfies z.ZodType<Figure>;

export const problemSchema = z
  .strictObject({
    code: z.string() as unknown as z.ZodType<Problem['code']>,
    severity: oneOf<Severity>({ error: true, warning: true, note: true }),
    at: z.strictObject({
      table: oneOf<ProblemTable>({
        parts: true,
        recipes: true,
        steps: true,
        blends: true,
        components: true,
        rules: true,
        extras: true,
        onHand: true,
        measurements: true,
        sizes: true,
        shopHours: true,
        daysOff: true,
        climateRows: true,
        pins: true,
        doneTasks: true,
        arrivals: true,
        budgets: true,
        orders: true,
        orderLines: true,
        receipts: true,
        stockUses: true,
        payments: true,
        substitutes: true,
        workHours: true,
        quotes: true,
        suppliers: true,
        settings: true,
        products: true,
        document: true,
      }),
      id: z.string().nullable(),
      field: z.string().nullable(),
    }),
    message: z.string(),
    wayOut: z.string(),
  })
  .meta({ id: 'Problem' }) satisfies z.ZodType<Problem>;

const edge = oneOf<EdgeName>({ front: true, back: true, left: true, right: true });

const cutNode: z.ZodType<CutNode> = z
  .lazy(() =>
    z.discriminatedUnion('type', [
      z.strictObject({
        type: z.literal('split'),
        along: z.enum(['length', 'width']),
        lengthMm: z.number(),
        widthMm: z.number(),
        children: z.array(cutNode),
        match: z
          .exactOptional(z.string())
          .meta({ description: 'The children are the parts of this grain match, in their order.' }),
      }),
      z.strictObject({
        type: z.literal('part'),
        partId: z.string(),
        turned: z.boolean(),
        lengthMm: z.number(),
        widthMm: z.number(),
      }),
      z.strictObject({ type: z.literal('offcut'), lengthMm: z.number(), widthMm: z.number() }),
    ]),
  )
  .meta({ id: 'CutNode', description: 'A tree of saw cuts.' });

const buyPack = z.strictObject({
  id: z.string(),
  label: z.string(),
  amount: z.number(),
  count: z.number(),
  priceMinor: z.number().nullable(),
  lineMinor: z.number().nullable(),
});

/** The plan's shape without problems; `f` is the schema of every figure in it. */
function planShape<F extends z.ZodType>(f: F) {
  const group = z.strictObject({ id: z.string(), rows: z.number(), pieces: f, bandedM: f, finishM2: f });
  return {
    parts: z.array(
      z.strictObject({
        id: z.string(),
        quantity: f,
        lengthMm: f,
        widthMm: f,
        thicknessMm: f,
        cutLengthMm: f,
        cutWidthMm: f,
        cornersMm: z.array(z.number()).length(4) as unknown as z.ZodType<[number, number, number, number]>,
        edges: z.array(z.strictObject({ id: edge, treatment: z.string(), outlineMm: f, runMm: f })),
        strips: z.array(
          z.strictObject({
            id: z.string(),
            bandingId: z.string(),
            edges: z.array(edge),
            closed: z.boolean(),
            runMm: f,
            stripMm: f,
          }),
        ),
        totalBandedM: f,
        showFaceM2: f,
        backFaceM2: f,
        seenEdgeM2: f,
        totalFinishM2: f,
      }),
    ),
    sizes: z.array(z.strictObject({ id: z.string(), name: z.string(), valueMm: f })),
    materials: z.array(
      z.strictObject({
        id: z.string(),
        kind: z.enum(['sheet', 'board']),
        name: z.string(),
        thicknessMm: f,
        netM2: f,
        netM: f,
        stocks: f,
        boundStocks: f,
        proven: z.boolean(),
        costMinor: f,
        layouts: z.array(
          z.strictObject({
            id: z.string(),
            packId: z.string().nullable(),
            onHandId: z.string().nullable(),
            label: z.string(),
            count: z.number(),
            lengthMm: z.number(),
            widthMm: z.number(),
            cut: cutNode,
          }),
        ),
      }),
    ),
    banding: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        strips: f,
        edgeM: f,
        neededM: f,
        boughtM: f,
        wastedM: f,
        rollsToBuy: f,
        rolls: z.array(
          z.strictObject({
            id: z.string(),
            packId: z.string().nullable(),
            onHandId: z.string().nullable(),
            label: z.string(),
            lengthMm: z.number(),
            strips: z.array(
              z.strictObject({
                partId: z.string().nullable(),
                stripId: z.string().nullable(),
                lengthMm: z.number(),
                count: z.number(),
              }),
            ),
            leftMm: z.number(),
          }),
        ),
      }),
    ),
    recipes: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        showM2: f,
        backM2: f,
        edgeM2: f,
        areaM2: f,
        coats: z.array(
          z.strictObject({
            id: z.string(),
            stepId: z.string(),
            number: z.number(),
            kind: stepKind,
            method: method.nullable(),
            name: z.string(),
            litres: f,
            litresAtLowCoverage: f,
            litresAtTypicalCoverage: f,
            litresAtHighCoverage: f,
            thinnerLitres: f,
            mixes: f,
            pieces: f,
            shares: z.array(z.strictObject({ id: z.string(), name: z.string(), litres: f })),
          }),
        ),
      }),
    ),
    needs: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        category: costCategory,
        need: f,
        needAtLowCoverage: f,
        needAtTypicalCoverage: f,
        needAtHighCoverage: f,
      }),
    ),
    buy: z.strictObject({
      lines: z.array(
        z.strictObject({
          id: z.string(),
          productId: z.string().nullable(),
          name: z.string(),
          category: costCategory,
          supplierId: z.string().nullable(),
          supplierName: z.string(),
          unit: z.enum(['pcs', 'm', 'L', 'g']),
          need: f,
          onHand: f,
          toBuy: f,
          packs: z.array(buyPack),
          boughtAmount: f,
          leftover: f,
          cost: f,
          fewestPacks: z.array(buyPack),
          fewestPacksCost: f,
          notes: z.array(z.string()),
        }),
      ),
      netMinor: f,
      taxMinor: f,
      totalMinor: f,
      unpricedLines: f,
      categories: z.array(z.strictObject({ id: costCategory, planned: f, unpricedLines: f })),
    }),
    totals: z.strictObject({ parts: f, pieces: f, bandedM: f, finishM2: f, litres: f, sheets: f }),
    groups: z.strictObject({ sections: z.array(group), materials: z.array(group) }),
  };
}

const problems = z.array(problemSchema);

export const planSchema = z.strictObject({ ...planShape(figureSchema), problems }).meta({
  id: 'Plan',
  description: 'The whole plan; every figure carries its working.',
}) satisfies z.ZodType<Plan>;

export const planViewSchema = z.strictObject({ ...planShape(z.number().nullable()), problems }).meta({
  id: 'PlanView',
  description: 'The whole plan with bare numbers; null is not known.',
}) satisfies z.ZodType<PlanView>;
