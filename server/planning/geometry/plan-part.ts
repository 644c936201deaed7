import { type Figure, figure } from '../figure.ts';
import type { EdgePlan, PartPlan } from '../plan-output.ts';
import type { Problem } from '../problem.ts';
import { EDGE_NAMES, type PartInput } from '../project-input.ts';
import { bandProblems } from './band-problems.ts';
import { cutSize } from './cut-size.ts';
import { edgeOutline, type FinishedOutline } from './edge-outline.ts';
import { edgeRun } from './edge-run.ts';
import { faceArea } from './face-area.ts';
import { joinStrips } from './join-strips.ts';
import type { PartContext } from './part-context.ts';
import { partCorners } from './part-corners.ts';
import { partEdges } from './part-edges.ts';
import { partMaterial } from './part-material.ts';
import { cellProblem, partProblem } from './part-problem.ts';
import { totalBanded, totalFinish } from './part-totals.ts';
import { seenEdgeArea } from './seen-edge-area.ts';
import { unbalancedFaces } from './unbalanced-faces.ts';

/**
 * What does one row of the part list come to: sizes, cut sizes, edges, strips and areas?
 *
 * `row`: as typed. `context`: what all rows share. Result: the part's plan, figures for one piece unless they say
 * total, and the problems of its cells. A cell that cannot be read is one problem; the figures that hang on it are
 * null with a note, the others are worked out. Nothing is computed here that the functions called do not say.
 *
 * Example: a shelf of 600 by 300 mm with a veneered front has a cut size of 600 by 300 mm and one strip of 650 mm.
 */
export function planPart(
  row: PartInput,
  context: PartContext,
): { readonly part: PartPlan; readonly problems: readonly Problem[] } {
  const path = `parts/${row.id}`;
  const length = context.readSize(row.length);
  const width = context.readSize(row.width);
  const pieces = context.readPieces(row.quantity);
  const quantity = figure(pieces.value, 'pcs', pieces.working);
  const material = partMaterial(row, context);
  const { edges, problems: edgeProblems } = partEdges(row, context);
  const { corners, problems: cornerProblems } = partCorners(row, length.value, width.value, context);
  const outline: FinishedOutline = { lengthMm: length.value, widthMm: width.value, corners, path };

  const cutLength = positiveCut(
    row,
    'length',
    cutSize('length', { mm: length.value, path: `${path}/lengthMm` }, [edges.left, edges.right]),
  );
  const cutWidth = positiveCut(
    row,
    'width',
    cutSize('width', { mm: width.value, path: `${path}/widthMm` }, [edges.front, edges.back]),
  );
  const plans = EDGE_NAMES.map(
    (id): EdgePlan => ({
      id,
      treatment: edges[id].treatment,
      outlineMm: edgeOutline(edges[id], edges, outline),
      runMm: edgeRun(edges[id], edges, outline, context.bandingOrder),
    }),
  );
  const strips = joinStrips({ edges, outline, runs: plans, overhangMm: context.overhangMm });
  const unusable = EDGE_NAMES.filter((name) => edges[name].banded && edges[name].band === null).length;
  const face = faceArea(outline);
  const seenEdgeM2 = seenEdgeArea(edges, plans, material.thicknessMm.value, path);

  return {
    part: {
      id: row.id,
      quantity,
      lengthMm: figure(length.value, 'mm', length.working),
      widthMm: figure(width.value, 'mm', width.working),
      thicknessMm: material.thicknessMm,
      cutLengthMm: cutLength.cut,
      cutWidthMm: cutWidth.cut,
      cornersMm: corners ?? [0, 0, 0, 0],
      edges: plans,
      strips,
      totalBandedM: totalBanded(quantity, strips, unusable, path),
      showFaceM2: face,
      backFaceM2: face,
      seenEdgeM2,
      totalFinishM2: totalFinish(quantity, finished(row, face, seenEdgeM2), path),
    },
    problems: [
      ...cellProblem(row, 'quantity', pieces.refusal),
      ...cellProblem(row, 'length', length.refusal),
      ...cellProblem(row, 'width', width.refusal),
      ...material.problems,
      ...edgeProblems,
      ...cornerProblems,
      ...cutLength.problems,
      ...cutWidth.problems,
      ...bandProblems(row, edges, material.thicknessMm.value, corners, context),
      ...unbalancedFaces(row, context.filmCoats),
    ],
  };
}

/** A cut size of zero or less is a problem of the finished size it comes from. */
function positiveCut(
  row: PartInput,
  axis: 'length' | 'width',
  cut: Figure,
): { readonly cut: Figure; readonly problems: readonly Problem[] } {
  if (cut.value === null || cut.value > 0) return { cut, problems: [] };
  const fault = {
    code: 'cut-size-not-positive',
    message: `The bands on this part leave nothing of its ${axis} to cut.`,
    wayOut: `Type a larger ${axis}, or a thinner band.`,
  } as const;
  return {
    cut: figure(null, 'mm', { ...cut.working, notes: [fault.message] }),
    problems: [partProblem(row, axis, fault)],
  };
}

/** The areas of one piece that get a recipe. */
function finished(row: PartInput, face: Figure, seenEdgeM2: Figure) {
  const faces = [
    ...(row.showRecipeId === '' ? [] : [{ name: 'show face', field: 'showFaceM2', area: face }]),
    ...(row.backRecipeId === '' ? [] : [{ name: 'back face', field: 'backFaceM2', area: face }]),
  ];
  return faces.length === 0 ? [] : [...faces, { name: 'seen edges', field: 'seenEdgeM2', area: seenEdgeM2 }];
}
