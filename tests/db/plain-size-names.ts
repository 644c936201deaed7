import type { SizeNames } from '../../db/rename-size.ts';

/** Names of sizes for tests of the database alone: words of letters and underscores; one name is taken. */
export const plainSizeNames: SizeNames = {
  fault: (name) =>
    name === 'taken' ? { taken: true, message: `“${name}” is taken.`, wayOut: 'Choose another.' } : null,
  same: (a, b) => a === b,
  renamed(text, from, to) {
    const renamed = text.replace(/[a-z_]+/gi, (word) => (word === from ? to : word));
    return renamed.length > 500 ? null : renamed;
  },
};
