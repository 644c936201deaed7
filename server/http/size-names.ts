import type { SizeNames } from '../../db/rename-size.ts';
import { MAX_EXPRESSION } from '../planning/dimensions/constants.ts';
import { nameKey } from '../planning/dimensions/name-key.ts';
import { quoted } from '../planning/dimensions/refusal.ts';
import { renamedInExpression } from '../planning/dimensions/renamed-in-expression.ts';
import { sizeNameFault } from '../planning/dimensions/size-name-fault.ts';

/** Names of sizes by the rules of the planner, for the database. */
export const sizeNames: SizeNames = {
  fault(name, others) {
    const fault = sizeNameFault(name);
    if (fault !== null) return { taken: false, message: fault.message, wayOut: fault.wayOut };
    const holder = others.find((other) => nameKey(other) === nameKey(name));
    return holder === undefined
      ? null
      : {
          taken: true,
          message: `There is a size named ${quoted(holder)} already.`,
          wayOut: 'Choose another name, or rename that size first.',
        };
  },
  same: (a, b) => nameKey(a) === nameKey(b),
  renamed(text, from, to) {
    const renamed = renamedInExpression(text, from, to);
    return renamed !== text && renamed.length > MAX_EXPRESSION ? null : renamed;
  },
};
