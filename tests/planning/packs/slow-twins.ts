/** Slow, plain ways to choose packs, for checking the fast one. Sizes and needs are whole millilitres here. */

export interface SlowPack {
  readonly sizeMl: number;
  readonly price: number;
}

export interface SlowMix {
  readonly price: number;
  readonly sizeMl: number;
  readonly packs: number;
}

type Better = (left: SlowMix, right: SlowMix) => boolean;

function lexicographic(...keys: readonly (keyof SlowMix)[]): Better {
  return (left, right) => {
    for (const key of keys) if (left[key] !== right[key]) return left[key] < right[key];
    return false;
  };
}

export const CHEAPEST = lexicographic('price', 'sizeMl', 'packs');
export const FEWEST = lexicographic('packs', 'price', 'sizeMl');

/** Every mix that covers the need without a pack too many, one after the other. */
export function everyMix(needMl: number, packs: readonly SlowPack[], better: Better): SlowMix {
  let best: SlowMix | null = null;
  const visit = (at: number, mix: SlowMix): void => {
    if (mix.sizeMl >= needMl) {
      if (best === null || better(mix, best)) best = mix;
      return;
    }
    const pack = packs[at];
    if (pack === undefined) return;
    const most = Math.ceil((needMl - mix.sizeMl) / pack.sizeMl);
    for (let count = 0; count <= most; count++)
      visit(at + 1, {
        price: mix.price + count * pack.price,
        sizeMl: mix.sizeMl + count * pack.sizeMl,
        packs: mix.packs + count,
      });
  };
  visit(0, { price: 0, sizeMl: 0, packs: 0 });
  if (best === null) throw new Error('no mix covers the need');
  return best;
}

/** The textbook table: the best mix for every exact amount up to the need and one largest pack. */
export function everyAmount(needMl: number, packs: readonly SlowPack[], better: Better): SlowMix {
  const largest = Math.max(...packs.map(({ sizeMl }) => sizeMl));
  const table: (SlowMix | undefined)[] = [{ price: 0, sizeMl: 0, packs: 0 }];
  let best: SlowMix | null = null;
  for (let amount = 1; amount < needMl + largest; amount++) {
    for (const { sizeMl, price } of packs) {
      const before = table[amount - sizeMl];
      // A mix that already covers the need is not added to.
      if (before === undefined || before.sizeMl >= needMl) continue;
      const mix = { price: before.price + price, sizeMl: amount, packs: before.packs + 1 };
      const rival = table[amount];
      if (rival === undefined || better(mix, rival)) table[amount] = mix;
    }
    const mix = table[amount];
    if (mix !== undefined && amount >= needMl && (best === null || better(mix, best))) best = mix;
  }
  if (best === null) throw new Error('no mix covers the need');
  return best;
}
