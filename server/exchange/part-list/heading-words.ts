/** What a column of an imported part list can mean. `size` is a whole set in one cell: "600 x 300 x 18". */
export const IMPORT_FIELDS = [
  'ignore',
  'name',
  'section',
  'quantity',
  'length',
  'width',
  'thickness',
  'size',
  'material',
  'grain',
  'edges',
  'edgeFront',
  'edgeBack',
  'edgeLeft',
  'edgeRight',
  'finish',
  'note',
] as const;
export type ImportField = (typeof IMPORT_FIELDS)[number];

/**
 * Headings met in published plans, cutting lists and spreadsheets, lower case, without unit or punctuation.
 * `depth` and `height` are listed apart: which axis of the panel they are cannot be told from the word.
 */
export const HEADING_WORDS: Readonly<Record<Exclude<ImportField, 'ignore'>, readonly string[]>> = {
  name: [
    'name',
    'part',
    'part name',
    'piece',
    'item',
    'description',
    'component',
    'label',
    'code',
    'code letter',
    'key',
    'ref',
    'id',
  ],
  section: ['section', 'assembly', 'group', 'unit', 'cabinet', 'room', 'module'],
  quantity: [
    'quantity',
    'qty',
    'pcs',
    'pieces',
    'no',
    'nr',
    'number',
    'number of each',
    'off',
    'count',
    'how many',
    'stk',
    'quan',
  ],
  length: ['length', 'l', 'len', 'long', 'finished length', 'net length', 'cut length'],
  width: ['width', 'w', 'wid', 'wide', 'finished width', 'net width', 'cut width'],
  thickness: ['thickness', 't', 'thk', 'thick'],
  size: [
    'size',
    'sizes',
    'dimensions',
    'dims',
    'dim',
    'net',
    'finished',
    'finished size',
    'net size',
    'l x w',
    'w x l',
    'l x w x t',
    'w x l x t',
  ],
  material: ['material', 'mat', 'stock', 'species', 'board', 'sheet', 'wood', 'matl'],
  grain: ['grain', 'dir', 'direction', 'grain direction'],
  edges: ['edge', 'edges', 'band', 'banding', 'edge banding', 'edging', 'eb'],
  edgeFront: ['front', 'edge front', 'front edge', 'e1', 'edge 1'],
  edgeBack: ['back', 'edge back', 'back edge', 'e2', 'edge 2'],
  edgeLeft: ['left', 'edge left', 'left edge', 'e3', 'edge 3'],
  edgeRight: ['right', 'edge right', 'right edge', 'e4', 'edge 4'],
  finish: ['finish', 'coats', 'recipe', 'finish face'],
  note: ['note', 'notes', 'comment', 'comments', 'remark', 'remarks', 'memo'],
};

/** Axis words that name a direction of the furniture, not of the panel. */
export const AXIS_QUESTIONS = ['depth', 'd', 'deep', 'height', 'h', 'high', 'ht'] as const;
