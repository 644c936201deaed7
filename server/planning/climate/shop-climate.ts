/** The air in the shop at one moment. */
export interface ShopAir {
  readonly airC: number;
  /** Percent, 0 to 100. */
  readonly relativeHumidityPercent: number;
}

/**
 * What the shop's air does over time. Minute 0 is midnight at the start of the calendar's first day; every day has 1440
 * minutes (the planner works in shop clock time and knows no summer-time jump).
 */
export type ShopClimate =
  | { readonly kind: 'constant'; readonly air: ShopAir }
  /** Two levels: heated by day, left alone at night. Clock times are minutes after midnight, 0 to 1439. */
  | {
      readonly kind: 'day-night';
      readonly day: ShopAir;
      readonly night: ShopAir;
      readonly dayFromMinute: number;
      readonly nightFromMinute: number;
    }
  /** A smooth daily swing between two ends; humidity swings with temperature. Coldest is twelve hours from warmest. */
  | {
      readonly kind: 'sinusoid';
      readonly warmest: ShopAir;
      readonly coldest: ShopAir;
      readonly warmestAtMinute: number;
    }
  /** One row per day from day 0. The last row holds on after the rows end. */
  | { readonly kind: 'daily'; readonly days: readonly ShopAir[] }
  /** One row per hour from minute 0, each for its whole hour. The last row holds on after the rows end. */
  | { readonly kind: 'hourly'; readonly hours: readonly ShopAir[] };
