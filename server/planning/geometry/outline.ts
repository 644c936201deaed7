import type { EdgeName, PartInput } from '../project-input.ts';

/** The edges in running order round the part, seen from the show face: down the left, along the front, up the right. */
export const EDGE_LOOP = ['left', 'front', 'right', 'back'] as const satisfies readonly EdgeName[];

export const EDGE_FIELD = {
  front: 'edgeFront',
  back: 'edgeBack',
  left: 'edgeLeft',
  right: 'edgeRight',
} as const satisfies Record<EdgeName, keyof PartInput>;

/** Front and back run along the length, left and right along the width. */
export const SIDE_OF = { front: 'length', back: 'length', left: 'width', right: 'width' } as const;

export interface Corner {
  readonly name: string;
  readonly field: 'radiusFrontLeft' | 'radiusFrontRight' | 'radiusBackLeft' | 'radiusBackRight';
  /** The edges it joins, in running order. */
  readonly before: EdgeName;
  readonly after: EdgeName;
}

/** The corners in the order of `PartPlan.cornersMm`. */
export const CORNERS: readonly [Corner, Corner, Corner, Corner] = [
  { name: 'front left', field: 'radiusFrontLeft', before: 'left', after: 'front' },
  { name: 'front right', field: 'radiusFrontRight', before: 'front', after: 'right' },
  { name: 'back left', field: 'radiusBackLeft', before: 'back', after: 'left' },
  { name: 'back right', field: 'radiusBackRight', before: 'right', after: 'back' },
];

export type CornerRadii = readonly [number, number, number, number];

/** Places in `CORNERS` of the corners at both ends of an edge. */
export const CORNERS_OF: Readonly<Record<EdgeName, readonly [number, number]>> = {
  left: [2, 0],
  front: [0, 1],
  right: [1, 3],
  back: [3, 2],
};
