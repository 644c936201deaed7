import type { Solvent } from '../../../../server/planning/air/solvent.ts';
import type { Product } from '../../../../server/planning/product.ts';
import type { ProjectSettings } from '../../../../server/planning/project-input.ts';
import { aShare, aSolvent, aVarnish, VARNISH_FIGURES } from './air-project.ts';

interface Missing {
  readonly what: string;
  readonly settings?: Partial<ProjectSettings>;
  readonly varnish?: Product;
  readonly solvents?: readonly Solvent[];
  /** Table, id and field of the place where it is entered. */
  readonly at: string;
  readonly says: RegExp;
}

const { voc: _, ...withoutVoc } = VARNISH_FIGURES;
const { coverage: __, ...withoutCoverage } = VARNISH_FIGURES;

/** Everything an air check may miss, one at a time. */
export const MISSING_FIELDS: readonly Missing[] = [
  {
    what: 'the length of the room',
    settings: { roomLengthM: null },
    at: 'settings/null/roomLengthM',
    says: /volume of the room/,
  },
  {
    what: 'the width of the room',
    settings: { roomWidthM: null },
    at: 'settings/null/roomWidthM',
    says: /volume of the room/,
  },
  {
    what: 'the height of the room',
    settings: { roomHeightM: null },
    at: 'settings/null/roomHeightM',
    says: /volume of the room/,
  },
  {
    what: 'the fan',
    settings: { fanM3PerHour: null },
    at: 'settings/null/fanM3PerHour',
    says: /fresh air/,
  },
  {
    what: 'the air changes',
    settings: { airKind: 'air-changes', airChangesPerHour: null },
    at: 'settings/null/airChangesPerHour',
    says: /fresh air/,
  },
  {
    what: 'the opening',
    settings: { airKind: 'opening', openingM2: null },
    at: 'settings/null/openingM2',
    says: /fresh air/,
  },
  {
    what: 'the VOC',
    varnish: aVarnish({}, withoutVoc),
    at: 'products/varnish/voc',
    says: /How much of "Varnish" evaporates/,
  },
  {
    what: 'the coverage, and with it the litres',
    varnish: aVarnish({}, withoutCoverage),
    at: 'steps/top/productId',
    says: /litres of "Varnish"/,
  },
  {
    what: 'the solvents',
    varnish: aVarnish({ solvents: [] }),
    at: 'products/varnish/solvents',
    says: /Which solvents evaporate from "Varnish"/,
  },
  {
    what: 'shares that can be right',
    varnish: aVarnish({ solvents: [aShare('spirit', { share: 0.8 }), aShare('spirit', { share: 0.7 })] }),
    at: 'products/varnish/solvents',
    says: /80 %, 70 %/,
  },
  {
    what: 'the explosive limit',
    solvents: [aSolvent('spirit', { lelPercent: null })],
    at: 'products/varnish/solvents',
    says: /lower explosive limit of spirit/,
  },
  {
    what: 'the exposure limit',
    solvents: [aSolvent('spirit', { limits: [] })],
    at: 'products/varnish/solvents',
    says: /exposure limit of spirit/,
  },
  {
    what: 'the molar mass',
    solvents: [aSolvent('spirit', { molarMassGPerMol: null })],
    at: 'products/varnish/solvents',
    says: /molar mass of spirit/,
  },
  {
    what: 'a solvent that is not in the list',
    solvents: [],
    at: 'products/varnish/solvents',
    says: /exposure limit of spirit/,
  },
];
