/**
 * Part lists, each made at random, that an edit's short search is unlikely to cut best: length, width, count, in mm.
 * A longer search found each of them cheaper when they were chosen.
 */
const LISTS = [
  [
    [840, 230, 8],
    [700, 200, 1],
    [1010, 510, 6],
    [550, 500, 5],
    [490, 360, 8],
    [980, 260, 6],
    [960, 220, 4],
    [1060, 220, 6],
  ],
  [
    [880, 420, 7],
    [710, 550, 3],
    [840, 510, 1],
    [250, 650, 6],
    [500, 470, 7],
    [500, 560, 3],
    [1050, 350, 6],
    [740, 470, 8],
    [530, 540, 2],
  ],
  [
    [1020, 270, 7],
    [200, 340, 4],
    [560, 240, 1],
    [830, 180, 5],
    [230, 160, 3],
    [350, 590, 6],
    [880, 270, 7],
  ],
] as const;

/** A project that cuts the given list of those from one sheet product. */
export function hardCutting(list = 0) {
  return {
    format: 'plywright-project',
    version: 1,
    settings: { name: 'Many panels', units: 'metric', currency: 'EUR' },
    parts: (LISTS[list] ?? LISTS[0]).map(([length, width, count], index) => ({
      id: `panel-${index + 1}`,
      name: `Panel ${index + 1}`,
      quantity: String(count),
      length: String(length),
      width: String(width),
      materialId: 'birch-ply-18',
    })),
  } as const;
}

/** One part list whose plan is proven at once: a single part on a single sheet. */
export const easyCutting = {
  format: 'plywright-project',
  version: 1,
  settings: { name: 'One panel', units: 'metric', currency: 'EUR' },
  parts: [
    { id: 'panel', name: 'Panel', quantity: '1', length: '2000', width: '1100', materialId: 'birch-ply-18' },
  ],
} as const;
