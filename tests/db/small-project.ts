import type { NewProject } from '../../db/create-project.ts';
import type { PartInput, ProjectSettings, RecipeStep } from '../../server/planning/project-input.ts';
import { CALENDAR_SETTINGS } from '../planning/calendar/no-calendar.ts';
import { LEDGER_SETTINGS } from '../planning/ledger/no-ledger.ts';

/** A made-up project with at least one row in every list, for tests of storing and editing. */

export const settings: ProjectSettings = {
  name: 'Bench and shelf',
  units: 'metric',
  inchStyle: 'fraction',
  inchDenominator: 32,
  currency: 'EUR',
  taxPercent: 20,
  coverageChoice: 'low',
  overhangMm: 25,
  trimAllowanceMm: 1.6,
  spareStrips: 1,
  bandingOrder: ['left', 'right', 'back', 'front'],
  kerfMm: 3,
  sheetTrimMm: 5,
  cutStages: null,
  finishLoss: 0.05,
  ...CALENDAR_SETTINGS,
  ...LEDGER_SETTINGS,
};

export const part: PartInput = {
  id: 'seat',
  name: 'Seat',
  section: 'bench',
  quantity: '2',
  length: '1200',
  width: '400',
  shape: 'rectangle',
  materialId: 'birch-ply-18',
  grain: 'along',
  edgeFront: 'birch-veneer-22',
  edgeBack: 'hidden',
  edgeLeft: 'bare',
  edgeRight: 'bare',
  radiusFrontLeft: '30',
  radiusFrontRight: '30',
  radiusBackLeft: '',
  radiusBackRight: '',
  showRecipeId: 'clear',
  backRecipeId: 'clear',
  note: '',
  grainMatch: '',
};

const step: RecipeStep = {
  id: 'stain',
  kind: 'stain',
  productId: '',
  blendId: 'walnut',
  coats: 1,
  method: 'wipe',
  transferEfficiency: null,
  thinning: 0,
  thinnerId: '',
  sessionLossL: null,
  note: '',
};

export const smallProject: NewProject = {
  settings,
  sizes: [{ id: 'depth', name: 'depth', value: '400', note: '' }],
  parts: [
    part,
    { ...part, id: 'leg', name: 'Leg', length: '=depth + 20', width: 'about 40', backRecipeId: '' },
    { ...part, id: 'shelf', name: 'Shelf', showRecipeId: '', backRecipeId: '' },
  ],
  recipes: [
    {
      id: 'clear',
      name: 'Clear satin',
      faces: 'flip',
      steps: [
        step,
        { ...step, id: 'top', kind: 'topcoat', productId: 'oil-poly-satin', blendId: '', coats: 3 },
      ],
    },
    { id: 'paint', name: 'White', faces: 'points', steps: [] },
  ],
  blends: [
    {
      id: 'walnut',
      name: 'Walnut mix',
      components: [
        { id: 'a', productId: 'stain-dark', parts: 2 },
        { id: 'b', productId: 'stain-light', parts: 1 },
      ],
    },
  ],
  rules: [{ id: 'rags', productId: 'rags', per: 'coat-area', rate: 0.5 }],
  extras: [
    {
      id: 'hinges',
      productId: '',
      name: 'Hinges',
      category: 'hardware',
      quantity: 4,
      unitPriceMinor: 350,
      supplierId: '',
    },
  ],
  onHand: [
    { id: 'roll', productId: 'birch-veneer-22', amount: 7.5, count: 1, lengthMm: null, widthMm: null },
  ],
  measurements: [{ id: 'ply', productId: 'birch-ply-18', thicknessMm: 17.6 }],
  shopHours: [{ id: 'saturday', weekday: 5, from: '9:00', to: '17:00' }],
  daysOff: [{ id: 'feast', date: '2027-05-01', note: 'closed' }],
  climateRows: [{ id: 'cold', date: '2027-04-02', time: '', temperatureC: 12, humidityPercent: 60 }],
  pins: [{ id: 'pin', taskId: 'show#1:show:top-1', start: '2027-04-03T10:00' }],
  doneTasks: [
    {
      id: 'first',
      taskId: 'show#1:show:stain-1',
      start: '2027-04-02T10:00',
      end: '2027-04-02T10:30',
      litres: null,
    },
  ],
  arrivals: [{ id: 'van', productId: 'oil-poly-satin', date: '2027-04-01' }],
  budgets: [{ id: 'b', category: 'finish', amountMinor: 12000 }],
  orders: [
    {
      id: 'o',
      supplierId: 'finish-counter',
      date: '2027-03-20',
      number: 'A-17',
      deliveryMinor: 590,
      surchargeMinor: 0,
      taxPercent: null,
      note: '',
    },
  ],
  orderLines: [
    {
      id: 'l',
      orderId: 'o',
      productId: 'oil-poly-satin',
      packId: 'quart',
      name: 'Oil-based polyurethane, satin',
      category: 'finish',
      count: 2,
      packAmount: 0.946,
      unitPriceMinor: 2199,
      invoicedPriceMinor: null,
      taxPercent: null,
    },
  ],
  receipts: [
    { id: 'd', orderLineId: 'l', kind: 'received', date: '2027-03-24', count: 1, batch: '7', place: '' },
  ],
  stockUses: [{ id: 'u', productId: 'oil-poly-satin', date: '2027-04-02', amount: 0.1, note: 'spilled' }],
  payments: [
    {
      id: 'p',
      kind: 'payment',
      date: '2027-03-24',
      supplierId: 'finish-counter',
      orderId: 'o',
      category: 'finish',
      amountMinor: 2000,
      taxMinor: null,
      share: 1,
      receiptNumber: '',
      note: '',
      attachmentId: '',
    },
  ],
  substitutes: [{ id: 's', productId: 'oil-poly-satin', substituteId: 'water-poly-satin' }],
  workHours: [{ id: 'h', date: '2027-04-02', hours: 1.5, note: '' }],
  quotes: [
    {
      id: 'q',
      title: 'Window seat',
      customer: '',
      date: '2027-03-01',
      validUntil: '2027-03-31',
      materialsMinor: null,
      hours: 20,
      rateMinorPerHour: 4500,
      markupPercent: 15,
      taxPercent: null,
      note: '',
      sender: '',
      shown: 'price',
    },
  ],
};
