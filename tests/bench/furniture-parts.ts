import {
  type CuttingProject,
  cuttingProject,
  type Row,
  sheetProduct,
} from '../planning/cutting/cutting-project.ts';
import { seededRandom } from './seeded-random.ts';

/** Sizes of sheets as sold, and what a shop asks for them; ours. */
const SHEET = { lengthMm: 2440, widthMm: 1220, price: 8900 };
const ABOUT_PARTS = 60;

/**
 * A random job of cabinets: sides, tops, bottoms, shelves, backs, doors and drawer parts of carcases of random width,
 * height and depth, until there are about 60 pieces. Grain along for what is seen, free for shelves and drawers.
 */
export function furnitureParts(seed: number): CuttingProject {
  const random = seededRandom(seed * 6151 + 29);
  const between = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const rows: Row[] = [];
  const add = (lengthMm: number, widthMm: number, count: number, grain: Row['grain']): void => {
    if (count > 0) rows.push({ lengthMm, widthMm, count, grain });
  };
  // Small pieces fill a sheet with many parts, tall cabinets several with few.
  const scale = 0.4 + 0.6 * random();
  const size = (low: number, high: number): number => Math.round(scale * between(low, high));
  while (rows.reduce((sum, { count }) => sum + count, 0) < ABOUT_PARTS - 4) {
    const cabinets = between(1, 3);
    const [width, height, depth] = [size(350, 900), size(500, 1400), size(220, 550)];
    const inside = width - 36;
    add(height, depth, 2 * cabinets, 'along');
    add(inside, depth, 2 * cabinets, 'free');
    add(inside, depth - 20, between(0, 3) * cabinets, 'free');
    if (random() < 0.5) add(height, width, cabinets, 'along');
    if (random() < 0.6) add(height - 4, Math.floor(width / 2) - 3, 2 * cabinets, 'along');
    const drawers = random() < 0.5 ? between(1, 3) * cabinets : 0;
    add(depth - 30, size(90, 180), 2 * drawers, 'free');
    add(inside - 50, size(90, 180), 2 * drawers, 'free');
  }
  return cuttingProject([sheetProduct([SHEET])], rows, { settings: { kerfMm: 3, sheetTrimMm: 5 } });
}
