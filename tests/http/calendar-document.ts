/** A small finishing job in a shop whose air and hours make the plan easy to follow by hand. */
export const calendarDocument = {
  format: 'plywright-project',
  version: 1,
  settings: {
    name: 'Two shelves; "oak", 1/2',
    units: 'metric',
    currency: 'EUR',
    timeZone: 'America/New_York',
    climateKind: 'constant',
    // The air that label times are for, so that a label minute is a minute.
    dayC: 22,
    dayHumidity: 50,
  },
  parts: [
    {
      id: 'shelf',
      name: 'Shelf, long',
      quantity: 2,
      length: 1000,
      width: 300,
      materialId: 'birch-ply-18',
      edgeFront: 'bare',
      showRecipeId: 'clear',
    },
  ],
  recipes: [
    {
      id: 'clear',
      name: 'Clear',
      steps: [
        { id: 'sand', kind: 'sand', productId: 'disc-125-150' },
        { id: 'top', kind: 'topcoat', productId: 'water-poly-satin', coats: 2 },
      ],
    },
  ],
  shopHours: [0, 1, 2, 3, 4, 5, 6].map((weekday) => ({ weekday, from: '9:00', to: '5 pm' })),
} as const;
